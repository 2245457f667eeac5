import type { Surroundings } from '#engine/conduction/surroundings.ts'

/** What the piece met in one stage of its hardening, so that a cross-section can be sent through the same. */
export interface MetStage {
  readonly as: 'fire' | 'walk' | 'bath' | 'air'
  readonly surroundings: Surroundings
  readonly lastedS: number
  /** The heat that the smith meant, in a fire [K]. */
  readonly toK?: number
}
