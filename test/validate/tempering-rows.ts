import type { Steel } from '#engine/materials/steel.ts'
import { convertBrinellToHv, hrcFromHv, hvFromHrc } from '#engine/metallurgy/hardness-scales.ts'
import { advanceParameter, hollomonJaffe } from '#engine/metallurgy/tempering-parameter.ts'
import type { TemperingResponse } from '#engine/metallurgy/tempering-response.ts'
import { type TemperingSource, temperingSourcesOf } from '#engine/metallurgy/tempering-sources.ts'
import type { ComparedRow, Repeat } from './comparison.ts'
import { type CsvRow, number } from './data.ts'

const ZERO_DEGC_K = 273.15
const NINE_IN_TEN = 1.645

export interface Temper {
  readonly degC: number
  readonly holdH: number
  /** Equal holds, one after the other. */
  readonly tempers: number
}

export function parameterOf(constant: number, { degC, holdH, tempers }: Temper): number {
  return advanceParameter(0, constant, degC + ZERO_DEGC_K, 3600 * holdH * tempers)
}

/** One figure of fully hardened steel after `temper` beside the forecast, in HRC. */
export function temperedRow(
  response: TemperingResponse,
  temper: Temper,
  quenchedHrc: number,
  told: Omit<ComparedRow, 'forecast' | 'low' | 'high'>,
): ComparedRow {
  const forecast = hrcFromHv(response.temperedHv(hvFromHrc(quenchedHrc), 1, parameterOf(response.constant, temper)))
  return {
    ...told,
    forecast,
    low: forecast - NINE_IN_TEN * response.scatterHrc,
    high: forecast + NINE_IN_TEN * response.scatterHrc,
  }
}

/** Hardness of a row that prints Rockwell C, Brinell, or a range of Brinell [HRC]. */
export function printedHrc(row: CsvRow): number {
  if (row.hardness_hrc !== undefined && row.hardness_hrc.trim() !== '') return number(row, 'hardness_hrc')
  const hb = number(row, 'hardness_hb')
  const middle = Number.isNaN(hb) ? (number(row, 'hb_low') + number(row, 'hb_high')) / 2 : hb
  return hrcFromHv(convertBrinellToHv(middle))
}

/** The steel as if only its analysis were known. */
export function ungraded({ name, composition, range, grainSize }: Steel): Steel {
  return { name, composition, range, grainSize }
}

/** Every table of the steel's grade: left out, nothing of the grade is known, not even to a steel that is like it. */
export function allTablesOf({ gradeId }: Steel): string[] {
  return gradeId === undefined ? [] : temperingSourcesOf(gradeId).map(({ id }) => id)
}

/** The table itself, and the grade's other tables of the same print: another heat on the same sheet is no other source. */
export function samePrint({ gradeId }: Steel, id: string): string[] {
  const tables = gradeId === undefined ? [] : temperingSourcesOf(gradeId)
  const print = tables.find((table) => table.id === id)?.source
  return [id, ...tables.filter(({ source }) => source === print).map((table) => table.id)]
}

/** What the tables of each grade say against each other, at equal temper (time and temperature together) and where both reach. */
export function temperingRepeats(gradeIds: readonly string[]): Repeat[] {
  return [...new Set(gradeIds)].flatMap((gradeId) => {
    const tables = temperingSourcesOf(gradeId).filter((table) => table.points.length > 0)
    return tables.flatMap((one, i) =>
      tables.slice(i + 1).flatMap((other) => (other.source === one.source ? [] : against(gradeId, one, other))),
    )
  })
}

/** Constant of the parameter at which tables of unlike holds are brought together; between 18 and 20 it hardly matters for holds of 1 to 4 h. */
const CONSTANT = 19

function against(gradeId: string, one: TemperingSource, other: TemperingSource): Repeat[] {
  const by = (table: TemperingSource) =>
    table.points
      .map(({ temperK, totalS, hv }) => ({
        at: hollomonJaffe.evaluate({ temperatureK: temperK, durationS: totalS, constant: CONSTANT }),
        degC: Math.round(temperK - ZERO_DEGC_K),
        hrc: hrcFromHv(hv),
      }))
      .sort((a, b) => a.at - b.at)
  const line = by(other)
  return by(one).flatMap(({ at, degC, hrc }) => {
    const after = line.findIndex((point) => point.at >= at)
    const [a, b] = [line[after - 1], line[after]]
    if (a === undefined || b === undefined) return []
    const there = a.hrc + ((b.hrc - a.hrc) * (at - a.at)) / (b.at - a.at)
    return [{ what: `${gradeId} tempered at ${degC} degC (${one.id} and ${other.id})`, one: hrc, other: there }]
  })
}
