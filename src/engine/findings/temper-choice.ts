import type { ZoneOutlook } from '#engine/ensemble/outlook.ts'
import type { TemperRecord } from '#engine/simulation/records.ts'
import { type Account, drawings } from './account.ts'

/** The temper that rules a piece: the hottest of those that took all of it since the last quench. */
export function rulingTemper(account: Account): TemperRecord | undefined {
  const whole = drawings(account).tempers.filter(({ part }) => part === undefined)
  return [...whole].sort((a, b) => b.trueK - a.trueK)[0]
}

/** Hardness of a zone if its temper had been done at `atK` [HRC]: the steel's curve, shifted to pass through what the forecast gives. */
export function zoneHrcAt(account: Account, zone: ZoneOutlook, temper: TemperRecord, atK: number): number {
  const { holdS, times, trueK } = temper
  const quenched = zone.quenchedHrc.value
  const curve = (k: number): number => account.steel.temperedHrc(quenched, { atK: k, holdS, times })
  return zone.temperedHrc.value + curve(atK) - curve(trueK)
}

const STEP_K = 5
const HOTTEST_K = 973.15
const COOLEST_K = 423.15

/** Coolest temper above the one used that brings a zone down to `hrc`, or undefined where none does [K]. */
export function hotterTemperK(account: Account, zone: ZoneOutlook, temper: TemperRecord, hrc: number): number | undefined {
  for (let k = temper.trueK + STEP_K; k <= HOTTEST_K; k += STEP_K) if (zoneHrcAt(account, zone, temper, k) <= hrc) return k
  return undefined
}

/** Hottest temper below the one used that leaves a zone at `hrc`, or undefined where none does [K]. */
export function coolerTemperK(account: Account, zone: ZoneOutlook, temper: TemperRecord, hrc: number): number | undefined {
  for (let k = temper.trueK - STEP_K; k >= COOLEST_K; k -= STEP_K) if (zoneHrcAt(account, zone, temper, k) >= hrc) return k
  return undefined
}

/** The hardness to go for within an aim: its middle, or two points inside an open one [HRC]. */
export function aimedHrc({ zone: { aim } }: ZoneOutlook): number {
  const { lowHrc, highHrc } = aim
  if (lowHrc !== undefined && highHrc !== undefined) return 0.5 * (lowHrc + highHrc)
  return lowHrc !== undefined ? lowHrc + 2 : (highHrc ?? 0) - 2
}
