import { log10 } from '#engine/arithmetic/elementary.ts'
import type { Response, SpotHistory } from '#engine/ensemble/history.ts'
import { outlookOf } from '#engine/ensemble/members.ts'
import type { SpotPlan } from '#engine/ensemble/spots.ts'
import type { Job } from '#engine/simulation/job.ts'

/** A temper that has been tried on a hardened piece. */
export interface TriedTemper {
  readonly trueK: number
  readonly chance: number
  readonly tooSoft: number
  readonly tooHard: number
}

const COOLEST_K = 423.15
const STEP_K = 10
const TRIED_MEMBERS = 60
const SEED = 7

/**
 * Temperature that gives the best chance for every zone, up to `hottestK`: the nominal piece finds the neighbourhood, a small
 * ensemble the best place in it. The piece is taken as at one heat for the whole hold; the forecast of the route runs the oven in full.
 */
export function bestTemper(
  job: Job,
  plan: SpotPlan,
  hardened: SpotHistory,
  response: Response | undefined,
  temper: {
    readonly holdS: number
    readonly times: number
    readonly hottestK: number
    readonly avoidK?: readonly [number, number]
  },
): TriedTemper | undefined {
  const ladder: number[] = []
  for (let k = COOLEST_K; k <= temper.hottestK + 1e-6; k += STEP_K) {
    const [low, high] = temper.avoidK ?? [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
    if (k < low || k > high) ladder.push(k)
  }
  if (ladder.length === 0) return undefined
  const miss = ladder.map((trueK) => nominalMiss(job, plan, tempered(hardened, trueK, temper), response))
  const order = ladder.map((_, k) => k).sort((a, b) => miss[a]! - miss[b]! || a - b)
  const near = new Set(order.slice(0, 2).flatMap((k) => [k - 1, k, k + 1]))
  let best: TriedTemper | undefined
  for (const k of [...near].filter((each) => each >= 0 && each < ladder.length).sort((a, b) => a - b)) {
    const trueK = ladder[k]!
    const outlook = outlookOf(job, plan, tempered(hardened, trueK, temper), response, { members: TRIED_MEMBERS, seed: SEED })
    const tooSoft = Math.max(0, ...outlook.zones.map((zone) => zone.tooSoft))
    const tooHard = Math.max(0, ...outlook.zones.map((zone) => zone.tooHard))
    if (best === undefined || outlook.chance > best.chance) best = { trueK, chance: outlook.chance, tooSoft, tooHard }
  }
  return best
}

/** The history of a hardened piece, tempered throughout at one heat. */
function tempered(hardened: SpotHistory, trueK: number, temper: { readonly holdS: number; readonly times: number }): SpotHistory {
  const hours = (temper.holdS * temper.times) / 3600
  const full = (value: number): Float64Array => new Float64Array(hardened.peakK.length).fill(value)
  return {
    ...hardened,
    parameter18K: full(trueK * (18 + log10(hours))),
    parameter20K: full(trueK * (20 + log10(hours))),
    temperPeakK: full(trueK),
  }
}

/** How far the nominal piece is from its aims, summed over the zones [HRC]; inside an aim, a little for the distance from its middle. */
function nominalMiss(job: Job, plan: SpotPlan, history: SpotHistory, response: Response | undefined): number {
  const { zones } = outlookOf(job, plan, history, response, { members: 0, seed: SEED })
  return zones.reduce((sum, { zone, spots }) => {
    const low = zone.aim.lowHrc ?? Number.NEGATIVE_INFINITY
    const high = zone.aim.highHrc ?? Number.POSITIVE_INFINITY
    const values = spots.map((spot) => spot.temperedHrc.value)
    const under = Math.max(0, low - Math.min(...values))
    const over = Math.max(0, Math.max(...values) - high)
    const middle = Number.isFinite(low) && Number.isFinite(high) ? 0.5 * (low + high) : values[0]!
    const off = values.reduce((total, value) => total + Math.abs(value - middle), 0) / values.length
    return sum + under + over + 0.05 * Math.min(off, 20)
  }, 0)
}
