import type { Steel } from '#engine/materials/steel.ts'
import { convertBrinellToHv, hrcFromHv, hvFromHrc } from '#engine/metallurgy/hardness-scales.ts'
import { usualAustenite } from '#engine/metallurgy/jominy-estimate.ts'
import { fullMartensiteHrc } from '#engine/metallurgy/martensite-hardness.ts'
import { advanceParameter } from '#engine/metallurgy/tempering-parameter.ts'
import { type TemperingResponse, temperingResponse } from '#engine/metallurgy/tempering-response.ts'
import type { ComparedRow, Comparison } from './comparison.ts'
import { type CsvRow, checkingTable, committedTable, number, text } from './data.ts'
import { steelNamed, steelOfRow } from './steels.ts'

const ZERO_DEGC_K = 273.15
const NINE_IN_TEN = 1.645
/** Hold that a sheet means when it gives none: two hours for tool steel, one in the old tables of constructional steel. */
const USUAL_HOLD_H = { tool: 2, rounds: 1 } as const

/** `tempers` equal holds of `holdH` hours. */
function parameterOf(constant: number, temperDegC: number, holdH: number, tempers: number): number {
  return advanceParameter(0, constant, temperDegC + ZERO_DEGC_K, 3600 * holdH * tempers)
}

/** One tempered figure beside the forecast, in HRC. */
function compared(
  response: TemperingResponse,
  temper: { readonly degC: number; readonly holdH: number; readonly tempers: number },
  quenchedHrc: number,
  published: { readonly hrc: number; readonly label: string; readonly group: string; readonly provenance: string },
): ComparedRow {
  const parameterK = parameterOf(response.constant, temper.degC, temper.holdH, temper.tempers)
  const forecast = hrcFromHv(response.temperedHv(hvFromHrc(quenchedHrc), 1, parameterK))
  return {
    label: published.label,
    group: published.group,
    provenance: published.provenance,
    published: published.hrc,
    forecast,
    low: forecast - NINE_IN_TEN * response.scatterHrc,
    high: forecast + NINE_IN_TEN * response.scatterHrc,
  }
}

function printedHrc(row: CsvRow): number {
  const hrc = number(row, 'hardness_hrc')
  return Number.isNaN(hrc) ? hrcFromHv(convertBrinellToHv(number(row, 'hardness_hb'))) : hrc
}

/** The steel as if only its analysis were known. */
function ungraded({ name, composition, range, grainSize }: Steel): Steel {
  return { name, composition, range, grainSize }
}

interface Curve {
  readonly id: string
  readonly steel: Steel
  readonly quenchedHrc: number
  readonly rows: readonly CsvRow[]
}

function curves(): Curve[] {
  const byId = new Map<string, CsvRow[]>()
  for (const row of committedTable('temper_curves.csv')) {
    const id = text(row, 'curve_id')
    byId.set(id, [...(byId.get(id) ?? []), row])
  }
  return [...byId].map(([id, rows]) => {
    const steel = steelNamed(text(rows[0]!, 'grade'), text(rows[0]!, 'typical_composition'))
    const start = rows.find((row) => text(row, 'temper_as_given') === 'as quenched')
    const quenchedHrc = start === undefined ? fullMartensiteHrc(usualAustenite(steel.composition).C) : printedHrc(start)
    return { id, steel, quenchedHrc, rows: rows.filter((row) => row !== start) }
  })
}

function holdOf(row: CsvRow): { holdH: number; tempers: number } {
  const printed = text(row, 'hold_h_per_temper')
  const hours = /(\d+(?:\.\d+)?) min/.exec(printed)?.[1] ?? /^(\d+(?:\.\d+)?)/.exec(printed)?.[1]
  const tempers = Number(text(row, 'cycles') || '1')
  return { holdH: hours === undefined ? USUAL_HOLD_H.tool : Number(hours), tempers }
}

function curveRows(response: (curve: Curve) => TemperingResponse | undefined): ComparedRow[] {
  return curves().flatMap((curve) => {
    const answer = response(curve)
    if (answer === undefined) return []
    return curve.rows.map((row) =>
      compared(answer, { degC: number(row, 'temper_c'), ...holdOf(row) }, curve.quenchedHrc, {
        hrc: printedHrc(row),
        label: `${curve.id} ${number(row, 'temper_c')} degC`,
        group: text(row, 'grade'),
        provenance: text(row, 'provenance'),
      }),
    )
  })
}

export const curvesFromComposition: Comparison = {
  name: 'Tempering tables of named grades, from composition alone',
  unit: 'HRC',
  aim: 3.5,
  committed: true,
  says: 'As if no table of the grade were known. Start: the hardness as quenched of the same table, else that of full martensite. Two hours where the source gives no hold.',
  rows: () =>
    curveRows(({ steel, id }) => temperingResponse(ungraded(steel), usualAustenite(steel.composition), { without: [id] })),
}

function roundRows(response: (steel: Steel, caseId: string) => TemperingResponse | undefined): ComparedRow[] {
  return committedTable('tempered_rounds.csv').flatMap((row): ComparedRow[] => {
    const name = text(row, 'grade')
    if (/^(10|11)/.test(name) || number(row, 'bar_mm') > 30) return []
    const hb = number(row, 'hardness_hb')
    const middle = Number.isNaN(hb) ? (number(row, 'hb_low') + number(row, 'hb_high')) / 2 : hb
    const steel = steelNamed(name, text(row, 'composition'))
    const answer = response(steel, text(row, 'case_id'))
    if (answer === undefined) return []
    const degC = number(row, 'temper_c')
    const start = fullMartensiteHrc(usualAustenite(steel.composition).C)
    return [
      compared(answer, { degC, holdH: USUAL_HOLD_H.rounds, tempers: 1 }, start, {
        hrc: hrcFromHv(convertBrinellToHv(middle)),
        label: `${text(row, 'case_id')} ${degC} degC`,
        group: name,
        provenance: text(row, 'provenance'),
      }),
    ]
  })
}

/** Tables of the grade other than `id`, or undefined when there is no other. */
function fromOthers(steel: Steel, id: string): TemperingResponse | undefined {
  const response = temperingResponse(steel, usualAustenite(steel.composition), { without: [id] })
  return response.basis === 'model' ? undefined : response
}

export const curvesFromOthers: Comparison = {
  name: 'Tempering tables of named grades, from the other tables of the grade',
  unit: 'HRC',
  aim: 2.5,
  committed: true,
  says: 'Each table is left out and forecast from the others of the same grade or of its near equivalent; grades with one table only do not appear.',
  rows: () => curveRows(({ steel, id }) => fromOthers(steel, id)),
}

export const roundsFromOthers: Comparison = {
  name: 'Quenched and tempered rounds, from the other tables of the grade',
  unit: 'HRC',
  aim: 2.5,
  committed: true,
  says: 'As above, for rounds of steels that harden through.',
  rows: () => roundRows((steel, id) => fromOthers(steel, id)),
}

export const roundsFromComposition: Comparison = {
  name: 'Quenched and tempered rounds, from composition alone',
  unit: 'HRC',
  aim: 3.5,
  committed: true,
  says: 'Steels that harden through in the size given (1030, 1040, 1050, 1117, 1137 and 1080 do not, and are left to the forecast of whole rounds); one hour.',
  rows: () => roundRows((steel) => temperingResponse(ungraded(steel), usualAustenite(steel.composition))),
}

export const temperTimeSeries: Comparison = {
  name: 'Tempered hardness by heat, time and temperature',
  unit: 'HRC',
  aim: 3.5,
  committed: false,
  says: 'Composition alone. The Grange & Baughman heats are those that the increments were fitted to; Hollomon & Jaffe and Penha were not used. Rows under 20 HRC are left out.',
  rows: () =>
    checkingTable('temper_time_series.csv').flatMap((row): ComparedRow[] => {
      if (text(row, 'hrc_below_20') === 'yes') return []
      const steel = steelOfRow(row, text(row, 'steel_label'))
      const austenite = usualAustenite(steel.composition)
      const asQuenched = number(row, 'as_quenched_hrc')
      const degC = number(row, 'temper_c')
      const timeS = number(row, 'time_s')
      return [
        compared(
          temperingResponse(steel, austenite),
          { degC, holdH: timeS / 3600, tempers: 1 },
          Number.isNaN(asQuenched) ? fullMartensiteHrc(austenite.C) : asQuenched,
          {
            hrc: number(row, 'hardness_hrc'),
            label: `${text(row, 'heat_id')} ${Math.round(degC)} degC ${timeS} s`,
            group: text(row, 'source').slice(0, 32),
            provenance: text(row, 'provenance'),
          },
        ),
      ]
    }),
}

export const temperedHeats: Comparison = {
  name: 'Tempered hardness of heats (tensile test bars)',
  unit: 'HV / 10',
  aim: 3.5,
  committed: false,
  says: 'Composition alone; one hour by memory of the source.',
  rows: () =>
    checkingTable('tempered_hardness_nims.csv').map((row) => {
      const steel = steelOfRow(row, text(row, 'heat_id'))
      const austenite = usualAustenite(steel.composition)
      const response = temperingResponse(steel, austenite)
      const degC = number(row, 'temper_c')
      const quenchedHv = hvFromHrc(fullMartensiteHrc(austenite.C))
      const forecast = response.temperedHv(quenchedHv, 1, parameterOf(response.constant, degC, 1, 1))
      return {
        label: `${text(row, 'heat_id')} ${degC} degC`,
        group: text(row, 'family'),
        provenance: text(row, 'provenance'),
        published: number(row, 'hardness_hv') / 10,
        forecast: forecast / 10,
        low: hvFromHrc(hrcFromHv(forecast) - NINE_IN_TEN * response.scatterHrc) / 10,
        high: hvFromHrc(hrcFromHv(forecast) + NINE_IN_TEN * response.scatterHrc) / 10,
      }
    }),
}
