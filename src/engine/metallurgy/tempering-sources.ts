import { CURVES_FROM_MEMORY } from '#engine/materials/curves-from-memory.ts'
import type { CurveRow } from '#engine/materials/tables/rows.ts'
import { SOURCES } from '#engine/materials/tables/sources.ts'
import { CURVE_ROWS } from '#engine/materials/tables/temper-curves.ts'
import { convertBrinellToHv, hvFromHrc } from './hardness-scales.ts'
import { TEMPERED_ROUNDS } from './tempered-round-table.ts'

/** One published tempering table, brought to Vickers and to one total time. */
export interface TemperingSource {
  readonly id: string
  readonly gradeId: string
  readonly source: string
  readonly basis: 'published' | 'memory'
  /** As quenched, where the table says it [HV]. */
  readonly quenchedHv?: number
  /** Tempers that the points speak of, each of an equal part of their time; absent where the sheet does not tell. */
  readonly tempers?: number
  /** Time from 800 to 500 degC [s] of a table of whole bars, half way to the middle; absent where the steel was hardened through. */
  readonly cooledS?: number
  readonly points: readonly { readonly temperK: number; readonly totalS: number; readonly hv: number }[]
}

const ZERO_DEGC_K = 273.15
/** Hold of a tool-steel sheet that gives none, and of the old tables of rounds [h] (memory). */
const SHEET_HOLD_H = 2
const ROUNDS_HOLD_H = 1

/** Names under which the same or nearly the same steel has its table. */
const SAME_STEEL: readonly (readonly string[])[] = [
  ['4140', '42CrMo4', '4142'],
  ['5140', '41Cr4'],
  ['6150', '51CrV4'],
  ['52100', '100Cr6'],
  ['9260', '9255', '55Si7'],
  ['W1', 'W2', '1095', 'C105U'],
  ['O1', 'O2', '90MnCrV8', '105WCr6'],
  ['H13', 'H11', 'X40CrMoV5-1', 'X37CrMoV5-1'],
  ['D2', 'D3'],
  ['M2', 'M4', 'T1'],
]

/** Every tempering table that is known here. */
const TEMPERING_SOURCES: readonly TemperingSource[] = [
  ...CURVE_ROWS.map((row) => sheet(row, SOURCES[row.source])),
  ...CURVES_FROM_MEMORY.map((row) => sheet(row, row.sourceText)),
  ...TEMPERED_ROUNDS.map(
    ({ id, grade, source, basis, cooledS, points }): TemperingSource => ({
      id,
      gradeId: grade,
      source,
      basis,
      tempers: 1,
      cooledS,
      points: points.map(([degC, brinell]) => ({
        temperK: degC + ZERO_DEGC_K,
        totalS: 3600 * ROUNDS_HOLD_H,
        hv: convertBrinellToHv(brinell),
      })),
    }),
  ),
]

/** A sheet's curve; a hold said only in minutes is read from its words. */
function sheet(row: Omit<CurveRow, 'source'>, source: string): TemperingSource {
  const hv = (point: CurveRow['points'][number]): number =>
    point[1] === null ? convertBrinellToHv(point[4] ?? Number.NaN) : hvFromHrc(point[1])
  const start = row.points.find(([temperC]) => temperC === null)
  const hours = row.holdH ?? (Number(/(\d+(?:\.\d+)?) (?:h )?min/.exec(row.holdSays)?.[1]) || SHEET_HOLD_H)
  return {
    id: row.id,
    gradeId: row.grade,
    source,
    basis: row.provenance === 'memory' ? 'memory' : 'published',
    ...(start === undefined ? {} : { quenchedHv: hv(start) }),
    ...(row.cycles === null ? {} : { tempers: row.cycles }),
    points: row.points.flatMap((point) =>
      point[0] === null ? [] : [{ temperK: point[0] + ZERO_DEGC_K, totalS: 3600 * hours * (row.cycles ?? 1), hv: hv(point) }],
    ),
  }
}

/** The tables of a grade: its own, or where it has none those of a near equivalent. */
export function temperingSourcesOf(gradeId: string): readonly TemperingSource[] {
  const own = TEMPERING_SOURCES.filter((source) => source.gradeId === gradeId)
  if (own.length > 0) return own
  const family = SAME_STEEL.find((names) => names.includes(gradeId)) ?? []
  return TEMPERING_SOURCES.filter((source) => family.includes(source.gradeId))
}
