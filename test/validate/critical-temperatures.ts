import { criticalTemperatures } from '#engine/metallurgy/critical-temperatures.ts'
import type { ComparedRow, Comparison } from './comparison.ts'
import { checkingTable, committedTable, number, text } from './data.ts'
import { steelNamed, steelOfRow } from './steels.ts'

const ZERO_DEGC_K = 273.15

type Line = 'ac1K' | 'ac3K' | 'msK'

function bulkGroup(carbon: number, chromium: number): string {
  if (chromium > 2.5) return 'tool steel'
  return carbon > 0.7 ? 'above 0.7 C' : 'up to 0.7 C'
}

function fromTable(column: string, line: Line): ComparedRow[] {
  return committedTable('critical_temps.csv').flatMap((row): ComparedRow[] => {
    const degC = number(row, column)
    if (Number.isNaN(degC)) return []
    const name = text(row, 'steel')
    const { composition } = steelNamed(name, text(row, 'composition'))
    const acm = column === 'ac3_or_acm_c' && text(row, 'note').includes('is Acm')
    const found = criticalTemperatures(composition)
    const estimate = acm && found.acmK !== undefined ? found.acmK : found[line]
    return [
      {
        label: `${name}, ${text(row, 'case_id')}`,
        group: bulkGroup(composition.C, composition.Cr),
        provenance: text(row, 'provenance'),
        published: degC + ZERO_DEGC_K,
        forecast: estimate.value,
        low: estimate.low,
        high: estimate.high,
      },
    ]
  })
}

const FORMULA_ONLY =
  'Formula and typical composition only: figures that the program knows for the grade itself are left out here.'

export const ac1: Comparison = {
  name: 'Ac1 of named grades',
  unit: 'K',
  aim: 15,
  committed: true,
  says: FORMULA_ONLY,
  rows: () => fromTable('ac1_c', 'ac1K'),
}

export const ac3: Comparison = {
  name: 'Ac3 of named grades',
  unit: 'K',
  aim: 15,
  committed: true,
  says: `${FORMULA_ONLY} For steels above the eutectoid the published figure is the end of the Ac1 range or, where the source says so, Acm.`,
  rows: () => fromTable('ac3_or_acm_c', 'ac3K'),
}

export const msOfGrades: Comparison = {
  name: 'Ms of named grades',
  unit: 'K',
  aim: 20,
  committed: true,
  says: 'What the usual hardening heat dissolves of the typical composition.',
  rows: () => fromTable('ms_c', 'msK'),
}

export const msMeasured: Comparison = {
  name: 'Ms measured, by composition',
  unit: 'K',
  aim: 20,
  committed: false,
  says: 'The sources do not give the heat that the steel was hardened from: the usual one of its composition is taken. The carbon solubility that this rests on was fitted to published matrix compositions and, for steels above 0.7 C and tool steels, to these figures (four numbers, 176 rows; two more for chromium).',
  rows: () =>
    checkingTable('ms_measured.csv').map((row) => {
      const { composition } = steelOfRow(row, text(row, 'steel_name_as_given'))
      const { msK } = criticalTemperatures(composition)
      return {
        label: `${text(row, 'row_id')} ${text(row, 'steel_name_as_given')}`.trim(),
        group: text(row, 'family'),
        provenance: text(row, 'provenance'),
        published: number(row, 'ms_c') + ZERO_DEGC_K,
        forecast: msK.value,
        low: msK.low,
        high: msK.high,
      }
    }),
}

export const bsMeasured: Comparison = {
  name: 'Bs measured, by composition',
  unit: 'K',
  aim: 40,
  committed: false,
  says: 'Isothermal and continuous-cooling starts are mixed in the source.',
  rows: () =>
    checkingTable('bs_measured.csv').map((row) => {
      const { composition } = steelOfRow(row, text(row, 'row_id'))
      const { bsK } = criticalTemperatures(composition)
      return {
        label: text(row, 'row_id'),
        group: bulkGroup(composition.C, composition.Cr),
        provenance: text(row, 'provenance'),
        published: number(row, 'bs_c') + ZERO_DEGC_K,
        forecast: bsK.value,
        low: bsK.low,
        high: bsK.high,
      }
    }),
}
