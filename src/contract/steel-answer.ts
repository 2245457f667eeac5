import * as z from 'zod/mini'
import { type Grade, gradeById } from '#engine/materials/catalogue.ts'
import { clashesOf } from '#engine/materials/clashes.ts'
import { shareBasisOf } from '#engine/materials/grade-heats.ts'
import { type Composition, ELEMENTS, type Steel } from '#engine/materials/steel.ts'
import { findSteel, namesOf } from '#engine/materials/steel-names.ts'
import { type GradeTreatment, treatmentOf } from '#engine/materials/treatment.ts'
import { austeniteAt } from '#engine/metallurgy/austenite.ts'
import { criticalTemperatures } from '#engine/metallurgy/critical-temperatures.ts'
import { derivedTreatment } from '#engine/metallurgy/derived-treatment.ts'
import { idealDiameterM, jominyHrc } from '#engine/metallurgy/hardenability.ts'
import { a255IdealDiameter } from '#engine/metallurgy/ideal-diameter.ts'
import { idealDiameterEstimate, jominyEstimate, usualAustenite } from '#engine/metallurgy/jominy-estimate.ts'
import { fullMartensiteHrc } from '#engine/metallurgy/martensite-hardness.ts'
import { limitsBroken } from '#engine/provenance/correlation.ts'
import type { Estimate } from '#engine/provenance/estimate.ts'
import { celsiusFromKelvin, kelvinFromCelsius } from '#units/temperature.ts'
import type { SteelAnswer } from './answers.ts'
import type { Assumption } from './assumption.ts'
import { takeSteel } from './parse-steel.ts'
import { InputProblems, type Problem } from './problems.ts'
import { durationSchema, noted, temperatureSchema } from './quantity-schemas.ts'
import { taken } from './schema-problems.ts'
import { celsiusFigure, figureOf, hrcFigure, rounded } from './steel-figures.ts'
import { grainSizeSchema, type TypedSteel } from './steel-schema.ts'
import { steelWarnings } from './steel-warnings.ts'
import { type AskedTemper, curveHold, temperRows } from './temper-rows.ts'
import { treatmentAnswer } from './treatment-answer.ts'

/** What may be asked about a steel beside the steel itself; quantities as a smith types them. */
export interface DescribeOptions {
  /** ASTM E112 number of the austenite grain, 7 when left out. */
  readonly grainSize?: number
  /** Hardening heat, "845 C"; the customary one when left out. */
  readonly austenitise?: string
  /** A temper to answer for, "400 C"; it becomes the first row of `temper`. */
  readonly temper?: string
  /** Length of each temper, "1 h". */
  readonly hold?: string
  readonly times?: number
}

const optionsSchema = z.strictObject({
  grainSize: z.optional(grainSizeSchema),
  austenitise: z.optional(temperatureSchema),
  temper: z.optional(temperatureSchema),
  hold: z.optional(durationSchema),
  times: z.optional(noted(z.int().check(z.minimum(1), z.maximum(10)), { description: 'how many tempers, 1 to 10' })),
})

const SIXTEENTHS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 24, 28, 32]
const SIXTEENTH_M = 0.0015875
const HOUR_S = 3600
/** Soak that an asked hardening heat is given [s]. */
const ASKED_SOAK_S = 1800
/** Steel melts from here, the richest first [K]. */
const HOTTEST_K = kelvinFromCelsius(1400)
/** Published full martensite of one carbon content lies within this of the curve, nine times in ten [HRC]; Hodge & Orehoski 1946. */
const FULL_MARTENSITE_HRC = 1.5

/**
 * All that is known of a steel: analysis, critical temperatures, hardenability, treatment with every source, and hardness after tempering,
 * each figure with its band and source.
 *
 * `steel` is `{ grade: 'S7' }`, `{ analysis: { C: 0.4, ... } }` in per cent by weight, or a name in any naming system.
 * Throws `InputProblems` that names each field at fault and the mend.
 */
export function describeSteel(steel: unknown, options: DescribeOptions = {}): SteelAnswer {
  const problems: Problem[] = []
  const assumptions: Assumption[] = []
  const asked = taken(optionsSchema, options, '', problems)
  const input = typeof steel === 'string' || typeof steel === 'number' ? { grade: steel } : steel
  const found = takeSteel(input, asked?.grainSize, problems, assumptions)
  if (found === undefined || asked === undefined || problems.length > 0) throw new InputProblems(problems)
  const grade = found.steel.gradeId === undefined ? undefined : gradeById(found.steel.gradeId)
  const request = {
    austenitiseK: asked.austenitise?.temperatureK,
    temperK: asked.temper?.temperatureK,
    holdS: asked.hold?.durationS,
    times: asked.times,
  }
  return answerOf(found.steel, grade, found.typed, request, assumptions)
}

interface Request {
  readonly austenitiseK: number | undefined
  readonly temperK: number | undefined
  readonly holdS: number | undefined
  readonly times: number | undefined
}

function answerOf(
  steel: Steel,
  grade: Grade | undefined,
  typed: TypedSteel,
  request: Request,
  assumptions: readonly Assumption[],
): SteelAnswer {
  const published = grade === undefined ? undefined : treatmentOf(grade)
  const derived = derivedTreatment(steel)
  const { austenite, says } = austeniteFor(steel, request.austenitiseK)
  const critical = criticalTemperatures(steel.composition, { ...(grade === undefined ? {} : { gradeId: grade.id }), austenite })
  checkHeats(request, critical.ac1K)
  const hold = holdOf(steel, published, request)
  const askedTemper: AskedTemper | undefined = request.temperK === undefined ? undefined : { temperK: request.temperK, ...hold }
  return {
    name: steel.name,
    analysis_wtpct: analysisOf(steel, grade),
    critical: {
      ac1_C: celsiusFigure(critical.ac1K),
      ac3_C: celsiusFigure(critical.ac3K),
      ...(critical.acmK === undefined ? {} : { acm_C: celsiusFigure(critical.acmK) }),
      bs_C: celsiusFigure(critical.bsK),
      ms_C: celsiusFigure(critical.msK),
      mf_C: celsiusFigure(critical.mfK),
    },
    idealDiameter_mm: figureOf(idealDiameterOf(steel, austenite), 1, (metres) => metres * 1000),
    jominy: SIXTEENTHS.map((n) => ({
      distance_mm: rounded(n * SIXTEENTH_M * 1000, 2),
      hardness_HRC: hrcFigure(jominyOf(steel, austenite, n * SIXTEENTH_M)),
    })),
    fullyMartensitic_HRC: hrcFigure(fullMartensiteOf(steel, austenite)),
    asQuenched: (published?.asQuenched ?? []).map(({ hardness, quench, austenitiseK, says: remark }) => ({
      says: [remark, quench, austenitiseK === undefined ? '' : `from ${Math.round(celsiusFromKelvin(austenitiseK))} °C`]
        .filter((part) => part !== '')
        .join(', '),
      hardness_HRC: hrcFigure(hardness),
    })),
    treatment: treatmentAnswer(published, derived),
    temper: temperRows(steel, austenite, { ...hold, belowK: critical.ac1K.value - 20 }, askedTemper),
    alsoKnownAs: grade === undefined ? [] : alsoKnownAs(grade),
    clashes: grade === undefined ? [] : clashesOf(grade).map(({ what, figures }) => ({ what, figures: [...figures] })),
    warnings: steelWarnings({
      steel,
      grade,
      published,
      matchedWarning: warningOf(typed),
      derived,
      request,
      ac1K: critical.ac1K.value,
    }),
    assumptions: [
      ...assumptions,
      ...says,
      ...rangeAssumptions(steel, austenite),
      ...compositionAssumptions(steel, grade),
      ...(request.temperK !== undefined && request.holdS === undefined ? [holdAssumption(hold)] : []),
    ],
  }
}

/** What is in solution when the quench begins: by the asked heat, else by the customary one. */
function austeniteFor(steel: Steel, austenitiseK: number | undefined): { austenite: Composition; says: Assumption[] } {
  if (austenitiseK === undefined)
    return {
      austenite: usualAustenite(steel.composition),
      says: [{ says: 'Hardened from its customary heat.', because: 'no hardening heat was asked for' }],
    }
  const made = austeniteAt(steel, austenitiseK, ASKED_SOAK_S)
  const heat = `${Math.round(celsiusFromKelvin(austenitiseK))} °C`
  return {
    austenite: made.composition,
    says: [
      {
        says: `Held for half an hour at ${heat} from a fine structure (normalised).`,
        because: `no soak was told; ${made.source}`,
      },
    ],
  }
}

function checkHeats({ austenitiseK, temperK }: Request, ac1K: Estimate): void {
  const problems: Problem[] = []
  const heat = (kelvin: number): string => `${Math.round(celsiusFromKelvin(kelvin))} °C`
  if (austenitiseK !== undefined && austenitiseK > HOTTEST_K)
    problems.push({
      field: 'austenitise',
      says: `${heat(austenitiseK)}: the steel would melt; write a hardening heat, as 845 °C`,
    })
  if (temperK !== undefined && temperK > ac1K.value)
    problems.push({
      field: 'temper',
      says: `${heat(temperK)} is over the Ac1 of this steel (about ${heat(ac1K.value)}): it would not temper but begin to harden again; write less`,
    })
  if (problems.length > 0) throw new InputProblems(problems)
}

/** Which limits of the hardenability standard the steel breaks. */
function rangeAssumptions(steel: Steel, austenite: Composition): Assumption[] {
  const broken = limitsBroken(a255IdealDiameter, { ...austenite, grainSize: steel.grainSize })
  if (broken.length === 0) return []
  return [
    {
      says: 'Ideal diameter and end-quench curve are carried beyond the range of ASTM A255: read them as an order of magnitude.',
      because: broken.map((each) => each.replace(/^[^:]+: /, '')).join('; '),
    },
  ]
}

/** Hold and count of the tempers: as asked, else as the grade's own curve or its sheet has it, else one hour once. */
function holdOf(steel: Steel, published: GradeTreatment | undefined, request: Request): { holdS: number; times: number } {
  const curve = curveHold(steel)
  const several = (published?.cycles.from ?? 1) >= 2
  if (request.holdS !== undefined) return { holdS: request.holdS, times: request.times ?? 1 }
  return {
    holdS: curve?.holdS ?? (several ? 2 * HOUR_S : HOUR_S),
    times: request.times ?? curve?.times ?? published?.cycles.from ?? 1,
  }
}

function holdAssumption({ holdS, times }: { holdS: number; times: number }): Assumption {
  return {
    says: `Tempered ${times === 1 ? 'once' : `${times} times`} for ${rounded(holdS / HOUR_S, 2)} h.`,
    because: 'no hold was told',
  }
}

function analysisOf(steel: Steel, grade: Grade | undefined): SteelAnswer['analysis_wtpct'] {
  return Object.fromEntries(
    ELEMENTS.filter((element) => steel.composition[element] > 0).map((element) => {
      const value = steel.composition[element]
      const [low, high] = steel.range[element] ?? [value, value]
      const from =
        grade === undefined ? ({ basis: 'measured', source: 'the analysis given' } as const) : shareBasisOf(grade, element)
      return [element, figureOf({ value, low, high, ...from }, 4)]
    }),
  )
}

/** The band of the customary heat, about the diameter of this austenite. */
function idealDiameterOf(steel: Steel, austenite: Composition): Estimate {
  const usual = idealDiameterEstimate(steel)
  const ratio = idealDiameterM(austenite, steel.grainSize) / usual.value
  return { ...usual, value: usual.value * ratio, low: usual.low * ratio, high: usual.high * ratio }
}

function jominyOf(steel: Steel, austenite: Composition, distanceM: number): Estimate {
  const usual = jominyEstimate(steel, distanceM)
  const shift = jominyHrc(austenite, distanceM, steel.grainSize) - usual.value
  return { ...usual, value: usual.value + shift, low: usual.low + shift, high: usual.high + shift }
}

function fullMartensiteOf(steel: Steel, austenite: Composition): Estimate {
  const value = fullMartensiteHrc(austenite.C)
  const [least, most] = steel.range.C ?? [steel.composition.C, steel.composition.C]
  const at = (carbon: number): number => fullMartensiteHrc(Math.max(0, austenite.C + carbon - steel.composition.C)) - value
  const edge = (byCarbon: number): number => Math.sqrt(byCarbon * byCarbon + FULL_MARTENSITE_HRC * FULL_MARTENSITE_HRC)
  const source = 'ASTM A255-10 up to 0.6 % C, Burns, Moore & Archer 1938 above, for what the hardening heat dissolves'
  return { value, low: value - edge(at(least)), high: value + edge(at(most)), basis: 'model', source }
}

function alsoKnownAs(grade: Grade): SteelAnswer['alsoKnownAs'] {
  return namesOf(grade)
    .filter(({ name, system }) => name !== grade.id && system !== 'trade word')
    .map(({ name, system, near }) => ({ name, system, near }))
}

function warningOf({ grade }: TypedSteel): string | undefined {
  if (grade === undefined) return undefined
  const match = findSteel(grade)
  return match.found ? match.matched.warning : undefined
}

function compositionAssumptions(steel: Steel, grade: Grade | undefined): Assumption[] {
  if (grade === undefined)
    return [
      {
        says: 'Elements that the analysis does not name count as none, with what scrap usually brings as the upper end of their band.',
        because: 'bar from scrap holds some chromium, nickel, molybdenum and copper',
      },
    ]
  const limits = grade.otherLimits.map(({ element, taken: source }) => ({
    says: `${element} is taken within the limits of ${source}.`,
    because: 'the sources differ; both stand under clashes',
  }))
  return [
    {
      says: `The analysis is what bar sold as ${steel.name} is likely to hold, not that of your bar.`,
      because:
        'a maker’s typical analysis or the middle of the limits, with the usual incidental elements; the band holds nine heats in ten',
    },
    ...limits,
  ]
}
