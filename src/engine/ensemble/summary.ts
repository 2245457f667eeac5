import { exp } from '#engine/arithmetic/elementary.ts'
import { hvFromHrc } from '#engine/metallurgy/hardness-scales.ts'
import type { SpotHistory } from './history.ts'
import type { Outlook, SpotOutlook, Spread, ZoneOutlook } from './outlook.ts'
import type { SpotHardness, SteelBehaviour } from './spot-hardness.ts'
import type { SpotPlan } from './spots.ts'

/** What was worked out at the spots of a plan, and how it spreads: what an outlook is summed up from. */
export interface Worked {
  readonly plan: SpotPlan
  readonly history: SpotHistory
  readonly steel: SteelBehaviour
  /** Best estimate at each spot. */
  readonly nominal: readonly SpotHardness[]
  /** Hardness at each spot for every possible piece [HRC]; all have the same number of pieces, at least one. */
  readonly quenched: readonly Float64Array[]
  readonly tempered: readonly Float64Array[]
}

/** An outlook from what the possible pieces gave: by zone, by probe and by height. `counted` goes into the outlook as it stands. */
export function summed(
  { plan, history, steel, nominal, quenched, tempered }: Worked,
  counted: Pick<Outlook, 'members' | 'seed'>,
): Outlook {
  const pieces = quenched[0]?.length ?? 1
  const spotOutlook = (i: number): SpotOutlook => {
    const at = nominal[i]!
    const quenchedHrc = spread(at.quenchedHrc, quenched[i]!)
    const temperedHrc = spread(at.temperedHrc, tempered[i]!)
    const coolingS = exp(history.lnCoolingS[i]!)
    return {
      spot: plan.spots[i]!,
      peakK: history.peakK[i]!,
      soakS: history.soakS[i]!,
      cooling800To500S: coolingS > 9e5 ? Number.POSITIVE_INFINITY : coolingS,
      temperPeakK: history.temperPeakK[i]!,
      austeniteFraction: at.austeniteFraction,
      martensiteFraction: at.martensiteFraction,
      retainedAusteniteFraction: at.retainedAusteniteFraction,
      austeniteLeftFraction: at.austeniteLeftFraction,
      freshMartensiteFraction: at.freshMartensiteFraction,
      quenchedHrc,
      temperedHrc,
      quenchedHv: inHv(quenchedHrc),
      temperedHv: inHv(temperedHrc),
    }
  }
  const zones = plan.zones.map(({ zone, at }): ZoneOutlook => {
    const low = zone.aim.lowHrc ?? Number.NEGATIVE_INFINITY
    const high = zone.aim.highHrc ?? Number.POSITIVE_INFINITY
    let met = 0
    let hardEnough = 0
    let tooSoft = 0
    let tooHard = 0
    for (let m = 0; m < pieces; m++) {
      const soft = at.some((i) => tempered[i]![m]! < low)
      const hard = at.some((i) => tempered[i]![m]! > high)
      if (!soft && !hard) met++
      if (soft) tooSoft++
      if (hard) tooHard++
      if (at.every((i) => quenched[i]![m]! >= low)) hardEnough++
    }
    const pooled = (values: readonly Float64Array[], best: (at: SpotHardness) => number): Spread =>
      spread(median(at.map((i) => best(nominal[i]!))), concatenated(at.map((i) => values[i]!)))
    const temperedHrc = pooled(tempered, (each) => each.temperedHrc)
    return {
      zone,
      spots: at.map(spotOutlook),
      quenchedHrc: pooled(quenched, (each) => each.quenchedHrc),
      temperedHrc,
      temperedHv: inHv(temperedHrc),
      chance: met / pieces,
      chanceQuenched: hardEnough / pieces,
      tooSoft: tooSoft / pieces,
      tooHard: tooHard / pieces,
    }
  })
  let all = 0
  for (let m = 0; m < pieces; m++) {
    const met = plan.zones.every(({ zone, at }) =>
      at.every((i) => tempered[i]![m]! >= (zone.aim.lowHrc ?? -1e9) && tempered[i]![m]! <= (zone.aim.highHrc ?? 1e9)),
    )
    if (met) all++
  }
  const hot = steel.after(Math.max(...history.peakK.subarray(0, plan.ladder?.from)), 600).made
  return {
    ...counted,
    zones,
    probes: plan.probes.map(spotOutlook),
    along: plan.along.map(({ xM, skin, centre }) => ({ xM, skin: spotOutlook(skin), centre: spotOutlook(centre) })),
    chance: all / pieces,
    quenched: { basis: hot.hardening.basis, source: hot.hardening.source },
    tempered: { basis: hot.tempering.basis, source: hot.tempering.source },
  }
}

/** Best estimate with the band between the twentieth and the nineteen-twentieths of the pieces; the estimate never lies outside. */
export function spread(value: number, pieces: Float64Array): Spread {
  const sorted = pieces.slice().sort()
  return { value, low: Math.min(value, quantile(sorted, 0.05)), high: Math.max(value, quantile(sorted, 0.95)) }
}

function quantile(sorted: Float64Array, p: number): number {
  const at = p * (sorted.length - 1)
  const low = Math.floor(at)
  const high = Math.min(low + 1, sorted.length - 1)
  return sorted[low]! + (at - low) * (sorted[high]! - sorted[low]!)
}

function median(values: number[]): number {
  return quantile(Float64Array.from(values).sort(), 0.5)
}

function concatenated(parts: readonly Float64Array[]): Float64Array {
  const joined = new Float64Array(parts.reduce((sum, part) => sum + part.length, 0))
  let at = 0
  for (const part of parts) {
    joined.set(part, at)
    at += part.length
  }
  return joined
}

function inHv({ value, low, high }: Spread): Spread {
  return { value: hvFromHrc(value), low: hvFromHrc(low), high: hvFromHrc(high) }
}
