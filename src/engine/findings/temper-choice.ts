import type { ZoneOutlook } from '#engine/ensemble/outlook.ts'
import type { TemperRecord } from '#engine/simulation/records.ts'
import type { Oven } from '#engine/surface-heat/gear.ts'
import { type Account, drawings } from './account.ts'
import { isStruckZone, STRUCK_END_WARN_HRC } from './struck.ts'

/** A temper of the whole piece, in the oven or by the heat left in the body. */
export interface Drawing extends Pick<TemperRecord, 'step' | 'trueK' | 'setK' | 'holdS' | 'times'> {
  readonly oven?: Oven
}

/** A colour stands for this long at the edge before the piece goes back into the bath [s]: common practice, no source. */
const COLOUR_S = 10

/** The temper that rules a piece: the hottest of those that took all of it since the last quench, else the colours that were run. */
export function rulingDrawing(account: Account): Drawing | undefined {
  const { tempers, colours } = drawings(account)
  const whole = tempers.filter(({ part }) => part === undefined)
  const hottest = [...whole].sort((a, b) => b.trueK - a.trueK)[0]
  if (hottest !== undefined) return hottest
  const run = colours.find(({ reachedS }) => reachedS !== null)
  return run === undefined ? undefined : { step: run.step, trueK: run.edgeK, setK: run.edgeK, holdS: COLOUR_S, times: 1 }
}

/** Hardness of a zone if its temper had been done at `atK` [HRC]: the steel's curve, shifted to pass through what the forecast gives. */
export function zoneHrcAt(account: Account, zone: ZoneOutlook, temper: Drawing, atK: number): number {
  const { holdS, times, trueK } = temper
  const quenched = zone.quenchedHrc.value
  const curve = (k: number): number => account.steel.temperedHrc(quenched, { atK: k, holdS, times })
  return zone.temperedHrc.value + curve(atK) - curve(trueK)
}

const STEP_K = 5
const HOTTEST_K = 973.15
const COOLEST_K = 423.15

/** Coolest temper above the one used that brings a zone down to `hrc`, or undefined where none does [K]. */
export function hotterTemperK(account: Account, zone: ZoneOutlook, temper: Drawing, hrc: number): number | undefined {
  for (let k = temper.trueK + STEP_K; k <= HOTTEST_K; k += STEP_K) if (zoneHrcAt(account, zone, temper, k) <= hrc) return k
  return undefined
}

/** Hottest temper below the one used that leaves a zone at `hrc`, or undefined where none does [K]. */
export function coolerTemperK(account: Account, zone: ZoneOutlook, temper: Drawing, hrc: number): number | undefined {
  for (let k = temper.trueK - STEP_K; k >= COOLEST_K; k -= STEP_K) if (zoneHrcAt(account, zone, temper, k) >= hrc) return k
  return undefined
}

/** The hardness to go for within an aim: its middle, or two points inside an open one [HRC]. */
export function aimedHrc({ zone: { aim } }: ZoneOutlook): number {
  const { lowHrc, highHrc } = aim
  if (lowHrc !== undefined && highHrc !== undefined) return 0.5 * (lowHrc + highHrc)
  return lowHrc !== undefined ? lowHrc + 2 : (highHrc ?? 0) - 2
}

/** A tester reads no closer than this: a zone so little beside its aim needs no other temper [HRC] (about a point, common practice, no source). */
const BESIDE_HRC = 1

/** A zone counts as missed when the best estimate is clearly outside, and more than half of the pieces with it. */
function isTooHard({ zone, temperedHrc, tooHard }: ZoneOutlook): boolean {
  return zone.aim.highHrc !== undefined && temperedHrc.value > zone.aim.highHrc + BESIDE_HRC && tooHard >= 0.5
}

export function isTooSoft({ zone, temperedHrc, tooSoft }: ZoneOutlook): boolean {
  return zone.aim.lowHrc !== undefined && temperedHrc.value < zone.aim.lowHrc - BESIDE_HRC && tooSoft >= 0.5
}

/** A zone that came out too hard, with the temper that would bring it down. */
export interface TooHard {
  readonly each: ZoneOutlook
  readonly temper: Drawing
  readonly atK: number | undefined
  /** Another zone would come out too soft at that temper. */
  readonly spoils: ZoneOutlook | undefined
}

/** Zones that came out too hard for want of temper. */
export function tooHardZones(account: Account): TooHard[] {
  const temper = rulingDrawing(account)
  if (temper === undefined) return []
  return account.outlook.zones.filter(isTooHard).flatMap((each): TooHard[] => {
    // The struck end has its own finding.
    if (isStruckZone(account, each) && each.temperedHrc.value > STRUCK_END_WARN_HRC) return []
    // Soft steel that is still above its aim was not hardened; a temper does nothing to it.
    if (each.spots.every(({ martensiteFraction }) => martensiteFraction < 0.3)) return []
    const atK = hotterTemperK(account, each, temper, aimedHrc(each))
    const spoils =
      atK === undefined
        ? undefined
        : account.outlook.zones.find(
            (other) => other !== each && zoneHrcAt(account, other, temper, atK) < (other.zone.aim.lowHrc ?? 0),
          )
    return [{ each, temper, atK, spoils }]
  })
}
