import type { Outlook, SpotOutlook, Spread, ZoneOutlook } from '#engine/ensemble/outlook.ts'
import type { SkinOutlook } from '#engine/ensemble/skin-outlook.ts'
import { compositionOf } from '#engine/materials/steel.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { Zone } from '#engine/simulation/process.ts'
import type {
  CarryRecord,
  ColoursRecord,
  HeatRecord,
  QuenchRecord,
  StepRecord,
  TemperRecord,
} from '#engine/simulation/records.ts'
import type { Account } from './account.ts'
import type { SteelFacts } from './steel-facts.ts'

/** A sound little job, made up by hand for the tests: an oil-hardening punch with nothing wrong with it, and one change at a time. */
export interface SampleChange {
  readonly job?: Partial<Job>
  readonly steel?: Partial<SteelFacts>
  readonly heat?: Partial<HeatRecord>
  readonly carry?: Partial<CarryRecord>
  readonly quench?: Partial<QuenchRecord>
  /** null: no temper at all. */
  readonly temper?: Partial<TemperRecord> | null
  readonly colours?: Partial<ColoursRecord>
  readonly before?: readonly StepRecord[]
  readonly after?: readonly StepRecord[]
  /** What a place came to, by its height and whether it is skin. */
  readonly at?: (xM: number, isSkin: boolean) => Partial<SpotOutlook>
  readonly zone?: Partial<ZoneOutlook>
  /** How deep the skin of the first zone is spoiled [m], and half the thickness there. */
  readonly softSkin?: { readonly grindOffM: number; readonly halfThicknessM?: number }
}

const CELSIUS = 273.15

export function sampleAccount(change: SampleChange = {}): Account {
  const job = sampleJob(change.job)
  const lengthM = job.profile.sections.reduce((sum, section) => sum + section.lengthM, 0)
  const oven = job.shop.ovens[0]
  const bath = job.shop.baths[0]
  if (oven === undefined || bath === undefined) throw new Error('the sample shop has lost its oven or its bath')
  const heat: HeatRecord = {
    kind: 'heat',
    step: 0,
    startS: 0,
    endS: 1200,
    fire: { name: 'closed forge', kind: 'muffle' },
    toK: 803 + CELSIUS,
    holdS: 900,
    even: true,
    outsideUpS: 300,
    middleUpS: 110,
    coldestK: 799 + CELSIUS,
    hottestK: 804 + CELSIUS,
    widestGapK: 61,
    massKg: 0.17,
    ...change.heat,
  }
  const carry: CarryRecord = {
    kind: 'carry',
    step: 1,
    startS: 1200,
    endS: 1202,
    coldestSurfaceK: 781 + CELSIUS,
    hottestSurfaceK: 793 + CELSIUS,
    ...change.carry,
  }
  const quench: QuenchRecord = {
    kind: 'quench',
    step: 2,
    startS: 1202,
    endS: 1322,
    bath,
    bathStartK: bath.temperatureK,
    bathEndK: bath.temperatureK + 6,
    depthM: null,
    lengthUnderM: lengthM,
    massUnderKg: 0.17,
    acrossM: 0.014,
    heatIntoBathJ: 1e5,
    hottestInK: 803 + CELSIUS,
    hottestOutK: 331,
    coldestEntryK: 781 + CELSIUS,
    ...change.quench,
  }
  const drawn: StepRecord[] = []
  if (change.colours !== undefined)
    drawn.push({
      kind: 'run-colours',
      step: 3,
      startS: 1322,
      endS: 1400,
      bath,
      stopAtK: 250 + CELSIUS,
      reachedS: 40,
      hottestEdgeK: 251 + CELSIUS,
      risePerS: 2.1,
      byColour: false,
      edgeK: 251 + CELSIUS,
      shownK: 225 + CELSIUS,
      edge: [],
      ...change.colours,
    })
  if (change.temper !== null && change.colours === undefined)
    drawn.push({
      kind: 'temper',
      step: 3,
      startS: 1322,
      endS: 11000,
      oven,
      setK: 205 + CELSIUS,
      trueK: 205 + CELSIUS + oven.readsLowK,
      holdS: 7200,
      times: 2,
      middleUpS: 1900,
      delayS: 0,
      startK: 296,
      shownK: 245 + CELSIUS,
      ...change.temper,
    })
  const outlook = sampleOutlook(job, lengthM, change)
  const records = [...(change.before ?? []), heat, carry, quench, ...drawn, ...(change.after ?? [])]
  return { job, records, outlook, lengthM, steel: { ...SAMPLE_STEEL, ...change.steel } }
}

function sampleJob(change: Partial<Job> = {}): Job {
  return {
    piece: 'punch',
    steel: { name: 'O1', composition: OIL_STEEL, range: {}, grainSize: 8 },
    profile: { sections: [{ shape: 'round', from: { acrossM: 0.014 }, to: { acrossM: 0.014 }, lengthM: 0.14 }] },
    struck: false,
    zones: [{ name: 'point', fromM: 0, toM: 0.03, aim: { lowHrc: 57, highHrc: 61 }, assumed: false }],
    probes: [],
    shop: {
      fires: [{ name: 'closed forge', kind: 'muffle' }],
      baths: [{ name: 'drum', kind: 'medium oil', volumeM3: 0.021, depthM: 0.31, temperatureK: 51 + CELSIUS }],
      ovens: [{ name: 'small oven', maxK: 262 + CELSIUS, readsLowK: 0, swingK: 3 }],
    },
    process: [],
    ...change,
  }
}

const OIL_STEEL = compositionOf({ C: 0.95, Mn: 1.25, Si: 0.3, Cr: 0.5, W: 0.5, V: 0.15, S: 0.01, P: 0.015, Cu: 0.1, Ni: 0.08 })

/** Softens by one point for each 17 K from 64 HRC at 150 degC, whatever the hold. */
export const SAMPLE_STEEL: SteelFacts = {
  name: 'O1',
  gradeId: 'O1',
  composition: OIL_STEEL,
  critical: { ac1K: 739 + CELSIUS, ac3K: 771 + CELSIUS, msK: 214 + CELSIUS },
  hardening: { fromK: 788 + CELSIUS, toK: 816 + CELSIUS, published: true, source: 'a sheet' },
  soak: { leastS: 600, source: 'a sheet' },
  media: { fiercest: 'oil', says: 'oil', source: 'a sheet' },
  cycles: { least: 1, source: 'a sheet' },
  grainSize: 8,
  fullHrc: { value: 64.5, high: 66 },
  fullCoolingS: 9,
  usualRetained: 0.09,
  temperedHrc: (quenchedHrc, { atK }) => Math.max(20, quenchedHrc - Math.max(0, atK - 423.15) / 17),
  afterTempers: (_, retained) => ({ overHrc: 0, left: retained, fresh: 0 }),
  embrittling: [{ fromK: 262 + CELSIUS, toK: 371 + CELSIUS, says: 'Brittle', source: 'a book' }],
}

function sampleOutlook(job: Job, lengthM: number, change: SampleChange): Outlook {
  const acrossM = job.profile.sections[0]?.from.acrossM ?? 0.014
  const spot = (xM: number, rM: number): SpotOutlook => {
    const isSkin = rM > 0.4 * acrossM
    const { quenchedHrc = spread(63.7), temperedHrc = spread(60.2), ...rest } = change.at?.(xM, isSkin) ?? {}
    return {
      spot: { xM, rM },
      peakK: 803 + CELSIUS,
      soakS: 800,
      cooling800To500S: 5.3,
      temperPeakK: 205 + CELSIUS,
      austeniteFraction: 1,
      martensiteFraction: 0.92,
      retainedAusteniteFraction: 0.08,
      austeniteLeftFraction: 0.08,
      freshMartensiteFraction: 0,
      quenchedHrc,
      temperedHrc,
      quenchedHv: spread(790),
      temperedHv: spread(690),
      ...rest,
    }
  }
  const zones = job.zones.map((zone, index): ZoneOutlook => {
    const spots = [0.02, 0.34, 0.66, 0.98].flatMap((share) => {
      const xM = zone.fromM + share * (zone.toM - zone.fromM)
      return [spot(xM, acrossM / 2), spot(xM, 0.3 * acrossM)]
    })
    const over = (pick: (each: SpotOutlook) => Spread): Spread => spread(middleOf(spots.map((each) => pick(each).value)))
    const quenchedHrc = over((each) => each.quenchedHrc)
    const temperedHrc = over((each) => each.temperedHrc)
    return {
      zone,
      spots,
      quenchedHrc,
      temperedHrc,
      temperedHv: spread(690),
      chance: meets(zone, temperedHrc.value) ? 0.9 : 0.02,
      chanceQuenched: quenchedHrc.value >= (zone.aim.lowHrc ?? 0) ? 0.99 : 0.01,
      tooSoft: temperedHrc.value < (zone.aim.lowHrc ?? 0) ? 0.98 : 0.05,
      tooHard: temperedHrc.value > (zone.aim.highHrc ?? 99) ? 0.98 : 0.05,
      ...(index === 0 ? change.zone : {}),
    }
  })
  const along = Array.from({ length: 29 }, (_, k) => {
    const xM = (lengthM * k) / 28
    return { xM, skin: spot(xM, acrossM / 2), centre: spot(xM, 0) }
  })
  const origin = { basis: 'model', source: 'made up for a test' } as const
  const skins = change.softSkin === undefined ? [] : [softSkin(spot(0.001, acrossM / 2), change.softSkin)]
  return { members: 100, seed: 1, zones, probes: [], along, chance: 0.9, skins, quenched: origin, tempered: origin }
}

function softSkin(at: SpotOutlook, { grindOffM, halfThicknessM = 0.007 }: NonNullable<SampleChange['softSkin']>): SkinOutlook {
  const depth = (share: number): Spread => ({
    value: share * grindOffM,
    low: 0.6 * share * grindOffM,
    high: 1.5 * share * grindOffM,
  })
  return {
    zone: 'point',
    at,
    halfThicknessM,
    scaleM: depth(0),
    metalLostM: depth(0.1),
    decarburisedM: depth(1.1),
    grindOffM: depth(1),
    surfaceTemperedHrc: spread(22),
    surfaceQuenchedHrc: spread(22),
    filedHrc: spread(30),
    profile: [],
  }
}

export function spread(value: number): Spread {
  return { value, low: value - 2, high: value + 2 }
}

function middleOf(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0
}

function meets({ aim }: Zone, hrc: number): boolean {
  return hrc >= (aim.lowHrc ?? 0) && hrc <= (aim.highHrc ?? 99)
}
