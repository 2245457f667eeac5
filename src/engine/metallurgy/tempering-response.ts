import { exp, log10 } from '#engine/arithmetic/elementary.ts'
import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import { gradeById } from '#engine/materials/catalogue.ts'
import { steelOf } from '#engine/materials/grade-heats.ts'
import type { Composition, Steel } from '#engine/materials/steel.ts'
import type { Basis } from '#engine/provenance/estimate.ts'
import { ADDITIVE_NODES, additiveTempering } from './additive-tempering.ts'
import { fullHardness } from './full-hardness.ts'
import { hardeningResponse } from './hardening-response.ts'
import { hvFromHrc } from './hardness-scales.ts'
import { usualAustenite } from './jominy-estimate.ts'
import { fullMartensiteHrc } from './martensite-hardness.ts'
import { type AusteniteTempered, austeniteTempered, freshShare, type TemperRound } from './retained-in-temper.ts'
import { annealedHv } from './soft-structure.ts'
import { poolResidual, type TemperingResidual } from './tempering-residual.ts'
import { FINE_OVER_ANNEALED, temperedRestHv, usualBainiteShare } from './tempering-rest.ts'
import { type TablesKnown, TEMPERING_SCATTER, type TemperingKind, temperingKind } from './tempering-scatter.ts'
import { temperingSourcesOf } from './tempering-sources.ts'

/** How one steel softens on tempering, whatever the history: by the tempering parameter of `advanceParameter`. */
export interface TemperingResponse {
  /** Constant of the parameter that `temperedHv` takes, for hours: 18, or 20 for steel with a secondary peak. */
  readonly constant: number
  readonly basis: Basis
  readonly source: string
  /** One standard deviation of a single piece about the curve [HRC]. */
  readonly scatterHrc: number
  /** What the scatter was chosen by. */
  readonly kind: TemperingKind
  readonly tables: TablesKnown
  /**
   * Hardness after tempering [HV].
   *
   * `quenchedHv` and `martensiteFraction` (0..1) speak of the piece as quenched, `parameterK` of all its tempers together (0 = none).
   * Only the martensite tempers by the curve; bainite softens more slowly, pearlite and ferrite by their own law. `bainiteOfRest` is the share
   * of bainite in what is not martensite; without it that of the steel's kind. Never above `quenchedHv` unless the steel has a secondary peak.
   */
  temperedHv(quenchedHv: number, martensiteFraction: number, parameterK: number, bainiteOfRest?: number): number
  /**
   * The same after what the tempers made of `retained` austenite (share of the whole): soft where it is left, hard where it turned to martensite that no
   * temper came after. Tables of steel with a secondary peak speak of so many tempers and hold that already: only the difference to them is added.
   */
  afterTempers(temperedHv: number, retained: number, rounds: readonly TemperRound[]): AfterTempers
}

export interface AfterTempers {
  readonly hv: number
  /** Shares of the whole: austenite that is left, and fresh martensite. */
  readonly left: number
  readonly fresh: number
}

export interface TemperingOptions {
  /** Tables to leave out, by id: for checks that hold a table against the others. */
  readonly without?: readonly string[]
}

/**
 * Tables of constructional steel disagree by up to 8 HRC for one name (4140 after 650 degC: 20.8 and 28 HRC); the additive model,
 * fitted to 23 heats, counts beside them as one table. Tool-steel tables stand alone: the model is out of its range there.
 */
const MODEL_COUNTS = 1

/** Grange-Baughman parameter (1.8 M18 / 1000) up to which nothing softens, and from which the additive table holds. */
const NOTHING_YET = 13
const TABLE_FROM = 15.5
const OPENS_OVER = 1
/** Tempers that a table of rich steel means when it does not say. */
const USUAL_TEMPERS = 2
/** Austenite between martensite [HV], as in `hardenedHv`. */
const AUSTENITE_HV = 275
/** Two hours, the usual temper: what turns a parameter for the constant 20 into the one for 18. */
const LOG_TWO_HOURS = 0.30103

/** How much of a difference between this piece and the usual one as quenched is left after tempering. */
const KEEPS_DIFFERENCE: Rows = [
  [13, 1],
  [20, 0.25],
  [24, 0],
]
/** The same for steel with a secondary peak (M2 quenched 62 to 66 HRC from 1066 to 1204 degC is 60 to 65 after 538 degC). */
const KEEPS_DIFFERENCE_SECONDARY: Rows = [
  [13, 1],
  [15.5, 0.8],
  [27, 0.8],
  [30, 0.2],
]

/** Tool steels with a secondary peak that stand for a steel of their kind which has no table: grade and the widths of likeness. */
const ANALOGUES = ['S7', 'H13', 'A2', 'D2', 'M2'] as const

/** Additive model of one austenite as a table over the parameter, with what it needs below its first node: nothing softens up to P = 13. */
function modelRows(austenite: Composition): Rows {
  const full = hvFromHrc(fullMartensiteHrc(austenite.C))
  const first = Math.min(full, additiveTempering.evaluate({ ...austenite, parameter: TABLE_FROM }))
  const nodes = ADDITIVE_NODES.map(
    (p) => [p, Math.min(first, additiveTempering.evaluate({ ...austenite, parameter: p }))] as const,
  )
  return [[NOTHING_YET, full], ...nodes]
}

/** Grange-Baughman parameter of a parameter for `constant`. */
function grangeBaughman(parameterK: number, constant: number): number {
  return (1.8 * parameterK * (18 + LOG_TWO_HOURS)) / (1000 * (constant + LOG_TWO_HOURS))
}

interface Published {
  /** Tempers that the tables speak of. */
  readonly tempers: number
  readonly residual: TemperingResidual
  readonly basis: 'published' | 'memory'
  readonly source: string
  /** Prints that the tables come from. */
  readonly prints: number
  /** Of the grade in the catalogue. */
  readonly typical: Composition
  /** Austenite that the tables speak of, and what the program has for the hardness of that steel as quenched: tables tell little of theirs, and not alike. */
  readonly austenite: Composition
  readonly quenchedHv: number
}

const kept = new Map<string, Published | undefined>()

/** What is published of a grade, against the model of its typical composition. */
function publishedOf(gradeId: string, constant: number, without: readonly string[]): Published | undefined {
  const key = `${gradeId} ${constant} ${without.join(' ')}`
  if (!kept.has(key)) kept.set(key, readPublished(gradeId, constant, without))
  return kept.get(key)
}

function readPublished(gradeId: string, constant: number, without: readonly string[]): Published | undefined {
  const grade = gradeById(gradeId)
  const sources = temperingSourcesOf(gradeId).filter(({ id }) => !without.includes(id))
  if (grade === undefined || sources.length === 0) return undefined
  const austeniteOf = (id: string): Composition => {
    const named = gradeById(id)
    return usualAustenite(steelOf(named ?? grade).composition)
  }
  const austenite = austeniteOf(gradeId)
  const names = [...new Set(sources.map(({ source }) => source))]
  const prints = names.length
  const told = sources.flatMap(({ tempers }) => (tempers === undefined ? [] : [tempers]))
  if (constant === 18) names.push(`as one table: ${additiveTempering.source}`)
  return {
    residual: poolResidual(sources, constant, constant === 18 ? MODEL_COUNTS : 0, (source, m) => {
      const named = gradeById(source.gradeId) ?? grade
      return source.cooledS === undefined
        ? interpolate(modelRows(austeniteOf(source.gradeId)), grangeBaughman(m, constant))
        : roundHv(steelOf(named), austeniteOf(source.gradeId), source.cooledS, grangeBaughman(m, constant))
    }),
    basis: sources.some(({ basis }) => basis === 'published') ? 'published' : 'memory',
    source: names.join('; '),
    prints,
    tempers: told.length > 0 ? Math.round(told.reduce((a, b) => a + b, 0) / told.length) : USUAL_TEMPERS,
    typical: steelOf(grade).composition,
    austenite,
    quenchedHv: fullHardness(steelOf(grade), austenite).hv,
  }
}

/** What the model gives a bar that the quench may not have hardened through, so that its table does not pass for one of full martensite [HV]. */
function roundHv(steel: Steel, austenite: Composition, cooledS: number, parameter: number): number {
  const response = hardeningResponse(steel, austenite)
  return mixedHv({
    quenchedHv: response.quenchedHv(cooledS),
    martensite: response.martensiteFraction(cooledS),
    bainite: usualBainiteShare(austenite),
    usualHv: response.fullHv,
    temperedHv: interpolate(modelRows(austenite), parameter),
    annealed: annealedHv(austenite),
    parameter,
    keeps: KEEPS_DIFFERENCE,
  })
}

/** How far a steel is one with a secondary peak, 0..1: by chromium and by molybdenum with tungsten. */
function secondaryShare(bulk: Composition): number {
  const carbideFormers = bulk.Cr + 2 * bulk.Mo + bulk.W
  const u = Math.min(1, Math.max(0, (carbideFormers - 3) / 2))
  return u * u * (3 - 2 * u)
}

/** Residual of the tool steels that are like `bulk`, each weighed by its likeness; smooth in composition. */
function analogueResidual(bulk: Composition, without: readonly string[]): TemperingResidual {
  const like = ANALOGUES.flatMap((gradeId) => {
    const published = publishedOf(gradeId, 20, without)
    if (published === undefined) return []
    const { typical, residual } = published
    const away = [
      (bulk.C - typical.C) / 0.2,
      (bulk.Cr - typical.Cr) / 2,
      (bulk.Mo + bulk.W / 2 - typical.Mo - typical.W / 2) / 2,
      (bulk.V - typical.V) / 0.6,
    ].reduce((sum, d) => sum + d * d, 0)
    return [{ residual, weight: exp(-0.5 * Math.min(away, 60)) + 1e-12 }]
  })
  const all = like.reduce((sum, { weight }) => sum + weight, 0)
  return (parameterK) => (all > 0 ? like.reduce((sum, { residual, weight }) => sum + weight * residual(parameterK), 0) / all : 0)
}

/**
 * The tempering response of `steel` hardened to `austenite` (what was in solution).
 *
 * Published tables of the grade go first: the additive model carries them to the composition of this heat and beyond their ends,
 * and beside tables of constructional steel counts as one table.
 * Without a table the additive model stands alone, or for steel with a secondary peak with what the tool steels like it show.
 */
export function temperingResponse(steel: Steel, austenite: Composition, options: TemperingOptions = {}): TemperingResponse {
  const without = options.without ?? []
  const secondary = secondaryShare(steel.composition)
  const constant = secondary > 0 ? 20 : 18
  const published = steel.gradeId === undefined ? undefined : publishedOf(steel.gradeId, constant, without)
  const fullHv = hvFromHrc(fullMartensiteHrc(austenite.C))
  const analogue = published === undefined && secondary > 0 ? analogueResidual(steel.composition, without) : undefined
  const usualHv = published?.quenchedHv ?? fullHv
  const kind = temperingKind(steel.composition, secondary)
  const tables: TablesKnown = published === undefined ? 'none' : published.prints > 1 ? 'several' : 'one'
  const usualBainite = usualBainiteShare(austenite)
  const annealed = annealedHv(austenite)
  const keeps = secondary > 0 && published !== undefined ? KEEPS_DIFFERENCE_SECONDARY : KEEPS_DIFFERENCE

  // With a secondary peak dissolved alloy acts through the carbides of the table, not through the increments of low-alloy steel.
  const model = modelRows(published !== undefined && secondary > 0 ? published.austenite : austenite)

  const curveHv = (m: number): number => {
    const p = grangeBaughman(m, constant)
    const base = interpolate(model, p)
    if (published !== undefined) return base + published.residual(m)
    return analogue === undefined ? base : base + secondary * analogue(m)
  }
  return {
    constant,
    basis: published?.basis ?? 'model',
    source:
      published?.source ??
      additiveTempering.source + (analogue === undefined ? '' : `; secondary peak after ${ANALOGUES.join(', ')}`),
    kind,
    tables,
    scatterHrc: TEMPERING_SCATTER[tables][kind],
    temperedHv: (quenchedHv, martensiteFraction, parameterK, bainiteOfRest) => {
      const p = grangeBaughman(parameterK, constant)
      if (p <= NOTHING_YET) return quenchedHv
      const mixed = mixedHv({
        quenchedHv,
        martensite: martensiteFraction,
        bainite: bainiteOfRest ?? usualBainite,
        usualHv,
        temperedHv: curveHv(parameterK),
        annealed,
        parameter: p,
        keeps,
      })
      const most = secondary > 0 ? Math.max(quenchedHv, mixed) : quenchedHv
      // What tables say at 150 degC is led back to "nothing yet" without a step.
      const opened = Math.min(1, (p - NOTHING_YET) / OPENS_OVER)
      return Math.min(most, quenchedHv + opened * (mixed - quenchedHv))
    },
    afterTempers: (temperedHv, retained, rounds) => {
      const own = austeniteTempered(austenite, secondary, retained, rounds)
      const fresh = freshShare(own)
      // In carbon and low-alloy steel it turns to bainite, as soft as the tempered martensite beside it.
      if (secondary === 0 || own.martensite.length === 0) return { hv: temperedHv, left: own.left, fresh }
      const asPrinted = austeniteTempered(
        austenite,
        secondary,
        retained,
        inEqualParts(rounds, published?.tempers ?? USUAL_TEMPERS),
      )
      const over = ({ martensite, left }: AusteniteTempered): number =>
        left * (AUSTENITE_HV - temperedHv) +
        martensite.reduce((sum, { share, laterK }) => sum + share * Math.max(0, curveHv(laterK) - temperedHv), 0)
      return { hv: temperedHv + over(own) - over(asPrinted), left: own.left, fresh }
    },
  }
}

/** The hottest of some rounds alone, their whole time in `tempers` equal parts: what a table says of them. */
function inEqualParts(rounds: readonly TemperRound[], tempers: number): TemperRound[] {
  const hottest = rounds.reduce<TemperRound | undefined>(
    (best, round) => (best === undefined || round.peakK > best.peakK ? round : best),
    undefined,
  )
  if (hottest === undefined) return []
  const { peakK, parameterK, times } = hottest
  return [{ peakK, parameterK: parameterK + peakK * log10(times / tempers), times: tempers }]
}

interface Mixture {
  readonly quenchedHv: number
  /** Share of martensite, and of bainite in the rest. */
  readonly martensite: number
  readonly bainite: number
  /** Full martensite before and after the temper [HV]. */
  readonly usualHv: number
  readonly temperedHv: number
  readonly annealed: number
  readonly parameter: number
  readonly keeps: Rows
}

/** Hardness of a structure of which only the martensite tempers as martensite. */
function mixedHv({ quenchedHv, martensite, bainite, usualHv, temperedHv, annealed, parameter, keeps }: Mixture): number {
  const f = Math.min(1, Math.max(0, martensite))
  const least = Math.min(quenchedHv, FINE_OVER_ANNEALED * annealed)
  const restHv = f > 0.98 ? quenchedHv : Math.min(quenchedHv, Math.max(least, (quenchedHv - f * usualHv) / (1 - f)))
  const martensiteHv = f > 0.02 ? (quenchedHv - (1 - f) * restHv) / f : quenchedHv
  const softened = temperedHv + (martensiteHv - usualHv) * interpolate(keeps, parameter)
  return f * softened + (1 - f) * temperedRestHv(restHv, { bainite, martensiteHv: temperedHv, annealed, parameter })
}
