import { exp } from '#engine/arithmetic/elementary.ts'
import { randomStream } from '#engine/arithmetic/random.ts'
import { hvFromHrc } from '#engine/metallurgy/hardness-scales.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { Response, SpotHistory } from './history.ts'
import type { Outlook, SpotOutlook, Spread, ZoneOutlook } from './outlook.ts'
import { type SpotHardness, SteelBehaviour, spotHardness } from './spot-hardness.ts'
import type { SpotPlan } from './spots.ts'
import { drawMember, NOMINAL_OFFSETS } from './unknowns.ts'

/** Runs the members of the ensemble over the spots of a plan, and sums them up by zone, probe and height. */
export function outlookOf(
  job: Job,
  plan: SpotPlan,
  history: SpotHistory,
  response: Response | undefined,
  options: { readonly members: number; readonly seed: number },
): Outlook {
  const { members, seed } = options
  const count = plan.spots.length
  const nominalSteel = new SteelBehaviour(job.steel, job.steel.composition)
  const nominal = Array.from({ length: count }, (_, i) => spotHardness(nominalSteel, history, response, NOMINAL_OFFSETS, i))
  const quenched = nominal.map(() => new Float64Array(members))
  const tempered = nominal.map(() => new Float64Array(members))
  const random = randomStream(seed)
  for (let m = 0; m < members; m++) {
    const member = drawMember(job, random)
    const behaviour = new SteelBehaviour(job.steel, member.composition)
    for (let i = 0; i < count; i++) {
      const { quenchedHrc, temperedHrc } = spotHardness(behaviour, history, response, member, i)
      quenched[i]![m] = quenchedHrc
      tempered[i]![m] = temperedHrc
    }
  }
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
    for (let m = 0; m < members; m++) {
      const soft = at.some((i) => tempered[i]![m]! < low)
      const hard = at.some((i) => tempered[i]![m]! > high)
      if (!soft && !hard) met++
      if (soft) tooSoft++
      if (hard) tooHard++
      if (at.every((i) => quenched[i]![m]! >= low)) hardEnough++
    }
    const pooled = (values: Float64Array[], best: (at: SpotHardness) => number): Spread =>
      spread(median(at.map((i) => best(nominal[i]!))), concatenated(at.map((i) => values[i]!)))
    const temperedHrc = pooled(tempered, (each) => each.temperedHrc)
    return {
      zone,
      spots: at.map(spotOutlook),
      quenchedHrc: pooled(quenched, (each) => each.quenchedHrc),
      temperedHrc,
      temperedHv: inHv(temperedHrc),
      chance: met / members,
      chanceQuenched: hardEnough / members,
      tooSoft: tooSoft / members,
      tooHard: tooHard / members,
    }
  })
  let all = 0
  for (let m = 0; m < members; m++) {
    const met = plan.zones.every(({ zone, at }) =>
      at.every((i) => tempered[i]![m]! >= (zone.aim.lowHrc ?? -1e9) && tempered[i]![m]! <= (zone.aim.highHrc ?? 1e9)),
    )
    if (met) all++
  }
  const hot = nominalSteel.after(Math.max(...history.peakK), 600).made
  return {
    members,
    seed,
    zones,
    probes: plan.probes.map(spotOutlook),
    along: plan.along.map(({ xM, skin, centre }) => ({ xM, skin: spotOutlook(skin), centre: spotOutlook(centre) })),
    chance: all / members,
    quenched: { basis: hot.hardening.basis, source: hot.hardening.source },
    tempered: { basis: hot.tempering.basis, source: hot.tempering.source },
  }
}

/** Best estimate with the band between the twentieth and the nineteen-twentieths of the members; the estimate never lies outside. */
function spread(value: number, members: Float64Array): Spread {
  if (members.length === 0) return { value, low: value, high: value }
  const sorted = members.slice().sort()
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
