import { square } from '#engine/arithmetic/square.ts'
import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import type { Basis, Estimate } from '#engine/provenance/estimate.ts'
import { type Grade, gradeById } from './catalogue.ts'
import { CURVES_FROM_MEMORY } from './curves-from-memory.ts'
import { steelOf } from './grade-heats.ts'
import { lendersTo } from './near-treatments.ts'
import { kelvinOf } from './source-order.ts'
import type { Confidence, CurveRow, Provenance } from './tables/rows.ts'
import { SOURCES } from './tables/sources.ts'
import { CURVE_ROWS } from './tables/temper-curves.ts'

/** A published tempering curve of one steel, hardened in one way. */
export interface TemperCurve {
  readonly id: string
  /** Grade that the curve was printed for. */
  readonly gradeId: string
  /** True when it serves another grade that stands near. */
  readonly near: boolean
  readonly basis: Basis
  readonly source: string
  readonly provenance: Provenance
  readonly confidence: Confidence
  /** Hardening heat that the curve starts from, where it is told [K]. */
  readonly austenitiseK?: number
  readonly quench: string
  readonly section: string
  /** Length of one temper [s]; `holdGiven` tells whether the source says so or an hour is taken. */
  readonly holdS: number
  readonly holdGiven: boolean
  readonly holdSays: string
  readonly cycles: number
  readonly asQuenchedHrc?: Estimate
  /** By rising temperature. */
  readonly rows: readonly { readonly temperK: number; readonly hardnessHrc: Estimate }[]
  readonly note: string
}

const HOUR_S = 3600

/**
 * Nine in ten published values of the same grade and temper lie so close to a printed curve [HRC], by how sure the reading is: sheets of O1,
 * L6, S5, S7, A2 and D2 differ from each other by up to about 2, those of 1095 by 2 to 5.
 */
const SHEET_SPREAD_HRC: { readonly [Key in Confidence]: number } = { high: 2, medium: 2.5, low: 3.5 }
/** A curve of a near grade is off by its other composition as well [HRC]. */
const NEAR_SPREAD_HRC = 2
/** Sheets and ovens agree on the temperature no better than this [K]; it matters where a curve is steep. */
const TEMPERATURE_SPREAD_K = 10

/** Brinell (tungsten carbide ball, 29.4 kN) to Rockwell C: ASTM E140, table 1, rows from memory. */
const ROCKWELL_FROM_BRINELL: Rows = [
  [226, 20],
  [243, 23],
  [264, 27],
  [286, 30],
  [311, 33],
  [336, 36],
  [362, 39],
  [390, 42],
  [421, 45],
  [455, 48],
  [481, 50],
]

interface Source {
  readonly row: Omit<CurveRow, 'source'>
  readonly source: string
}

const ALL: readonly Source[] = [
  ...CURVE_ROWS.map((row) => ({ row, source: SOURCES[row.source] })),
  ...CURVES_FROM_MEMORY.map((row) => ({ row, source: row.sourceText })),
]

/**
 * Published tempering curves that may serve `grade`: its own from printed sheets, its own from memory, then those of near grades,
 * which say so. Empty when none is known.
 */
export function temperCurvesOf(grade: Grade): readonly TemperCurve[] {
  const own = ALL.filter(({ row }) => row.grade === grade.id).map((source) => curveOf(source, false))
  const near = lendersTo(grade)
    .filter((id) => temperAlike(grade, id))
    .flatMap((id) => ALL.filter(({ row }) => row.grade === id).map((source) => curveOf(source, true)))
  const rank = ({ near: isNear, provenance, confidence }: TemperCurve): number =>
    (isNear ? 4 : 0) + (provenance === 'memory' ? 2 : 0) + (confidence === 'low' ? 1 : 0)
  return [...own, ...near].sort((a, b) => rank(a) - rank(b))
}

/** A difference in an element beyond which steels temper unlike [weight per cent]; carbon counts up to what austenite holds. */
const ALIKE = { Mn: 0.5, Si: 0.3, Cr: 0.3, Ni: 0.5, Mo: 0.15, V: 0.2, W: 0.5 } as const
const CARBON_ALIKE = 0.06
const CARBON_HELD = 0.9

function temperAlike(grade: Grade, otherId: string): boolean {
  const other = gradeById(otherId)
  if (other === undefined) return false
  const [a, b] = [steelOf(grade).composition, steelOf(other).composition]
  const carbonApart = Math.abs(Math.min(a.C, CARBON_HELD) - Math.min(b.C, CARBON_HELD))
  const elements = Object.entries(ALIKE) as [keyof typeof ALIKE, number][]
  return carbonApart <= CARBON_ALIKE && elements.every(([element, apart]) => Math.abs(a[element] - b[element]) <= apart)
}

/** Hardness of the curve at `temperK` with its band, linear between rows; `undefined` outside of them. */
export function hardnessOnCurve(curve: TemperCurve, temperK: number): Estimate | undefined {
  const first = curve.rows[0]
  const last = curve.rows[curve.rows.length - 1]
  if (first === undefined || last === undefined || temperK < first.temperK - 1 || temperK > last.temperK + 1) return undefined
  const of = (key: 'value' | 'low' | 'high'): number =>
    interpolate(
      curve.rows.map((row) => [row.temperK, row.hardnessHrc[key]] as const),
      temperK,
    )
  return { value: of('value'), low: of('low'), high: of('high'), basis: curve.basis, source: curve.source }
}

function curveOf({ row, source }: Source, near: boolean): TemperCurve {
  const basis: Basis = row.provenance === 'memory' ? 'memory' : 'published'
  const points = row.points.flatMap(([temperC, hrc, low, high, brinell]) => {
    const value = hrc ?? (brinell === null ? null : interpolate(ROCKWELL_FROM_BRINELL, brinell))
    return value === null ? [] : [{ temperC, value, half: low === null || high === null ? 0 : (high - low) / 2 }]
  })
  const tempered: Rows = points.flatMap(({ temperC, value }) => (temperC === null ? [] : [[kelvinOf(temperC), value] as const]))
  const spread = SHEET_SPREAD_HRC[row.confidence] + (near ? NEAR_SPREAD_HRC : 0)
  const named = near ? `${source} (printed for ${row.grade}, a near grade)` : source
  const estimate = (value: number, half: number): Estimate => ({
    value,
    low: value - half,
    high: value + half,
    basis,
    source: named,
  })
  const quenched = points.find(({ temperC }) => temperC === null)
  return {
    id: row.id,
    gradeId: row.grade,
    near,
    basis,
    source: named,
    provenance: row.provenance,
    confidence: row.confidence,
    ...(row.hardenC === null ? {} : { austenitiseK: kelvinOf(row.hardenC) }),
    quench: row.quench,
    section: row.section,
    holdS: (row.holdH ?? 1) * HOUR_S,
    holdGiven: row.holdH !== null,
    holdSays: row.holdSays,
    cycles: row.cycles ?? 1,
    ...(quenched === undefined ? {} : { asQuenchedHrc: estimate(quenched.value, quenched.half + spread) }),
    rows: points.flatMap(({ temperC, value, half }) => {
      if (temperC === null) return []
      const temperK = kelvinOf(temperC)
      const slope = slopeAt(tempered, temperK)
      const band = Math.max(half, Math.sqrt(spread * spread + square(slope * TEMPERATURE_SPREAD_K)))
      return [{ temperK, hardnessHrc: estimate(value, band) }]
    }),
    note: row.note,
  }
}

/** Fall of hardness about a row [HRC/K]: the steeper of the two sides. */
function slopeAt(rows: Rows, kelvin: number): number {
  const i = rows.findIndex(([k]) => k === kelvin)
  const side = (a: number, b: number): number => {
    const from = rows[a]
    const to = rows[b]
    return from === undefined || to === undefined ? 0 : Math.abs((to[1] - from[1]) / (to[0] - from[0]))
  }
  return Math.max(side(i - 1, i), side(i, i + 1))
}
