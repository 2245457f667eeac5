import type { BetweenSources, CheckSummary } from '#report/validation-record.ts'
import type { ComparedRow, Repeat } from './comparison.ts'

/** How errors of a comparison are counted and told. */
export interface Counted {
  readonly relative: boolean
  /** The worst row may be named. */
  readonly worst: boolean
}

/** Forecast less published, or that in per cent of what is published. */
export function error({ forecast, published }: ComparedRow, relative = false): number {
  return relative ? 100 * (forecast / published - 1) : forecast - published
}

/** Rows by a word each, in the order in which the words come first; rows without one are left out. */
function groupedBy(rows: readonly ComparedRow[], key: (row: ComparedRow) => string | undefined): Map<string, ComparedRow[]> {
  const groups = new Map<string, ComparedRow[]>()
  for (const row of rows) {
    const word = key(row)
    if (word === undefined) continue
    const group = groups.get(word)
    if (group === undefined) groups.set(word, [row])
    else group.push(row)
  }
  return groups
}

/** Error statistics of `rows`, which must not be empty. */
export function summarise(name: string, rows: readonly ComparedRow[], counted: Counted): CheckSummary {
  const first = rows[0]
  if (first === undefined) throw new Error(`${name}: no rows to compare`)
  const errors = rows.map((row) => error(row, counted.relative))
  const bad = errors.findIndex((each) => !Number.isFinite(each))
  if (bad >= 0) {
    const { label, forecast, published } = rows[bad] ?? first
    throw new Error(`${name}: ${label} compares ${forecast} with ${published}`)
  }
  const banded = rows.filter((row) => row.low !== undefined && row.high !== undefined)
  const held = banded.filter(({ published, low = 0, high = 0 }) => published >= low - 1e-9 && published <= high + 1e-9)
  const worst = errors.reduce((at, each, i) => (Math.abs(each) > Math.abs(errors[at] ?? 0) ? i : at), 0)
  const { label, published } = rows[worst] ?? first
  return {
    name,
    n: rows.length,
    meanAbsolute: errors.reduce((sum, each) => sum + Math.abs(each), 0) / rows.length,
    bias: errors.reduce((sum, each) => sum + each, 0) / rows.length,
    ...(banded.length === 0 ? {} : { inside: held.length / banded.length, banded: banded.length }),
    ...(counted.worst ? { worst: { label, published, error: errors[worst] ?? 0 } } : {}),
  }
}

/** One summary a value of `key`, in the order in which the values come first; none when all rows have the same. */
export function summariseBy(
  rows: readonly ComparedRow[],
  key: (row: ComparedRow) => string | undefined,
  counted: Counted,
): CheckSummary[] {
  const groups = groupedBy(rows, key)
  return groups.size < 2 ? [] : [...groups].map(([name, members]) => summarise(name, members, counted))
}

/** Every pair of rows that are alike and not from the same source. */
export function repeatsAmong(rows: readonly ComparedRow[]): Repeat[] {
  return [...groupedBy(rows, ({ alike }) => alike)].flatMap(([what, members]) =>
    members.flatMap((one, i) =>
      members
        .slice(i + 1)
        .filter((other) => other.source !== one.source)
        .map((other) => ({ what, one: one.published, other: other.published })),
    ),
  )
}

/** How far sources are from each other; undefined when no two speak of the same. */
export function betweenSources(repeats: readonly Repeat[], relative: boolean): BetweenSources | undefined {
  const first = repeats[0]
  if (first === undefined) return undefined
  const apart = ({ one, other }: Repeat): number =>
    relative ? (200 * Math.abs(one - other)) / (one + other) : Math.abs(one - other)
  return {
    n: repeats.length,
    meanAbsolute: repeats.reduce((sum, each) => sum + apart(each), 0) / repeats.length,
    widest: repeats.reduce((widest, each) => (apart(each) > apart(widest) ? each : widest), first),
  }
}
