import { gradeById } from '#engine/materials/catalogue.ts'
import { temperCurvesOf } from '#engine/materials/published-temper-curves.ts'
import type { Composition, Steel } from '#engine/materials/steel.ts'
import { retainedAusteniteFraction } from '#engine/metallurgy/austenite.ts'
import { fullHardness } from '#engine/metallurgy/full-hardness.ts'
import { hrcFromHv } from '#engine/metallurgy/hardness-scales.ts'
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
/** Where a quench is taken to end [K]. */
const ROOM_K = 298.15

/**
 * Hardness of fully hardened `steel` after tempering, by the model that a forecast goes by: the asked temper first, then a ladder from 150 to 650 C.
 * Tables of the grade carry it where they are known; retained austenite and the number of tempers count as they do in a piece.
 */
export function temperRows(
  steel: Steel,
  austenite: Composition,
  ladder: { readonly holdS: number; readonly times: number; readonly belowK: number },
  asked: AskedTemper | undefined,
): Row[] {
  const response = temperingResponse(steel, austenite)
  const quenchedHv = fullHardness(steel, austenite).hv
  const retained = retainedAusteniteFraction(austenite, ROOM_K)
  const byCarbon = carbonSpreadHrc(steel, austenite)
  const hardness = ({ temperK, holdS, times }: AskedTemper): Estimate => {
    const softened = response.temperedHv(quenchedHv, 1, parameterOf(temperK, holdS * times, response.constant))
    const round = { peakK: temperK, parameterK: parameterOf(temperK, holdS, ROUND_CONSTANT), times }
    const value = hrcFromHv(response.afterTempers(softened, retained, [round]).hv)
    const scatter = NINE_IN_TEN * response.scatterHrc
    // A table of the grade speaks of bar of its usual carbon; without one the carbon counts for itself.
    const half = response.tables === 'none' ? Math.sqrt(scatter * scatter + byCarbon * byCarbon) : scatter
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

/** The constant that single tempers are counted by, for hours. */
const ROUND_CONSTANT = 20

/** Hold and number of tempers that the grade's own first curve speaks of. */
export function curveHold(steel: Steel): { readonly holdS: number; readonly times: number } | undefined {
  const grade = steel.gradeId === undefined ? undefined : gradeById(steel.gradeId)
  const [curve] = grade === undefined ? [] : temperCurvesOf(grade)
  return curve === undefined || curve.near || !curve.holdGiven ? undefined : { holdS: curve.holdS, times: curve.cycles }
}

function parameterOf(temperatureK: number, durationS: number, constant: number): number {
  return hollomonJaffe.evaluate({ temperatureK, durationS, constant })
}

/** What the spread of carbon from heat to heat makes in the tempered hardness, about half of what it makes as quenched [HRC]. */
function carbonSpreadHrc(steel: Steel, austenite: Composition): number {
  const [low, high] = steel.range.C ?? [steel.composition.C, steel.composition.C]
  const shift = (carbon: number): number => fullMartensiteHrc(Math.max(0, austenite.C + carbon - steel.composition.C))
  return (shift(high) - shift(low)) / 4
}
