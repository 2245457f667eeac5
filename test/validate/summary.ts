import type { ComparedRow } from './comparison.ts'

export interface Summary {
  readonly group: string
  readonly n: number
  readonly meanAbsolute: number
  readonly bias: number
  readonly worst: ComparedRow
  /** Share of rows whose published figure lies in the band given; undefined when no row has a band. */
  readonly insideBand: number | undefined
}

export function error(row: ComparedRow): number {
  return row.forecast - row.published
}

/** Error statistics of `rows`, which must not be empty. */
export function summarise(group: string, rows: readonly ComparedRow[]): Summary {
  const first = rows[0]
  if (first === undefined) throw new Error(`${group}: no rows to compare`)
  const banded = rows.filter((row) => row.low !== undefined && row.high !== undefined)
  const bad = rows.find((row) => !Number.isFinite(error(row)))
  if (bad !== undefined) throw new Error(`${group}: ${bad.label} compares ${bad.forecast} with ${bad.published}`)
  return {
    group,
    n: rows.length,
    meanAbsolute: rows.reduce((sum, row) => sum + Math.abs(error(row)), 0) / rows.length,
    bias: rows.reduce((sum, row) => sum + error(row), 0) / rows.length,
    worst: rows.reduce((worst, row) => (Math.abs(error(row)) > Math.abs(error(worst)) ? row : worst), first),
    insideBand:
      banded.length === 0
        ? undefined
        : banded.filter((row) => row.published >= row.low! - 1e-9 && row.published <= row.high! + 1e-9).length / banded.length,
  }
}

/** One summary a value of `key`, in the order in which the values come first. */
export function summariseBy(rows: readonly ComparedRow[], key: (row: ComparedRow) => string): Summary[] {
  const groups = new Map<string, ComparedRow[]>()
  for (const row of rows) groups.set(key(row), [...(groups.get(key(row)) ?? []), row])
  return [...groups].map(([group, members]) => summarise(group, members))
}
