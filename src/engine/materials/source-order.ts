import type { Basis } from '#engine/provenance/estimate.ts'
import type { Confidence, Provenance, TreatmentRow } from './tables/rows.ts'
import { SOURCES } from './tables/sources.ts'

/** Where a statement of a treatment comes from, and in what words when it has any. */
export interface Said {
  readonly basis: Basis
  readonly source: string
  readonly provenance: Provenance
  readonly confidence: Confidence
  /** The source's remark in its own order of things; empty when it gave figures only. */
  readonly says: string
}

/** A published range of temperature. */
export interface TemperatureRange extends Said {
  readonly fromK: number
  readonly toK: number
}

/** One figure of a treatment: the range to work with, why that one, and every source side by side. */
export interface TreatmentItem {
  readonly use: TemperatureRange
  readonly because: string
  readonly all: readonly TemperatureRange[]
  /** Set when the catalogue has none for the grade itself and this near grade lends its own. */
  readonly lentBy?: string
}

const ZERO_C_K = 273.15

export function kelvinOf(celsius: number): number {
  return celsius + ZERO_C_K
}

export function saidBy(row: TreatmentRow): Said {
  const [, , , , , text, source, provenance, confidence, note] = row
  const says = [text, note].filter((part) => part !== '').join('; ')
  return { basis: provenance === 'memory' ? 'memory' : 'published', source: SOURCES[source], provenance, confidence, says }
}

/**
 * How far a source stands back, least first: a data sheet of the steel's maker or stockist, a guide table for many steels, a figure from
 * memory of a handbook, a historic text; half a step more when the reading itself is only of medium confidence.
 */
export function standing({ provenance, source, says, confidence }: Said): number {
  const doubt = confidence === 'high' ? 0 : 0.5
  if (/\bhistoric\b/.test(says)) return 3 + doubt
  if (provenance === 'memory') return 2 + doubt
  return (/guide table/.test(source) ? 1 : 0) + doubt
}

const RULE: { readonly [step: number]: string } = {
  0: 'a data sheet of the steel goes before guide tables and memory',
  1: 'a printed table goes before memory',
  2: 'only memory of the handbook speaks of it',
  3: 'only an old text speaks of it',
}

const middleOf = ({ fromK, toK }: TemperatureRange): number => (fromK + toK) / 2

/**
 * The range to work with. Never an average: one source is taken whole. Best standing first; among equals one that gives a range before
 * one that gives a single temperature, then the one whose middle is nearest to the median of all sources, then the first.
 */
export function chooseRange(all: readonly TemperatureRange[]): TreatmentItem | undefined {
  if (all.length === 0) return undefined
  const middles = all.map(middleOf).sort((a, b) => a - b)
  const median = (middles[(middles.length - 1) >> 1]! + middles[middles.length >> 1]!) / 2
  const order = [...all].sort(
    (a, b) =>
      standing(a) - standing(b) ||
      Number(a.toK === a.fromK) - Number(b.toK === b.fromK) ||
      Math.abs(middleOf(a) - median) - Math.abs(middleOf(b) - median),
  )
  const use = order[0]!
  return { use, because: all.length === 1 ? 'the only source' : (RULE[Math.floor(standing(use))] ?? ''), all }
}

/** Statements in order of standing, the most trusted first. */
export function byStanding<T extends Said>(all: readonly T[]): T[] {
  return [...all].sort((a, b) => standing(a) - standing(b))
}
