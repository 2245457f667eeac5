import type { Element } from './steel.ts'
import { GRADE_ROWS } from './tables/grades.ts'
import type { Confidence, GradeRow, NamingSystem, Provenance } from './tables/rows.ts'
import { SOURCES } from './tables/sources.ts'

/** Least and greatest weight per cent that a standard allows; an absent bound is open. */
export interface Limit {
  readonly low?: number
  readonly high?: number
}

/** Limits of one element that another source gives, unlike those of the grade. */
export interface OtherLimit {
  readonly element: Element
  readonly limit: Limit
  readonly source: string
  /** Source of the limits that the catalogue works with instead. */
  readonly taken: string
}

/** A steel that is made and sold under a name. */
export interface Grade {
  readonly id: string
  readonly system: NamingSystem
  readonly family: string
  /** Weight per cent; an element without an entry is not named by the standard. */
  readonly limits: { readonly [Key in Element]?: Limit }
  readonly otherLimits: readonly OtherLimit[]
  /** Publication of the limits, how it was read and how sure the reading is. */
  readonly source: string
  readonly provenance: Provenance
  readonly confidence: Confidence
  /** What the smith should know before anything else; empty when there is nothing. */
  readonly warning: string
  readonly note: string
}

/**
 * Elements whose limits the catalogue takes from another source than the rest of the grade.
 * O1: the stockist's sheet prints 1.40..1.80 Mn, which is the range of O2; the standard and a maker's typical analysis (1.25 Mn) say 1.00..1.40.
 */
const CHOSEN_LIMITS: readonly {
  readonly grade: string
  readonly element: Element
  readonly limit: Limit
  readonly source: string
}[] = [{ grade: 'O1', element: 'Mn', limit: { low: 1.0, high: 1.4 }, source: 'ASTM A681, as quoted beside the stockist sheet' }]

/** Every grade of the catalogue. */
export const GRADES: readonly Grade[] = GRADE_ROWS.map(gradeOf)

const BY_ID: ReadonlyMap<string, Grade> = new Map(GRADES.map((grade) => [grade.id, grade]))

/** The grade of that id ("4140", "C45", "S7"), exactly as the catalogue spells it; `undefined` when there is none. */
export function gradeById(id: string): Grade | undefined {
  return BY_ID.get(id)
}

function gradeOf(row: GradeRow): Grade {
  const printed = Object.entries(row.limits).map(([element, [low, high]]) => [element, limitOf(low, high)] as const)
  const chosen = CHOSEN_LIMITS.filter(({ grade }) => grade === row.id)
  const limits: { [Key in Element]?: Limit } = Object.fromEntries(printed)
  const otherLimits: OtherLimit[] = []
  for (const { element, limit, source: taken } of chosen) {
    const other = limits[element]
    if (other !== undefined) otherLimits.push({ element, limit: other, source: SOURCES[row.source], taken })
    limits[element] = limit
  }
  const { id, system, family, provenance, confidence, warning, note } = row
  const sources = [SOURCES[row.source], ...chosen.map(({ element, source }) => `${element}: ${source}`)]
  return { id, system, family, limits, otherLimits, source: sources.join('; '), provenance, confidence, warning, note }
}

function limitOf(low: number | null, high: number | null): Limit {
  return { ...(low === null ? {} : { low }), ...(high === null ? {} : { high }) }
}
