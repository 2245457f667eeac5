/** Where a figure comes from: a published table, a model evaluated here, the smith's own reading, or somebody's memory of a publication. */
export type Basis = 'published' | 'model' | 'measured' | 'memory'

/**
 * A figure with its band: nine in ten of the pieces, heats or readings that it speaks of lie in `low`..`high`.
 * The unit is that of the field that holds it.
 */
export interface Estimate {
  readonly value: number
  readonly low: number
  readonly high: number
  readonly basis: Basis
  readonly source: string
}
