import { log10 } from '#engine/arithmetic/elementary.ts'
import { gradeById } from '#engine/materials/catalogue.ts'
import { hardnessOnCurve, type TemperCurve, temperCurvesOf } from '#engine/materials/published-temper-curves.ts'
import type { Composition, Steel } from '#engine/materials/steel.ts'
import { hrcFromHv, hvFromHrc } from '#engine/metallurgy/hardness-scales.ts'
import { fullMartensiteHrc } from '#engine/metallurgy/martensite-hardness.ts'
import { hollomonJaffe } from '#engine/metallurgy/tempering-parameter.ts'
import { temperingResponse } from '#engine/metallurgy/tempering-response.ts'
import type { Estimate } from '#engine/provenance/estimate.ts'
import { celsiusFromKelvin, kelvinFromCelsius } from '#units/temperature.ts'
import type { SteelAnswer } from './answers.ts'
import { hrcFigure, rounded } from './steel-figures.ts'

/** A temper: temperature of the steel, length of one hold, number of holds. */
export interface AskedTemper {
  readonly temperK: number
  readonly holdS: number
  readonly times: number
}

type Row = SteelAnswer['temper'][number]

const LADDER_C = [150, 200, 250, 300, 350, 400, 450, 500, 550, 600, 650]
/** Nine in ten of a normal spread lie within so many standard deviations. */
const NINE_IN_TEN = 1.645
/** Not told on the sheet how long: one hour or three makes about this much [HRC]. */
const UNTOLD_HOLD_HRC = 1

/**
 * Hardness of fully hardened `steel` after tempering: the asked temper first, then a ladder from 150 to 650 C.
 * A published curve of the grade goes first, at the temperature that gives the same tempering parameter in the hold of the curve;
 * where none reaches, the tempering response of its composition stands.
 */
export function temperRows(
  steel: Steel,
  austenite: Composition,
  ladder: { readonly holdS: number; readonly times: number; readonly belowK: number; readonly austenitiseK: number },
  asked: AskedTemper | undefined,
): Row[] {
  const curves = curvesFor(steel, ladder.austenitiseK)
  // A near grade's curve serves where the grade has none of its own at all.
  const own = curves.filter(({ near }) => !near)
  const serving = own.length > 0 ? own : curves
  const response = temperingResponse(steel, austenite)
  const quenchedHv = hvFromHrc(fullMartensiteHrc(austenite.C))
  const byCarbon = carbonSpreadHrc(steel, austenite)
  const hardness = (temper: AskedTemper): Estimate => {
    for (const curve of serving) {
      const published = hardnessOnCurve(curve, equivalentK(temper, curve, response.constant))
      if (published !== undefined) return curve.holdGiven ? published : widened(published, UNTOLD_HOLD_HRC)
    }
    const parameterK = parameterOf(temper.temperK, temper.holdS * temper.times, response.constant)
    const value = hrcFromHv(response.temperedHv(quenchedHv, 1, parameterK))
    const scatter = NINE_IN_TEN * response.scatterHrc
    const half = Math.sqrt(scatter * scatter + byCarbon * byCarbon)
    return { value, low: value - half, high: value + half, basis: response.basis, source: response.source }
  }
  const row = (temper: AskedTemper): Row => ({
    temperature_C: rounded(celsiusFromKelvin(temper.temperK), 1),
    hold_h: rounded(temper.holdS / 3600, 3),
    times: temper.times,
    hardness_HRC: hrcFigure(hardness(temper)),
  })
  const { holdS, times } = ladder
  const steps = LADDER_C.map(kelvinFromCelsius).filter((temperK) => temperK < ladder.belowK)
  return [...(asked === undefined ? [] : [row(asked)]), ...steps.map((temperK) => row({ temperK, holdS, times }))]
}

/** Hold and number of tempers that the grade's own first curve speaks of. */
export function curveHold(steel: Steel): { readonly holdS: number; readonly times: number } | undefined {
  const [curve] = curvesFor(steel, undefined)
  return curve === undefined || curve.near || !curve.holdGiven ? undefined : { holdS: curve.holdS, times: curve.cycles }
}

/** Curves that may serve, the most trusted first; of several from one sheet that with the nearest hardening heat. */
function curvesFor(steel: Steel, austenitiseK: number | undefined): TemperCurve[] {
  const grade = steel.gradeId === undefined ? undefined : gradeById(steel.gradeId)
  if (grade === undefined) return []
  const curves = temperCurvesOf(grade)
  if (austenitiseK === undefined) return [...curves]
  const away = (curve: TemperCurve): number => Math.abs((curve.austenitiseK ?? austenitiseK) - austenitiseK)
  return curves.filter((curve) => !curves.some((other) => other.source === curve.source && away(other) < away(curve)))
}

function parameterOf(temperatureK: number, durationS: number, constant: number): number {
  return hollomonJaffe.evaluate({ temperatureK, durationS, constant })
}

/** Temperature at which the curve's own time tempers as far as `temper` does. */
function equivalentK({ temperK, holdS, times }: AskedTemper, { holdS: curveS, cycles }: TemperCurve, constant: number): number {
  const hours = (holdS * times) / 3600
  const curveHours = (curveS * cycles) / 3600
  return (temperK * (constant + log10(hours))) / (constant + log10(curveHours))
}

function widened(estimate: Estimate, byHrc: number): Estimate {
  const away = (edge: number): number => Math.sqrt((edge - estimate.value) ** 2 + byHrc * byHrc)
  return { ...estimate, low: estimate.value - away(estimate.low), high: estimate.value + away(estimate.high) }
}

/** What the spread of carbon from heat to heat makes in the tempered hardness, about half of what it makes as quenched [HRC]. */
function carbonSpreadHrc(steel: Steel, austenite: Composition): number {
  const [low, high] = steel.range.C ?? [steel.composition.C, steel.composition.C]
  const shift = (carbon: number): number => fullMartensiteHrc(Math.max(0, austenite.C + carbon - steel.composition.C))
  return (shift(high) - shift(low)) / 4
}
