import type { Steel } from '#engine/materials/steel.ts'
import { usualAustenite } from '#engine/metallurgy/jominy-estimate.ts'
import { fullMartensiteHrc } from '#engine/metallurgy/martensite-hardness.ts'
import { type TemperingResponse, temperingResponse } from '#engine/metallurgy/tempering-response.ts'
import type { ComparedRow, Comparison } from './comparison.ts'
import { type CsvRow, committedTable, number, text } from './data.ts'
import { steelFamily } from './families.ts'
import { steelNamed } from './steels.ts'
import { allTablesOf, printedHrc, samePrint, temperedRow, temperingRepeats, ungraded } from './tempering-rows.ts'

/** Hold that a sheet of tool steel means when it gives none [h]. */
const USUAL_HOLD_H = 2

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

/** "2 min (4-6 for heavy sections)" is two hours at least. */
function holdOf(row: CsvRow): { holdH: number; tempers: number } {
  const printed = text(row, 'hold_h_per_temper')
  const hours = /(\d+(?:\.\d+)?) min/.exec(printed)?.[1] ?? /^(\d+(?:\.\d+)?)/.exec(printed)?.[1]
  return { holdH: hours === undefined ? USUAL_HOLD_H : Number(hours), tempers: Number(text(row, 'cycles') || '1') }
}

function curveRows(response: (curve: Curve) => TemperingResponse | undefined): ComparedRow[] {
  return curves().flatMap((curve) => {
    const answer = response(curve)
    if (answer === undefined) return []
    return curve.rows.map((row) =>
      temperedRow(answer, { degC: number(row, 'temper_c'), ...holdOf(row) }, curve.quenchedHrc, {
        label: `${curve.id} ${number(row, 'temper_c')} degC`,
        group: text(row, 'grade'),
        family: steelFamily(curve.steel.composition),
        provenance: text(row, 'provenance'),
        source: text(row, 'source'),
        published: printedHrc(row),
      }),
    )
  })
}

const START =
  'Start: the hardness as quenched of the same table, else that of full martensite. Two hours where the source gives no hold.'
const BAND_FITTED = 'The width of the band was chosen by these rows.'

export const curvesFromOthers: Comparison = {
  name: 'Tempering tables of named grades, from the other tables of the grade',
  unit: 'HRC',
  scale: 'HRC',
  wish: 'Tempered, with a table of the grade from elsewhere',
  aim: 2,
  tolerance: 0.1,
  committed: true,
  says: `Each table is left out, with all others of the same print, and forecast from the tables of the grade that remain, recalled ones among them; grades with one table only do not appear. ${START} ${BAND_FITTED}`,
  rows: () =>
    curveRows(({ steel, id }) => {
      const response = temperingResponse(steel, usualAustenite(steel.composition), { without: samePrint(steel, id) })
      return response.basis === 'model' ? undefined : response
    }),
  repeats: () => temperingRepeats(curves().flatMap(({ steel }) => steel.gradeId ?? [])),
}

export const curvesFromComposition: Comparison = {
  name: 'Tempering tables of named grades, from composition alone',
  unit: 'HRC',
  scale: 'HRC',
  wish: 'Tempered, from the composition alone',
  aim: 2.5,
  tolerance: 0.1,
  committed: true,
  says: `As if no table of the grade were known, to itself or to a steel like it; tool steel borrows from the tables of other tool steels. ${START} The increments by element were fitted to heats that are not among these; their level is the mean of five sources, these tables one of them. ${BAND_FITTED}`,
  rows: () =>
    curveRows(({ steel }) =>
      temperingResponse(ungraded(steel), usualAustenite(steel.composition), { without: allTablesOf(steel) }),
    ),
  repeats: () => temperingRepeats(curves().flatMap(({ steel }) => steel.gradeId ?? [])),
}
