import { type Check, type CheckRow, INSIDE_AIM } from '#report/validation-record.ts'
import { type ComparedRow, type Comparison, idOf } from './comparison.ts'
import { betweenSources, repeatsAmong, summarise, summariseBy } from './summary.ts'

/** Figures are kept to this many digits: more than anybody reads, few enough that a record reads as a record. */
const DIGITS = 5

function kept(value: number): number {
  return Number(value.toPrecision(DIGITS))
}

/** What a comparison found, as it goes into the record. Rows that something was fitted to do not count, unless there are no others. */
export function measure(comparison: Comparison): Check {
  const { name, unit, scale = 'other', relative = false, committed, aim, tolerance, says } = comparison
  const rows = comparison.rows()
  const honest = rows.filter(({ fitted }) => fitted !== true)
  const counted = honest.length > 0 ? honest : rows
  const fitted = honest.length > 0 ? rows.filter((row) => row.fitted === true) : []
  const how = { relative, worst: committed }
  const all = summarise('all', counted, how)
  const apart = betweenSources(comparison.repeats?.() ?? repeatsAmong(rows), relative)
  return rounded({
    id: idOf(name),
    name,
    unit,
    scale,
    relative,
    ...(comparison.wish === undefined ? {} : { wish: comparison.wish }),
    arithmetic: comparison.arithmetic ?? false,
    committed,
    aim,
    tolerance,
    ...(all.inside === undefined ? {} : { insideBounds: comparison.inside ?? wholeBounds(all.banded ?? 0) }),
    says,
    ...(comparison.whyMissed === undefined ? {} : { whyMissed: comparison.whyMissed }),
    ...(comparison.whyOutside === undefined ? {} : { whyOutside: comparison.whyOutside }),
    all,
    ...(honest.length === 0 ? { inSample: true as const } : {}),
    ...(fitted.length === 0 ? {} : { fitted: summarise('fitted to', fitted, how) }),
    families: summariseBy(counted, ({ family }) => family, how),
    groups: summariseBy(counted, ({ group }) => group, how),
    provenances: summariseBy(counted, ({ provenance }) => provenance, how),
    // A widest pair names rows, which only sets of this tree may.
    ...(apart === undefined ? {} : { betweenSources: committed ? apart : { n: apart.n, meanAbsolute: apart.meanAbsolute } }),
    sources: [...new Set(rows.flatMap(({ source }) => (source === undefined ? [] : [source])))],
    ...(committed ? { rows: rows.map(rowKept) } : {}),
  })
}

/** The share to reach, to a whole figure: of four, three or all four. */
function wholeBounds(n: number): readonly [number, number] {
  return [Math.floor(INSIDE_AIM[0] * n) / n, Math.ceil(INSIDE_AIM[1] * n) / n]
}

function rowKept({
  label,
  group,
  family,
  provenance,
  source = 'not named',
  published,
  forecast,
  low,
  high,
  fitted,
}: ComparedRow): CheckRow {
  return {
    label,
    group,
    ...(family === undefined ? {} : { family }),
    provenance,
    source,
    published,
    forecast,
    ...(low === undefined || high === undefined ? {} : { low, high }),
    ...(fitted === true ? { fitted } : {}),
  }
}

/** The same with every number to a few digits. */
function rounded<T>(value: T): T {
  return JSON.parse(JSON.stringify(value, (_, each: unknown) => (typeof each === 'number' ? kept(each) : each))) as T
}
