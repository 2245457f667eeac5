import type { Basis } from '#engine/provenance/estimate.ts'

/** How slowly a grade may cool, as a sheet's depth says. */
export interface CriticalCooling {
  /** Time from 800 to 500 degC at which half of it is martensite [s]. */
  readonly halfS: number
  /** The sheet gives a depth that hardens at least. */
  readonly atLeast: boolean
  readonly basis: Basis
  readonly source: string
}

/** Full hardness less 3 HRC comes at about this share of the time of half martensite. */
const CRITICAL_SHARE = 0.5

/** Centre of the section that a sheet names, timed with this program's own films and properties (test/verification/published-depths.test.ts). */
const DEPTHS: {
  readonly [gradeId: string]: {
    readonly centreS: number
    readonly atLeast: boolean
    readonly basis: Basis
    readonly source: string
  }
} = {
  A2: {
    centreS: 1150,
    atLeast: true,
    basis: 'published',
    source: 'full hardness in still air in 100 mm at least (AZoM materials articles 6218 and 6222)',
  },
  A6: {
    centreS: 1150,
    atLeast: true,
    basis: 'published',
    source: 'full hardness in still air in 100 mm at least (AZoM materials articles 6218 and 6222)',
  },
  S7: { centreS: 800, atLeast: false, basis: 'published', source: 'air up to about 75 mm, oil above (Crucible data sheet S7)' },
}

/** What is published of the depth that a grade hardens to, turned into a cooling time; undefined for other grades. */
export function publishedCriticalCooling(gradeId: string | undefined): CriticalCooling | undefined {
  const row = gradeId === undefined ? undefined : DEPTHS[gradeId]
  if (row === undefined) return undefined
  return { halfS: row.centreS / CRITICAL_SHARE, atLeast: row.atLeast, basis: row.basis, source: row.source }
}
