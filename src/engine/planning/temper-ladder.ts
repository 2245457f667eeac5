import { log10 } from '#engine/arithmetic/elementary.ts'
import { randomStream } from '#engine/arithmetic/random.ts'
import type { Response, SpotHistory } from '#engine/ensemble/history.ts'
import { SteelBehaviour, spotHardness } from '#engine/ensemble/spot-hardness.ts'
import type { SpotPlan } from '#engine/ensemble/spots.ts'
import { drawMember, NOMINAL_OFFSETS } from '#engine/ensemble/unknowns.ts'
import { heatedFrom } from '#engine/simulation/heated-from.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { Zone } from '#engine/simulation/process.ts'
import type { Rounding } from './rounding.ts'
import { hardZonesOf } from './zones.ts'

/** A hardened piece, ready to have tempers tried on it. */
export interface Hardened {
  readonly job: Job
  readonly plan: SpotPlan
  readonly history: SpotHistory
  readonly response: Response | undefined
}

/** What a temper is done in: an oven, or a muffle that holds a heat. */
export interface TemperGear {
  readonly name: string
  /** Of its own reading [K]. */
  readonly leastK: number
  readonly mostK: number
  /** Truth less reading, with what its swing is worth [K]. */
  readonly offsetK: number
  /** Better first. */
  readonly order: number
}

export interface TemperTried {
  /** What the gear is set to, and what the steel gets [K]. */
  readonly dialK: number
  readonly trueK: number
  /** That every judged zone meets its aim. */
  readonly chance: number
  /** Summed misses of the nominal piece, for telling hopeless from nearly [HRC]. */
  readonly missHrc: number
}

/** How well a piece hardened, and the best temper for it with all zones counted and with the hard ones alone. */
export interface Ladder {
  readonly all: TemperTried
  readonly hardOnly: TemperTried
}

const TRIED_MEMBERS = 80
const SEED = 7
/** Settings looked at on either side of the best nominal one. */
const NEIGHBOURS = 5
/** Chances closer than this are alike: the setting nearest the middle of the aims is taken. */
const ALIKE = 0.02
/** The edges of a brittle range are no better known [K]. */
const CLEAR_OF_BRITTLE_K = 8
/** What a smith gives up to stay out of a brittle range: more where the tool is struck. */
const FOR_TOUGHNESS = { struck: 0.15, other: 0.08 } as const
const MISS_FOR_TOUGHNESS_HRC = 2
const LEAST_CHANCE = 0.1

interface Judged {
  readonly zone: Zone
  readonly at: readonly number[]
}

/**
 * The settings of one oven, tried on a hardened piece: the nominal piece finds the neighbourhood, a small ensemble the best place in it.
 * The piece is taken as at one heat for the whole hold; the forecast of the route runs the oven in full.
 */
export function temperLadder(
  hardened: Hardened,
  gear: TemperGear,
  temper: {
    readonly holdS: number
    readonly times: number
    readonly brittleK: readonly (readonly [number, number])[]
    readonly rounding: Rounding
  },
): Ladder | undefined {
  const { job, plan } = hardened
  const dials: number[] = []
  const { rounding } = temper
  for (let k = rounding.atMostK(gear.mostK); k >= gear.leastK - 1e-6; k = rounding.atMostK(k - rounding.temperatureStepK))
    dials.unshift(k)
  if (dials.length === 0) return undefined
  const hours = (temper.holdS * temper.times) / 3600
  const histories = dials.map((dialK) => temperedAt(hardened.history, dialK + gear.offsetK, hours, temper.times))
  const hard = hardZonesOf(job.zones)
  const judgements = [plan.zones, plan.zones.filter(({ zone }) => hard.includes(zone))] as const
  const spots = [...new Set(plan.zones.flatMap(({ at }) => at))]
  const nominal = new SteelBehaviour(job.steel, job.steel.composition, heatedFrom(job))
  const hrcAt = histories.map((history) => {
    const values: number[] = []
    for (const i of spots) values[i] = spotHardness(nominal, history, hardened.response, NOMINAL_OFFSETS, i).temperedHrc
    return values
  })
  const misses = judgements.map((zones) => hrcAt.map((values) => missOf(zones, values)))
  const brittle = dials.map((dialK) =>
    temper.brittleK.some(([low, high]) => isWithin(dialK + gear.offsetK, low - CLEAR_OF_BRITTLE_K, high + CLEAR_OF_BRITTLE_K)),
  )
  const looked = new Set<number>()
  for (const miss of misses)
    for (const only of [() => true, (k: number) => !brittle[k]]) {
      const best = dials
        .map((_, k) => k)
        .filter(only)
        .sort((a, b) => miss[a]! - miss[b]! || a - b)[0]
      if (best === undefined) continue
      for (let k = best - NEIGHBOURS; k <= best + NEIGHBOURS; k++) if (k >= 0 && k < dials.length) looked.add(k)
    }
  const met = judgements.map(() => new Map([...looked].map((k): [number, number] => [k, 0])))
  const random = randomStream(SEED)
  for (let m = 0; m < TRIED_MEMBERS; m++) {
    const member = drawMember(job, random)
    const behaviour = new SteelBehaviour(job.steel, member.composition, heatedFrom(job))
    for (const k of looked) {
      const values: number[] = []
      for (const i of spots) values[i] = spotHardness(behaviour, histories[k]!, hardened.response, member, i).temperedHrc
      judgements.forEach((zones, j) => {
        if (zones.every(({ zone, at }) => at.every((i) => meets(zone, values[i]!)))) met[j]!.set(k, met[j]!.get(k)! + 1)
      })
    }
  }
  const best = (j: 0 | 1): TemperTried => {
    const tried = [...looked].map((k) => ({ k, chance: met[j]!.get(k)! / TRIED_MEMBERS, missHrc: misses[j]![k]! }))
    const top = (from: typeof tried) => {
      const most = Math.max(...from.map(({ chance }) => chance))
      return from.filter(({ chance }) => chance >= most - ALIKE).sort((a, b) => a.missHrc - b.missHrc || a.k - b.k)[0]
    }
    const any = top(tried)!
    const clear = top(tried.filter(({ k }) => !brittle[k]))
    const tough =
      clear !== undefined &&
      clear.chance >= Math.max(any.chance - FOR_TOUGHNESS[job.struck ? 'struck' : 'other'], Math.min(any.chance, LEAST_CHANCE)) &&
      clear.missHrc <= any.missHrc + MISS_FOR_TOUGHNESS_HRC
    const { k, chance, missHrc } = tough ? clear : any
    return { dialK: dials[k]!, trueK: dials[k]! + gear.offsetK, chance, missHrc }
  }
  return { all: best(0), hardOnly: best(1) }
}

/** Chance that every hard zone leaves the bath at least as hard as it must become. */
export function quenchedChance({ job, plan, history, response }: Hardened): number {
  const hard = hardZonesOf(job.zones)
  const zones = plan.zones.filter(({ zone }) => hard.includes(zone))
  const random = randomStream(SEED)
  let met = 0
  for (let m = 0; m < TRIED_MEMBERS; m++) {
    const member = drawMember(job, random)
    const behaviour = new SteelBehaviour(job.steel, member.composition, heatedFrom(job))
    const hardEnough = zones.every(({ zone, at }) =>
      at.every((i) => spotHardness(behaviour, history, response, member, i).quenchedHrc >= (zone.aim.lowHrc ?? 0)),
    )
    if (hardEnough) met++
  }
  return met / TRIED_MEMBERS
}

/** Coolest flame that brings a zone under its upper bound in nearly every piece [K]; the hottest allowed where none does. */
export function drawingHeatK(
  { job, plan, history, response }: Hardened,
  zone: Zone,
  flame: { readonly holdS: number; readonly mostK: number; readonly rounding: Rounding },
): number {
  const at = plan.zones.find((each) => each.zone === zone)?.at ?? []
  const nominal = new SteelBehaviour(job.steel, job.steel.composition, heatedFrom(job))
  const { lowHrc, highHrc = 100 } = zone.aim
  const wantedHrc = lowHrc === undefined ? highHrc - WELL_UNDER_HRC : 0.5 * (lowHrc + highHrc)
  for (let k = flame.rounding.temperatureK(COOLEST_DRAW_K); k <= flame.mostK; k += 2 * flame.rounding.temperatureStepK) {
    const drawn = temperedAt(history, k, flame.holdS / 3600)
    if (at.every((i) => spotHardness(nominal, drawn, response, NOMINAL_OFFSETS, i).temperedHrc <= wantedHrc)) return k
  }
  return flame.rounding.atMostK(flame.mostK)
}

/** A flame draws unevenly: the nominal piece is aimed this far under the bound [HRC] (common practice, no source). */
const WELL_UNDER_HRC = 4
const COOLEST_DRAW_K = 673.15

/** The history of a hardened piece, tempered throughout at one heat, `hours` in so many tempers. */
function temperedAt(hardened: SpotHistory, trueK: number, hours: number, times = 1): SpotHistory {
  const full = (value: number): Float64Array => new Float64Array(hardened.peakK.length).fill(value)
  return {
    ...hardened,
    parameter18K: full(trueK * (18 + log10(hours))),
    parameter20K: full(trueK * (20 + log10(hours))),
    temperPeakK: full(trueK),
    rounds: [{ times, parameter20K: full(trueK * (20 + log10(hours / times))), peakK: full(trueK) }],
  }
}

function meets({ aim }: Zone, hrc: number): boolean {
  return hrc >= (aim.lowHrc ?? Number.NEGATIVE_INFINITY) && hrc <= (aim.highHrc ?? Number.POSITIVE_INFINITY)
}

/** How far the nominal piece is from its aims, summed over the zones [HRC]; inside an aim, a little for the distance from its middle. */
function missOf(zones: readonly Judged[], hrc: readonly number[]): number {
  return zones.reduce((sum, { zone, at }) => {
    const low = zone.aim.lowHrc ?? Number.NEGATIVE_INFINITY
    const high = zone.aim.highHrc ?? Number.POSITIVE_INFINITY
    const values = at.map((i) => hrc[i]!)
    const under = Math.max(0, low - Math.min(...values))
    const over = Math.max(0, Math.max(...values) - high)
    const middle = Number.isFinite(low) && Number.isFinite(high) ? 0.5 * (low + high) : undefined
    const off = middle === undefined ? 0 : values.reduce((total, value) => total + Math.abs(value - middle), 0) / values.length
    return sum + under + over + 0.05 * Math.min(off, 20)
  }, 0)
}

function isWithin(value: number, low: number, high: number): boolean {
  return value >= low && value <= high
}
