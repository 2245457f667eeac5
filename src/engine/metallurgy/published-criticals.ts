import type { Basis, Estimate } from '#engine/provenance/estimate.ts'

const ZERO_DEGC_K = 273.15
/** Half band about one printed figure [K]: sources for equal steel differ by 20 K and more. */
const HALF_BAND_K = 20

interface Printed {
  readonly degC: number
  readonly basis: Basis
  readonly source: string
}
interface Row {
  readonly ac1: readonly Printed[]
  readonly ac3: readonly Printed[]
}

const HANDBOOK =
  'ASM Metals Handbook, approximate critical temperatures on heating at 28 degC/h (memory, rounded to 5 degC in the original)'
const MEMORY = 'handbook value (memory)'

function printed(degC: number, source: string, basis: Basis = 'published'): Printed {
  return { degC, basis, source }
}

/** ASM Metals Handbook, slow heating: grade, Ac1, Ac3 [degC]. */
const SLOW: readonly (readonly [grade: string, ac1: number, ac3: number])[] = [
  ['1020', 725, 845],
  ['1040', 725, 795],
  ['1060', 725, 765],
  ['1080', 730, 735],
  ['4130', 760, 810],
  ['4140', 730, 805],
  ['4340', 725, 775],
  ['5160', 710, 765],
  ['52100', 725, 770],
  ['6150', 750, 790],
  ['8620', 730, 830],
]

/** Sheets and handbook values of single grades [degC]; the Ac3 of a steel above the eutectoid is the end of its Ac1 range. */
const SINGLE: readonly (readonly [grade: string, ac1: Printed, ac3?: Printed])[] = [
  [
    '42CrMo4',
    printed(745, 'Lucefin Group, technical card 42CrMo4 (2024)'),
    printed(790, 'Lucefin Group, technical card 42CrMo4 (2024)'),
  ],
  [
    '42CrMo4',
    printed(720, 'mill data sheet 42CrMo4 to DIN EN 10083-1'),
    printed(780, 'mill data sheet 42CrMo4 to DIN EN 10083-1'),
  ],
  ['C45', printed(725, 'Ovako, steel data sheet SB-C45 (2018)'), printed(760, 'Ovako, steel data sheet SB-C45 (2018)')],
  ['100Cr6', printed(755, 'Lucefin Group, technical card 100Cr6')],
  ['100Cr6', printed(750, 'SIAU, data sheet 100Cr6 (UNI 3097)'), printed(785, 'SIAU, data sheet 100Cr6 (UNI 3097)')],
  ['4340', printed(749, 'Crucible data sheet 4340')],
  ['S5', printed(766, 'Crucible data sheet LaBelle Silicon #2 (AISI S5)')],
  ['O1', printed(743, 'Crucible data sheet Ketos (AISI O1)')],
  ['H21', printed(827, 'Crucible data sheet Peerless A (AISI H21)')],
  ['D2', printed(787, 'Latrobe Specialty Steel, data sheet D2'), printed(845, 'Latrobe Specialty Steel, data sheet D2')],
  ['S7', printed(790, MEMORY, 'memory'), printed(830, MEMORY, 'memory')],
  ['H13', printed(845, MEMORY, 'memory'), printed(910, MEMORY, 'memory')],
  ['H11', printed(840, MEMORY, 'memory'), printed(900, MEMORY, 'memory')],
  ['A2', printed(795, MEMORY, 'memory'), printed(840, MEMORY, 'memory')],
  ['M2', printed(830, MEMORY, 'memory'), printed(880, MEMORY, 'memory')],
]

const BY_GRADE: ReadonlyMap<string, Row> = (() => {
  const rows = new Map<string, { ac1: Printed[]; ac3: Printed[] }>()
  const add = (grade: string, ac1: Printed, ac3: Printed | undefined): void => {
    const row = rows.get(grade) ?? { ac1: [], ac3: [] }
    row.ac1.push(ac1)
    if (ac3 !== undefined) row.ac3.push(ac3)
    rows.set(grade, row)
  }
  for (const [grade, ac1, ac3] of SLOW) add(grade, printed(ac1, HANDBOOK, 'memory'), printed(ac3, HANDBOOK, 'memory'))
  for (const [grade, ac1, ac3] of SINGLE) add(grade, ac1, ac3)
  return rows
})()

/** Mean of the printed figures, said so when there are several, with a band that holds each. */
function together(figures: readonly Printed[]): Estimate | undefined {
  if (figures.length === 0) return undefined
  const kelvin = figures.map(({ degC }) => degC + ZERO_DEGC_K)
  const value = kelvin.reduce((a, b) => a + b, 0) / kelvin.length
  const sources = [...new Set(figures.map(({ source }) => source))].join('; ')
  return {
    value,
    low: Math.min(value - HALF_BAND_K, ...kelvin),
    high: Math.max(value + HALF_BAND_K, ...kelvin),
    basis: figures.some(({ basis }) => basis === 'published') ? 'published' : 'memory',
    source: figures.length > 1 ? `mean of ${figures.map(({ degC }) => degC).join(' and ')} degC: ${sources}` : sources,
  }
}

/** Published critical temperatures of a grade, where its sources print any; else only the formulas speak of it. */
export function publishedCriticals(gradeId: string): { readonly ac1K?: Estimate; readonly ac3K?: Estimate } {
  const row = BY_GRADE.get(gradeId)
  if (row === undefined) return {}
  const ac1K = together(row.ac1)
  const ac3K = together(row.ac3)
  return { ...(ac1K === undefined ? {} : { ac1K }), ...(ac3K === undefined ? {} : { ac3K }) }
}
