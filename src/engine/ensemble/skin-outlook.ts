import type { Composition } from '#engine/materials/steel.ts'
import { criticalTemperatures } from '#engine/metallurgy/critical-temperatures.ts'
import { hrcFromHv, hvFromHrc } from '#engine/metallurgy/hardness-scales.ts'
import { annealedHv } from '#engine/metallurgy/soft-structure.ts'
import { skinLegs } from '#engine/simulation/fired-surface.ts'
import { heatedFrom } from '#engine/simulation/heated-from.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { Treatment } from '#engine/simulation/treatment.ts'
import { carbonLines } from '#engine/skin/carbon-lines.ts'
import { carbonAt, decarburisedDepthM, depthUntil, type FiredSkin, firedSkin } from '#engine/skin/fired-skin.ts'
import { BEST_TRUTH, type SkinTruth } from '#engine/skin/skin-steps.ts'
import type { SpotHistory } from './history.ts'
import type { Outlook, SpotOutlook, Spread } from './outlook.ts'
import { SteelBehaviour, spotHardness } from './spot-hardness.ts'
import type { SpotPlan } from './spots.ts'
import { heatSigmaOf, NOMINAL_OFFSETS } from './unknowns.ts'

/** The skin of one place after all the fires: depths are under the metal's present surface, beneath its scale [m]. */
export interface SkinOutlook {
  readonly zone?: string
  readonly at: SpotOutlook
  readonly halfThicknessM: number
  /** Thickness of the scale that lies on, and the metal that went into scale in all. */
  readonly scaleM: Spread
  readonly metalLostM: Spread
  /** Until nine tenths of the bar's carbon stand. */
  readonly decarburisedM: Spread
  /** Until the finished hardness is within 1 HRC of that of the steel underneath. */
  readonly grindOffM: Spread
  /** At the very surface, and under the skin [HRC]. */
  readonly surfaceTemperedHrc: Spread
  readonly surfaceQuenchedHrc: Spread
  /** What a file judges right out of the quench: the mean of the outermost 0.08 mm [HRC]. */
  readonly filedHrc: Spread
  readonly profile: readonly {
    readonly depthM: number
    readonly carbonWtPct: Spread
    readonly quenchedHrc: Spread
    readonly temperedHrc: Spread
  }[]
}

/** A file judges about the outer 0.05..0.1 mm: common practice, no source. */
const FILE_DEPTH_M = 0.00008
/** Within this of the steel underneath, the skin counts as fully hard [HRC]. */
const FULL_WITHIN_HRC = 1
const CARBON_LEVELS = 7
/** Depths that are told [m], as far as the skin goes. */
const TOLD_M = [0, 0.02, 0.05, 0.08, 0.12, 0.16, 0.2, 0.25, 0.3, 0.4, 0.5, 0.65, 0.8, 1, 1.3, 1.6, 2, 2.5, 3].map(
  (mm) => mm / 1000,
)
const MOST_PLACES = 4
const LEAST_CARBON = 0.25

/** Outer truths: nine in ten lie between, if the unknowns move together by about one sigma each (memory). */
function outerTruths(judgedWithinK: number): readonly [shallow: SkinTruth, deep: SkinTruth] {
  return [
    { onDiffusion: 0.8, onScaling: 1.5, offK: -1.2 * judgedWithinK, outside: 'most' },
    { onDiffusion: 1.25, onScaling: 0.65, offK: 1.2 * judgedWithinK, outside: 'least' },
  ]
}

/**
 * The skins of the hard zones, each where it came hottest; without any, of the hottest place that hardened. Carbon and scale are worked out on
 * a flat wall; hardness is that of the local carbon through the same quench and tempers. `quick` leaves the band at the best
 * estimate and takes hardness by carbon from a rule of thumb.
 */
export function skinOutlooks(
  job: Job,
  treatment: Pick<Treatment, 'records' | 'trace' | 'body'>,
  plan: SpotPlan,
  history: SpotHistory,
  outlook: Pick<Outlook, 'zones' | 'along'>,
  quick = false,
): SkinOutlook[] {
  const { composition, gradeId } = job.steel
  // Mild steel has no hardness to lose.
  if (composition.C < LEAST_CARBON) return []
  const found = criticalTemperatures(composition, gradeId === undefined ? {} : { gradeId })
  const ac1K = found.ac1K.value
  const steel = { composition, ac1K, ac3K: Math.max(found.ac3K.value, ac1K + 5) }
  const judgedWithinK = heatSigmaOf(job)
  const truths = quick ? [BEST_TRUTH] : [BEST_TRUTH, ...outerTruths(judgedWithinK)]
  return places(plan, history, outlook, ac1K)
    .slice(0, quick ? 1 : MOST_PLACES)
    .flatMap(({ zone, spot, at }): SkinOutlook[] => {
      const legs = skinLegs(treatment.records, treatment.trace, job.process, { peakK: at.peakK })
      const halfThicknessM = 0.5 * acrossAt(job, at.spot.xM)
      const skins = truths.map((truth) => firedSkin(legs, steel, halfThicknessM, truth, quick))
      const [best] = skins
      if (best === undefined) return []
      const hardness = quick ? roughHardness(at, composition) : hardnessByCarbon(job, history, spot, at, steel)
      return [{ ...(zone === undefined ? {} : { zone }), at, halfThicknessM, ...summed(best, skins, hardness, at) }]
    })
}

interface Place {
  readonly zone?: string
  readonly spot: number
  readonly at: SpotOutlook
}

/** The hottest skin of each hard zone that was austenite. */
function places(plan: SpotPlan, history: SpotHistory, outlook: Pick<Outlook, 'zones' | 'along'>, ac1K: number): Place[] {
  const hottest = (spots: readonly number[]): number | undefined => {
    let best: number | undefined
    for (const i of spots)
      if (history.peakK[i]! > ac1K && (best === undefined || history.peakK[i]! > history.peakK[best]! + 1)) best = i
    return best
  }
  const inZones = plan.zones.flatMap(({ zone, at }, z): Place[] => {
    if ((zone.aim.lowHrc ?? 0) < 30) return []
    const skin = at.filter((i) =>
      at.every((j) => plan.spots[j]!.xM !== plan.spots[i]!.xM || plan.spots[j]!.rM <= plan.spots[i]!.rM),
    )
    const spot = hottest(skin)
    return spot === undefined ? [] : [{ zone: zone.name, spot, at: outlook.zones[z]!.spots[at.indexOf(spot)]! }]
  })
  if (inZones.length > 0) return inZones
  const spot = hottest(plan.along.map(({ skin }) => skin))
  const along = spot === undefined ? -1 : plan.along.findIndex(({ skin }) => skin === spot)
  return spot === undefined || along < 0 ? [] : [{ spot, at: outlook.along[along]!.skin }]
}

/** Thickness of the true section at a height [m]. */
function acrossAt({ profile }: Job, xM: number): number {
  let fromM = 0
  for (const { from, to, lengthM } of profile.sections) {
    if (xM <= fromM + lengthM + 1e-9) return from.acrossM + ((to.acrossM - from.acrossM) * Math.max(0, xM - fromM)) / lengthM
    fromM += lengthM
  }
  return profile.sections[profile.sections.length - 1]!.to.acrossM
}

/** Hardness of the place if it had another carbon [HRC], as quenched and finished. */
interface ByCarbon {
  quenchedHrc(carbonWtPct: number): number
  temperedHrc(carbonWtPct: number): number
}

/**
 * A few carbons are put through the place's own heat, quench and tempers. The grade's sheets speak of the whole bar's carbon alone: what they move
 * there is moved in proportion to the carbon that is left. Poorer than austenite can be at that heat, ferrite lies beside it by the lever rule.
 */
function hardnessByCarbon(
  job: Job,
  history: SpotHistory,
  spot: number,
  at: SpotOutlook,
  { composition, ac1K, ac3K }: { readonly composition: Composition; readonly ac1K: number; readonly ac3K: number },
): ByCarbon {
  const bulk = composition.C
  const { austenite } = carbonLines(composition, ac1K, ac3K).at(at.peakK)
  const from = Math.min(0.9 * bulk, Math.max(austenite, 0.05))
  const { gradeId: _, ...nameless } = job.steel
  const found = heatedFrom(job)
  const made = Array.from({ length: CARBON_LEVELS }, (__, k) => {
    const carbon = from + ((bulk - from) * k) / (CARBON_LEVELS - 1)
    const local = { ...composition, C: carbon }
    const { quenchedHrc, temperedHrc } = spotHardness(
      new SteelBehaviour({ ...nameless, composition: local }, local, found),
      history,
      undefined,
      NOMINAL_OFFSETS,
      spot,
    )
    return { carbon, quenchedHrc, temperedHrc }
  })
  const own = made[made.length - 1]!
  const ferriteHv = annealedHv({ ...composition, C: 0 })
  const reader = (of: 'quenchedHrc' | 'temperedHrc', bodyHrc: number) => {
    const moved = bodyHrc - own[of]
    const table = made.map((each) => each[of] + (moved * each.carbon) / bulk)
    const leastHv = hvFromHrc(table[0]!)
    return (carbon: number): number => {
      if (carbon < from) return hrcFromHv(ferriteHv + ((leastHv - ferriteHv) * Math.max(0, carbon)) / from)
      const place = Math.min(CARBON_LEVELS - 1.0001, ((carbon - from) / (bulk - from)) * (CARBON_LEVELS - 1))
      const k = Math.floor(place)
      return table[k]! + (place - k) * (table[k + 1]! - table[k]!)
    }
  }
  return {
    quenchedHrc: reader('quenchedHrc', at.quenchedHrc.value),
    temperedHrc: reader('temperedHrc', at.temperedHrc.value),
  }
}

/** Hardness of martensite hardly rises past this carbon [wt%]. */
const FULL_FROM_WT_PCT = 0.6

/** For one look: hardness in proportion to the carbon, up to where more adds little. */
function roughHardness(at: SpotOutlook, composition: Composition): ByCarbon {
  const ferriteHv = annealedHv({ ...composition, C: 0 })
  const full = Math.min(composition.C, FULL_FROM_WT_PCT)
  const reader = (bodyHrc: number) => {
    const bodyHv = hvFromHrc(bodyHrc)
    return (carbon: number): number => hrcFromHv(ferriteHv + (bodyHv - ferriteHv) * Math.min(1, carbon / full))
  }
  return { quenchedHrc: reader(at.quenchedHrc.value), temperedHrc: reader(at.temperedHrc.value) }
}

function summed(
  best: FiredSkin,
  skins: readonly (FiredSkin | undefined)[],
  hardness: ByCarbon,
  at: SpotOutlook,
): Omit<SkinOutlook, 'zone' | 'at' | 'halfThicknessM'> {
  const over = (of: (skin: FiredSkin) => number, none: number): Spread => {
    const all = skins.map((skin) => (skin === undefined ? none : of(skin)))
    return { value: of(best), low: Math.min(...all), high: Math.max(...all) }
  }
  // The steel's own band counts where the skin has its carbon.
  const hrc = (of: (skin: FiredSkin) => number, body: Spread): Spread => {
    const { value, low, high } = over(of, body.value)
    return {
      value,
      low: Math.min(value, low - (body.value - body.low)),
      high: Math.max(value, Math.min(body.high, high + (body.high - body.value))),
    }
  }
  const bodyHrc = at.temperedHrc.value
  const softer = (carbon: number): boolean => hardness.temperedHrc(carbon) < bodyHrc - FULL_WITHIN_HRC
  const decarburisedM = over(decarburisedDepthM, 0)
  const grindOffM = over((skin) => depthUntil(skin, softer), 0)
  const reachM = 1.3 * Math.max(decarburisedM.high, grindOffM.high, FILE_DEPTH_M)
  const told = TOLD_M.filter((_, k) => k === 0 || TOLD_M[k - 1]! < reachM)
  return {
    scaleM: over(({ scaleM }) => scaleM, 0),
    metalLostM: over(({ metalLostM }) => metalLostM, 0),
    decarburisedM,
    grindOffM,
    surfaceTemperedHrc: hrc((skin) => hardness.temperedHrc(skin.carbonWtPct[0]!), at.temperedHrc),
    surfaceQuenchedHrc: hrc((skin) => hardness.quenchedHrc(skin.carbonWtPct[0]!), at.quenchedHrc),
    filedHrc: hrc((skin) => filed(skin, hardness), at.quenchedHrc),
    profile: told.map((depthM) => ({
      depthM,
      carbonWtPct: over((skin) => carbonAt(skin, depthM), best.bulkWtPct),
      quenchedHrc: hrc((skin) => hardness.quenchedHrc(carbonAt(skin, depthM)), at.quenchedHrc),
      temperedHrc: hrc((skin) => hardness.temperedHrc(carbonAt(skin, depthM)), at.temperedHrc),
    })),
  }
}

function filed(skin: FiredSkin, hardness: ByCarbon): number {
  const cuts = 8
  let sum = 0
  for (let k = 0; k < cuts; k++) sum += hardness.quenchedHrc(carbonAt(skin, (FILE_DEPTH_M * (k + 0.5)) / cuts))
  return sum / cuts
}
