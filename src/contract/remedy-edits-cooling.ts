import { pow } from '#engine/arithmetic/elementary.ts'
import { hardZones } from '#engine/findings/account.ts'
import { BATH_LIMITS } from '#engine/findings/bath-limits.ts'
import type { Agitation, Bath, BathKind } from '#engine/surface-heat/gear.ts'
import type { RemedyGround } from './remedy-edits-ground.ts'

/** How one bath compares with another, roughly: enough to choose what is worth a trial. */

/** Quench severities after Grossmann for a piece that is moved about, from memory. */
const SEVERITY: { readonly [Kind in BathKind]: number } = {
  'still air': 0.02,
  'moving air': 0.03,
  'slow oil': 0.3,
  'medium oil': 0.35,
  'vegetable oil': 0.4,
  'fast oil': 0.5,
  water: 1.1,
  brine: 2.2,
}
const MOVED: { readonly [Each in Agitation]: number } = { still: 0.75, mild: 0.9, moderate: 1, strong: 1.3 }
/** The middle of a thicker piece gains less than its skin. */
const GAIN = 0.8

export interface Moved {
  readonly bath: Pick<Bath, 'kind'>
  readonly agitation: Agitation
}

export function severity({ bath, agitation }: Moved): number {
  return SEVERITY[bath.kind] * (isAir(bath) ? 1 : MOVED[agitation])
}

/** How long a place that takes `coolingS` from 800 to 500 degC in one bath would take in another [s]. */
export function coolingInS(coolingS: number, from: Moved, to: Moved): number {
  return coolingS * pow(severity(from) / severity(to), GAIN)
}

/** The slowest cooling of any place that must be hard [s]; undefined where none came down from a red heat. */
export function slowestCoolingS({ account }: RemedyGround): number | undefined {
  const times = hardZones(account)
    .flatMap(({ spots }) => spots.map(({ cooling800To500S }) => cooling800To500S))
    .filter((s) => Number.isFinite(s))
  return times.length === 0 ? undefined : Math.max(...times)
}

/** One US gallon of oil to the pound of steel warms by about 38 K (D.S. MacKenzie, Thermal Processing); the like of water by two fifths of that. */
const GALLON_TO_POUND_M3_PER_KG = 0.0083
const RISE_K = 38
const WATER_SHARE = 0.4
const BUCKET_M3 = 0.02

/** Whether a bath takes the heat of so much red steel without leaving its range. */
export function takesHeat({ kind, volumeM3 = BUCKET_M3 }: Bath, massKg: number): boolean {
  const limits = BATH_LIMITS[kind]
  if (limits === undefined) return true
  const oil = kind.endsWith('oil')
  return (RISE_K * (oil ? 1 : WATER_SHARE) * GALLON_TO_POUND_M3_PER_KG * massKg) / volumeM3 <= limits.riseK
}

export function isAir({ kind }: Pick<Bath, 'kind'>): boolean {
  return kind === 'still air' || kind === 'moving air'
}
