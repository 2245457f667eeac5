import type { Outlook, SpotOutlook } from '#engine/ensemble/outlook.ts'
import { SteelBehaviour } from '#engine/ensemble/spot-hardness.ts'
import { limitsOf } from '#engine/ensemble/unknowns.ts'
import { hrcFromHv, hvFromHrc } from '#engine/metallurgy/hardness-scales.ts'
import { hollomonJaffe } from '#engine/metallurgy/tempering-parameter.ts'
import { heatedFrom } from '#engine/simulation/heated-from.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { TemperRecord } from '#engine/simulation/records.ts'
import type { Treatment } from '#engine/simulation/treatment.ts'
import { celsiusFromKelvin, kelvinFromCelsius } from '#units/temperature.ts'
import type { Figure, Forecast } from './answers.ts'
import { hrcFigure, rounded } from './steel-figures.ts'

/** Close together where ovens in kitchens and shops stand [degC]. */
const LADDER_C = [150, 175, 200, 225, 250, 275, 300, 350, 400, 450, 500, 550, 600, 650, 700]
/** A temper stays this far below the heat at which steel begins to harden anew [K]. */
const BELOW_AC1_K = 20
/** The shortest draw, to a colour and no longer, counts as this [s]. */
const SHORTEST_S = 60
/** Less martensite than this is no hardened steel. */
const HARDENED = 0.1

type TemperCurve = NonNullable<Forecast['temperCurve']>

/**
 * What the last temper would give at other temperatures: the zone that came hardest out of the bath, drawn from that state for the hold and rounds
 * of that step. Temperatures are the steel's own, warming up is not counted, and neither are tempers before it.
 *
 * The band adds in squares what the quench leaves open, the scatter of tempering, and an oven 8 degC off either way (nine in ten each).
 * Undefined where nothing hardened, or nothing is tempered.
 */
export function temperCurveOf(
  job: Job,
  { records }: Pick<Treatment, 'records'>,
  outlook: Outlook,
  ac1K: number,
): TemperCurve | undefined {
  const hardest = hardestPlace(outlook)
  const temper = temperFor(records, hardest?.fromM)
  if (hardest === undefined || temper === undefined) return undefined
  const { spot, spread, zone } = hardest
  const { tempering } = new SteelBehaviour(job.steel, job.steel.composition, heatedFrom(job)).after(spot.peakK, spot.soakS).made
  const durationS = Math.max(SHORTEST_S, temper.holdS) * temper.times
  const limits = limitsOf(job)
  const drawnHrc = (quenchedHrc: number, temperatureK: number): number => {
    const parameterK = hollomonJaffe.evaluate({ temperatureK, durationS, constant: tempering.constant })
    const softened = tempering.temperedHv(hvFromHrc(quenchedHrc), spot.martensiteFraction, parameterK)
    const holdS = durationS / temper.times
    const round = {
      peakK: temperatureK,
      parameterK: hollomonJaffe.evaluate({ temperatureK, durationS: holdS, constant: 20 }),
      times: temper.times,
    }
    return hrcFromHv(tempering.afterTempers(softened, spot.retainedAusteniteFraction, [round]).hv)
  }
  const figureAt = (temperatureK: number): Figure => {
    const value = drawnHrc(spread.value, temperatureK)
    const scatter = limits.tempering * tempering.scatterHrc * spot.martensiteFraction
    const others = [
      drawnHrc(spread.low, temperatureK),
      drawnHrc(spread.high, temperatureK),
      drawnHrc(spread.value, temperatureK + limits.ovenOffsetK),
      drawnHrc(spread.value, temperatureK - limits.ovenOffsetK),
    ].map((hrc) => hrc - value)
    const reach = (way: 1 | -1): number =>
      Math.sqrt(others.reduce((sum, by) => sum + (by * way > 0 ? by * by : 0), scatter * scatter))
    const { basis, source } = outlook.tempered
    return hrcFigure({ value, low: value - reach(-1), high: value + reach(1), basis, source })
  }
  const { oven } = temper
  return {
    ...(zone === undefined ? {} : { zone }),
    step: temper.step,
    hold_h: rounded(temper.holdS / 3600, 3),
    times: temper.times,
    quenched_HRC: hrcFigure({ ...spread, ...outlook.quenched }),
    points: LADDER_C.filter((celsius) => kelvinFromCelsius(celsius) < ac1K - BELOW_AC1_K).map((celsius) => ({
      temperature_C: celsius,
      hardness_HRC: figureAt(kelvinFromCelsius(celsius)),
    })),
    ...(oven === undefined
      ? {}
      : {
          oven: {
            name: oven.name,
            max_C: rounded(celsiusFromKelvin(oven.maxK), 1),
            reads_low_C: rounded(oven.readsLowK, 1),
            swing_C: rounded(oven.swingK, 1),
          },
        }),
  }
}

interface Hardest {
  readonly zone?: string
  readonly fromM: number
  readonly spot: SpotOutlook
  readonly spread: SpotOutlook['quenchedHrc']
}

/** The zone that came hardest out of the bath, with the place that stands for it; without zones the hardest skin. */
function hardestPlace({ zones, along }: Outlook): Hardest | undefined {
  let best: Hardest | undefined
  const consider = (spots: readonly SpotOutlook[], spread: SpotOutlook['quenchedHrc'], zone?: string): void => {
    if (best !== undefined && spread.value <= best.spread.value) return
    const away = (spot: SpotOutlook): number => Math.abs(spot.quenchedHrc.value - spread.value)
    const spot = spots.reduce((nearest, each) => (away(each) < away(nearest) ? each : nearest))
    best = { ...(zone === undefined ? {} : { zone }), fromM: spot.spot.xM, spot, spread }
  }
  for (const { zone, spots, quenchedHrc } of zones) consider(spots, quenchedHrc, zone.name)
  if (zones.length === 0) for (const { skin } of along) consider([skin], skin.quenchedHrc)
  return best !== undefined && best.spot.martensiteFraction >= HARDENED ? best : undefined
}

/** Since the last hardening heat: the last temper that touches a height, else the last there is. */
function temperFor(records: Treatment['records'], atM: number | undefined): TemperRecord | undefined {
  const heated = records.findLastIndex(({ kind }) => kind === 'heat')
  const tempers = records.slice(heated + 1).filter((record) => record.kind === 'temper')
  const touches = ({ part }: TemperRecord): boolean =>
    part === undefined || (atM !== undefined && atM >= part.fromM && atM <= part.toM)
  return tempers.findLast(touches) ?? tempers[tempers.length - 1]
}
