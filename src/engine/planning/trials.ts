import { hardenedDraft } from '#engine/ensemble/forecast.ts'
import type { Wording } from '#engine/findings/wording.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { ProcessStep, Zone } from '#engine/simulation/process.ts'
import type { Fire } from '#engine/surface-heat/gear.ts'
import { type HeatTimer, heatTimer } from './fires.ts'
import { type HardLength, partLengths, takesWhole } from './hard-lengths.ts'
import type { QuenchMeans } from './media.ts'
import { type Rounding, wholeMinutes } from './rounding.ts'
import type { SteelPractice } from './steel-practice.ts'
import { drawingFlame } from './temper-gear.ts'
import { drawingHeatK, type Hardened, quenchedChance, type TemperGear, temperLadder } from './temper-ladder.ts'
import type { Layout } from './zones.ts'

/** All that the trials of one job share. */
export interface Shopfloor {
  readonly job: Job
  readonly layout: Layout
  readonly practice: SteelPractice
  readonly fire: Fire
  readonly gear: readonly TemperGear[]
  readonly rounding: Rounding
  readonly wording: Wording
  readonly timer: HeatTimer
}

/** A complete process that has been tried on the draft mesh. */
export interface Tried {
  readonly says: string
  readonly process: readonly ProcessStep[]
  readonly chance: number
  readonly missHrc: number
  /** That the hard zones leave the bath hard enough. */
  readonly quenched: number
  readonly fierceness: number
  readonly fuss: number
}

export function shopfloorOf(parts: Omit<Shopfloor, 'timer'>): Shopfloor {
  return { ...parts, timer: heatTimer(parts.job, parts.layout.thickestM) }
}

/** Hardens well enough that nothing fiercer is looked at. */
const WELL_HARDENED = 0.75
/** Hardens so badly that no part dip or part heat is tried. */
const HOPELESS = 0.02
/** What another way must gain to be looked for. */
const WORTHWHILE = 0.08

/** What an honest band leaves of an aim this narrow: a chance of six in a hundred for each point of its width, a half at most. */
function goodChance({ hard }: Layout): number {
  const widths = hard.map(({ aim: { lowHrc = 0, highHrc = 100 } }) => highHrc - lowHrc)
  return Math.min(0.5, 0.06 * Math.min(...widths))
}

/** Every complete process worth a full forecast, from the gentlest medium until one hardens well. */
export function tryAll(floor: Shopfloor, means: readonly QuenchMeans[], onTry: (says: string) => void): readonly Tried[] {
  const tried: Tried[] = []
  for (const each of means) {
    onTry(each.says)
    const { found, hardens } = tryMeans(floor, each)
    tried.push(...found)
    const best = Math.max(0, ...found.map(({ chance }) => chance))
    if (hardens >= WELL_HARDENED && best >= goodChance(floor.layout)) break
  }
  return tried
}

function tryMeans(floor: Shopfloor, means: QuenchMeans): { readonly found: readonly Tried[]; readonly hardens: number } {
  const { layout, rounding } = floor
  const inAir = means.medium === 'air'
  const found: Tried[] = []
  let hardens = 0
  const consider = (length: HardLength): { readonly quenched: number; readonly toGain: number } => {
    const trial = tryLength(floor, means, length)
    if (trial === undefined) return { quenched: 0, toGain: 1 }
    found.push(...trial.tried)
    hardens = Math.max(hardens, trial.quenched)
    return trial
  }
  let first = { quenched: 1, toGain: 1 }
  if (inAir || takesWhole(means.bath, layout.lengthM)) first = consider({ kind: 'whole', fuss: 0 })
  if (first.quenched > HOPELESS && first.toGain > WORTHWHILE)
    for (const length of partLengths(layout, means.bath, inAir, rounding)) consider(length)
  // A piece too long for the bath is forecast all the same, so that the answer can say by how much.
  if (found.length === 0) consider({ kind: 'whole', fuss: 0 })
  return { found, hardens }
}

/** One way to harden, with the best temper for it; where the whole piece hardens, with the soft zones drawn in a flame as well. */
function tryLength(
  floor: Shopfloor,
  means: QuenchMeans,
  length: HardLength,
): { readonly tried: readonly Tried[]; readonly quenched: number; readonly toGain: number } | undefined {
  const steps = hardeningSteps(floor, means, length)
  if (steps === undefined) return undefined
  const job: Job = { ...floor.job, process: steps }
  const { plan, history, response } = hardenedDraft(job)
  const hardened: Hardened = { job, plan, history, response }
  const { practice, rounding, layout, wording } = floor
  const holdS = temperHoldS(layout.thickestM)
  const ladders = floor.gear.flatMap((gear) => {
    const ladder = temperLadder(hardened, gear, { holdS, times: practice.cycles, brittleK: practice.brittleK, rounding })
    return ladder === undefined ? [] : [{ gear, ladder }]
  })
  const better = (which: 'all' | 'hardOnly') =>
    [...ladders].sort(
      (a, b) =>
        Math.round(20 * (b.ladder[which].chance - a.ladder[which].chance)) ||
        Math.round(4 * (a.ladder[which].missHrc - b.ladder[which].missHrc)) ||
        a.gear.order - b.gear.order,
    )[0]
  const all = better('all')
  const hard = better('hardOnly')
  if (all === undefined || hard === undefined) return { tried: [], quenched: quenchedChance(hardened), toGain: 0 }
  const complete = (gear: TemperGear, dialK: number, draws: readonly ProcessStep[]): Pick<Tried, 'process' | 'says'> => ({
    process: [...steps, { do: 'temper', in: gear.name, atK: dialK, holdS, times: practice.cycles }, ...draws],
    says: `${inWords(length, means, wording)}; tempered ${timesInWords(practice.cycles)}at ${wording.temperature(dialK)} in the ${gear.name}`,
  })
  const quenched = quenchedChance(hardened)
  const tried: Tried[] = [
    {
      quenched,
      ...complete(all.gear, all.ladder.all.dialK, []),
      chance: all.ladder.all.chance,
      missHrc: all.ladder.all.missHrc,
      fierceness: means.fierceness,
      fuss: length.fuss,
    },
  ]
  const toGain = hard.ladder.hardOnly.chance - all.ladder.all.chance
  const draws = length.kind === 'whole' && toGain > WORTHWHILE ? drawnEnds(floor, hardened) : []
  if (draws.length > 0) {
    const whole = complete(hard.gear, hard.ladder.hardOnly.dialK, draws)
    const flame = draws[0]!.in
    tried.push({
      quenched,
      process: whole.process,
      says: `${whole.says}; ${layout.soft.map(({ name }) => name).join(' and ')} drawn in the ${flame}`,
      chance: 0.95 * hard.ladder.hardOnly.chance,
      missHrc: hard.ladder.hardOnly.missHrc,
      fierceness: means.fierceness,
      fuss: 2,
    })
  }
  return { tried, quenched, toGain }
}

const WALK_S = 3
const AIR_COOL_S = 1800
const AFTER_MIDDLE_S = 60
const NORMALISED_TIMES = 2

/** From the bar to the bath; undefined where the fire does not bring this length to heat evenly. */
function hardeningSteps(floor: Shopfloor, means: QuenchMeans, { heatToM, depthM }: HardLength): ProcessStep[] | undefined {
  const { practice, fire, rounding, layout, timer } = floor
  const toK = rounding.temperatureK(practice.austeniteK)
  const trial = timer(fire, toK, heatToM)
  if (!trial.reached) return undefined
  const wholeUpS = timer(fire, toK, undefined).middleUpS ?? 0
  const inAir = means.medium === 'air'
  const before: ProcessStep[] =
    practice.normaliseK === undefined
      ? []
      : [
          {
            do: 'normalise',
            in: fire.name,
            toK: rounding.temperatureK(practice.normaliseK),
            holdS: wholeMinutes(wholeUpS + AFTER_MIDDLE_S),
            times: NORMALISED_TIMES,
          },
        ]
  return [
    ...before,
    ...(means.warming === undefined ? [] : [means.warming]),
    {
      do: 'heat',
      in: fire.name,
      toK,
      // Where the cold shank keeps one place of the hard zone back, the hold is that of the whole; the forecast tells what comes of it.
      holdS: wholeMinutes((trial.middleUpS ?? wholeUpS) + practice.soakS),
      even: true,
      ...(heatToM === undefined ? {} : { part: { fromM: 0, toM: heatToM } }),
    },
    { do: 'carry', forS: WALK_S },
    {
      do: 'quench',
      in: means.bath.name,
      ...(depthM === undefined ? {} : { depthM }),
      forS: inAir ? AIR_COOL_S : timeInBathS(layout.thickestM),
      agitation: means.agitation,
    },
  ]
}

/** In the bath until it can be held in the hand: about six seconds a millimetre, between one minute and ten (common practice, no source). */
function timeInBathS(thickestM: number): number {
  return Math.min(600, Math.max(60, Math.ceil(thickestM * 1000 * 0.1) * 60))
}

/** Two hours, and an hour an inch where that is more: the sheets of Crucible for O1, S5, S7 and D2. */
function temperHoldS(thickestM: number): number {
  return Math.max(2, Math.ceil(thickestM / 0.0254 - 0.05)) * 3600
}

/** Faint red for a minute a centimetre of thickness, from two to five (common practice, no source). */
function drawHoldS(thickestM: number): number {
  return Math.min(5, Math.max(2, Math.round(thickestM * 100))) * 60
}

const UNDER_AC1_K = 40
/** The flame stays this far from what must stay hard [m]: common practice, no source. */
const CLEAR_OF_HARD_M = 0.015
const SHORTEST_DRAW_M = 0.008
type Draw = Extract<ProcessStep, { do: 'temper' }>

/** Flame on each soft zone that the temper leaves too hard, the rest kept wet. */
function drawnEnds(floor: Shopfloor, hardened: Hardened): readonly Draw[] {
  const { job, layout, rounding, practice } = floor
  const flame = drawingFlame(job)
  if (flame === undefined) return []
  const holdS = drawHoldS(layout.thickestM)
  const draws = layout.soft.map((zone): Draw | undefined => {
    const part = drawnPart(layout, zone, rounding)
    if (part === undefined) return undefined
    const mostK = practice.facts.critical.ac1K - UNDER_AC1_K
    const atK = drawingHeatK(hardened, zone, { holdS, mostK, rounding })
    return { do: 'temper', in: flame.name, atK, holdS, times: 1, part }
  })
  return draws.every((draw): draw is Draw => draw !== undefined) ? draws : []
}

/** The rest is wet and draws heat off: the flame reaches this far past the zone, or three thicknesses where that is more [m]. */
const PAST_ZONE_M = 0.03

function drawnPart({ hard, lengthM, thickestM }: Layout, zone: Zone, rounding: Rounding): Draw['part'] | undefined {
  const before = Math.max(0, ...hard.filter(({ toM }) => toM <= zone.fromM + 1e-9).map(({ toM }) => toM + CLEAR_OF_HARD_M))
  const after = Math.min(
    lengthM,
    ...hard.filter(({ fromM }) => fromM >= zone.toM - 1e-9).map(({ fromM }) => fromM - CLEAR_OF_HARD_M),
  )
  const atEnd = zone.toM >= lengthM - 0.002
  const pastM = Math.max(PAST_ZONE_M, 3 * thickestM)
  const fromM = rounding.lengthM(Math.max(before, zone.fromM - pastM))
  const toM = atEnd ? lengthM : rounding.lengthM(Math.min(after, zone.toM + pastM))
  return toM - fromM >= SHORTEST_DRAW_M ? { fromM, toM } : undefined
}

function inWords({ kind, heatToM, depthM }: HardLength, { says, medium }: QuenchMeans, wording: Wording): string {
  if (medium === 'air')
    return kind === 'whole' ? 'heated whole, cooled in still air' : `${wording.length(heatToM ?? 0)} heated, cooled in still air`
  if (kind === 'whole') return `heated and quenched whole in the ${says}`
  if (heatToM === undefined) return `heated whole, dipped ${wording.length(depthM ?? 0)} in the ${says}`
  return `${wording.length(heatToM)} heated, ${depthM === undefined ? 'quenched whole' : `dipped ${wording.length(depthM)}`} in the ${says}`
}

function timesInWords(times: number): string {
  return times === 1 ? '' : times === 2 ? 'twice ' : `${times} times `
}
