import type { Basis } from '#engine/provenance/estimate.ts'
import { GRADES, type Grade, gradeById } from './catalogue.ts'
import { GRADE_ROWS } from './tables/grades.ts'
import type { GradeRow } from './tables/rows.ts'
import { SOURCES } from './tables/sources.ts'
import { H_GRADES, OTHER_NAMES } from './trade-names.ts'

/** One name that a grade answers to. */
export interface SteelName {
  readonly name: string
  /** "AISI/SAE", "UNS", "EN", "material number", "JIS", "trade word", ... */
  readonly system: string
  /** True: the name of an equivalent whose limits differ; false: the grade's own name. */
  readonly near: boolean
  readonly basis: Basis
  readonly source: string
  readonly warning?: string
}

interface Answering {
  readonly gradeId: string
  readonly name: SteelName
}

/** A name as it is compared: capitals and digits only. */
export function nameKey(text: string): string {
  return text.toUpperCase().replaceAll(/[^A-Z0-9]+/g, '')
}

const isMaterialNumber = (text: string): boolean => /^1\.\d{4}$/.test(text)

/** "C15E/C16" and "SK75/S70C" are two names; "etc.", "near" and ranges are words about them. */
function namesIn(cell: string): { readonly text: string; readonly near: boolean }[] {
  const near = /\bnear\b/.test(cell)
  return cell
    .replaceAll(/\b(near|etc\.?)(?=\s|$)/g, '')
    .split('/')
    .map((text) => ({ text: text.trim(), near }))
    .filter(({ text }) => text !== '')
}

function namesOfRow(row: GradeRow): SteelName[] {
  const own = (name: string, system: string): SteelName => {
    return { name, system, near: false, basis: row.provenance === 'memory' ? 'memory' : 'published', source: SOURCES[row.source] }
  }
  const equivalent = (name: string, system: string): SteelName => {
    const memory = row.equivalents.startsWith('memory')
    return { name, system, near: true, basis: memory ? 'memory' : 'published', source: `near equivalents: ${row.equivalents}` }
  }
  const european = row.system === 'EN'
  const names = [own(row.id, row.system)]
  // In the UNS column a European grade carries the American one that it is near ("near W1 0.8 C", "O2").
  if (european) for (const { text } of namesIn(row.uns)) names.push(equivalent(text.split(' ')[0] ?? text, 'AISI/SAE'))
  else if (row.uns !== '') names.push(own(row.uns, 'UNS'))
  for (const { text } of namesIn(row.en)) {
    const ends = /^(C\d+U)-(C\d+U)$/.exec(text)
    if (ends !== null) names.push(equivalent(ends[1] ?? text, 'EN'), equivalent(ends[2] ?? text, 'EN'))
    else if (text !== row.id) names.push(equivalent(text, 'EN'))
  }
  for (const { text, near } of namesIn(row.wNr))
    if (isMaterialNumber(text)) names.push(european && !near ? own(text, 'material number') : equivalent(text, 'material number'))
  for (const { text } of namesIn(row.jis)) names.push(equivalent(text, 'JIS'))
  if (H_GRADES.includes(row.id))
    names.push({ ...equivalent(`${row.id}H`, 'SAE H'), basis: 'memory', source: 'SAE J1268: limits a little wider, from memory' })
  return names
}

const ANSWERING: readonly Answering[] = [
  ...GRADE_ROWS.flatMap((row) => namesOfRow(row).map((name) => ({ gradeId: row.id, name }))),
  ...OTHER_NAMES.flatMap(({ grades, ...name }) => grades.map((gradeId) => ({ gradeId, name: { ...name, near: true } }))),
]

const BY_KEY: ReadonlyMap<string, readonly Answering[]> = (() => {
  const byKey = new Map<string, Answering[]>()
  for (const answering of ANSWERING) {
    const key = nameKey(answering.name.name)
    byKey.set(key, [...(byKey.get(key) ?? []), answering])
  }
  return byKey
})()

const BY_GRADE: ReadonlyMap<string, readonly SteelName[]> = new Map(
  GRADES.map(({ id }) => [id, ANSWERING.filter(({ gradeId }) => gradeId === id).map(({ name }) => name)]),
)

/** Every name that the grade answers to, its own first. */
export function namesOf(grade: Grade): readonly SteelName[] {
  return BY_GRADE.get(grade.id) ?? []
}

/** Words of a label that say nothing of the analysis. */
const PREFIXES =
  /^(aisi|sae|astm|uns|din|en\s?iso|iso|en|jis|bs|w\.?[\s-]?nr\.?|werkstoff(nummer|nr\.?)?|material number|grade|type|no\.?|drill rod|gauge plate|silver steel|spring steel|tool steel|steel|cold rolled|hot rolled)(?=[\s\-/.:]|$)[\s\-/.:]*/i
const SUFFIXES =
  /[\s\-,]+(steel|tool|carbon|high|alloy|leaf|coil|spring|drill|gauge|silver|ground|bar|round|square|flat|plate|sheet|rod|stock|annealed|cold drawn|cold rolled|hot rolled|pre-?hard(ened)?|ph|ht|qt)$/i
/** Old SAE letters for the furnace or the form: C1045, E52100. */
const FURNACE_LETTER = /^[CE]-?(?=\d{4,5}$)/i

/** `text` and what is left of it as labels are taken off, the fullest first. */
function readings(text: string): string[] {
  const found = [text.trim()]
  for (let rest = text.trim(); ; ) {
    const shorter = rest.replace(PREFIXES, '').replace(SUFFIXES, '').trim()
    if (shorter === rest || shorter === '') break
    found.push(shorter)
    rest = shorter
  }
  const last = found[found.length - 1] ?? ''
  return FURNACE_LETTER.test(last) ? [...found, last.replace(FURNACE_LETTER, '')] : found
}

export type SteelMatch =
  | {
      readonly found: true
      readonly grade: Grade
      /** The name that was met; `near` when it belongs to an equivalent with other limits. */
      readonly matched: SteelName
      /** Other grades that answer to the same name or are near equivalents of the grade. */
      readonly others: readonly { readonly grade: Grade; readonly name: SteelName }[]
    }
  | {
      readonly found: false
      readonly asked: string
      /** Names that are spelt nearly so, the nearest first; empty when nothing comes close. */
      readonly nearest: readonly { readonly name: string; readonly grade: Grade }[]
    }

/**
 * The steel that `text` names, in any naming system, however it is spaced or capitalised ("S 7", "AISI S-7", "1.7225", "SCM440").
 * A grade's own name goes before a near equivalent, then the catalogue's order decides; a word of the trade ("silver steel")
 * comes with a warning. A misspelt name is not guessed at: the nearest names are given instead.
 */
export function findSteel(text: string): SteelMatch {
  for (const reading of readings(text)) {
    const key = nameKey(reading)
    const answering = key === '' ? undefined : BY_KEY.get(key)
    if (answering === undefined) continue
    const [best, ...rest] = [...answering.filter(({ name }) => !name.near), ...answering.filter(({ name }) => name.near)]
    const grade = best === undefined ? undefined : gradeById(best.gradeId)
    if (best === undefined || grade === undefined) throw new Error(`findSteel: "${reading}" names a grade outside the catalogue`)
    return { found: true, grade, matched: best.name, others: othersOf(grade, rest) }
  }
  return { found: false, asked: text, nearest: nearestNames(text) }
}

/** Grades that share the asked name, then those that share another name with `grade`. */
function othersOf(grade: Grade, sharing: readonly Answering[]): { grade: Grade; name: SteelName }[] {
  const found = new Map<string, SteelName>()
  for (const { gradeId, name } of sharing)
    if (gradeId !== grade.id && !found.has(gradeId)) found.set(gradeId, { ...name, near: true })
  for (const { gradeId, name } of nearGrades(grade)) if (!found.has(gradeId)) found.set(gradeId, name)
  return [...found].flatMap(([id, name]) => {
    const other = gradeById(id)
    return other === undefined ? [] : [{ grade: other, name }]
  })
}

/**
 * Grades of other names that stand near `grade`: they share an own or equivalent name with it (4140, 42CrMo4 and 4142 share 1.7225
 * and SCM440). Trade words make no neighbours.
 */
export function nearGrades(grade: Grade): readonly { readonly gradeId: string; readonly name: SteelName }[] {
  const found = new Map<string, SteelName>()
  for (const { name, system } of namesOf(grade)) {
    if (system === 'trade word') continue
    for (const other of BY_KEY.get(nameKey(name)) ?? [])
      if (other.gradeId !== grade.id && !found.has(other.gradeId)) found.set(other.gradeId, { ...other.name, near: true })
  }
  return [...found].map(([gradeId, name]) => ({ gradeId, name }))
}

function nearestNames(text: string): { name: string; grade: Grade }[] {
  const keys = readings(text)
    .map(nameKey)
    .filter((key) => key !== '')
  const scored = ANSWERING.flatMap((answering, order) => {
    const known = nameKey(answering.name.name)
    return keys.map((key) => ({
      ...answering,
      order,
      reach: Math.max(1, Math.floor(key.length / 3)),
      distance: editDistance(key, known),
    }))
  })
  const near = scored.filter(({ distance, reach }) => distance <= reach)
  near.sort((a, b) => a.distance - b.distance || Number(a.name.near) - Number(b.name.near) || a.order - b.order)
  const names = new Map<string, Grade>()
  for (const { name, gradeId } of near) {
    const grade = gradeById(gradeId)
    if (grade !== undefined && !names.has(name.name)) names.set(name.name, grade)
  }
  return [...names].slice(0, 5).map(([name, grade]) => ({ name, grade }))
}

/** Insertions, deletions, substitutions and swaps of neighbours that turn `a` into `b` (optimal string alignment). */
function editDistance(a: string, b: string): number {
  let before: number[] = []
  let row = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1]
      let best = Math.min(next[j - 1]! + 1, row[j]! + 1, row[j - 1]! + (same ? 0 : 1))
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
      if (swapped) best = Math.min(best, before[j - 2]! + 1)
      next.push(best)
    }
    before = row
    row = next
  }
  return row[b.length]!
}
