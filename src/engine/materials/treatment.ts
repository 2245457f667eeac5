import type { Estimate } from '#engine/provenance/estimate.ts'
import { type Grade, gradeById } from './catalogue.ts'
import { type NamedEmbrittling, namedEmbrittling } from './embrittling.ts'
import { type ThroughHardening, throughHardeningOf } from './hardening-depth.ts'
import { lendersTo } from './near-treatments.ts'
import { type QuenchChoice, type Quenching, quenchingFrom } from './quenchants.ts'
import { type Soak, soakFrom, USUAL_SOAK } from './soaking.ts'
import {
  byStanding,
  chooseRange,
  kelvinOf,
  type Said,
  saidBy,
  standing,
  type TemperatureRange,
  type TreatmentItem,
} from './source-order.ts'
import { AS_QUENCHED_ROWS } from './tables/as-quenched.ts'
import { TREATMENT_ROWS } from './tables/heat-treatments.ts'
import type { TreatmentName, TreatmentRow } from './tables/rows.ts'
import { SOURCES } from './tables/sources.ts'

/** What one source tells to quench in. */
export interface QuenchStatement extends Said, Quenching {}

/** How often to temper. */
export interface TemperCycles extends Said {
  readonly from: number
  readonly to: number
}

/** Published hardness [HRC] with the quench and the heat that it belongs to, where the source tells. */
export interface StatedHardness {
  readonly hardness: Estimate
  readonly says: string
  readonly quench: string
  readonly austenitiseK?: number
}

/** The treatment of a grade as published. An item that no source gives, not even for a near grade, is absent. */
export interface GradeTreatment {
  readonly gradeId: string
  /** False for steels that case-harden only; `hardensSays` tells why. */
  readonly hardens: boolean
  readonly hardensSays: string
  /** From "not below" to the highest start. */
  readonly forge?: TreatmentItem
  /** Set when the steel must not be forged at all. */
  readonly forgeForbidden?: Said
  readonly normalise?: TreatmentItem
  /** Sources that forbid normalising, those that give a temperature all the same, and whether the better one forbids. */
  readonly normaliseForbidden?: { readonly by: readonly Said[]; readonly notBy: readonly Said[]; readonly prevails: boolean }
  readonly anneal?: TreatmentItem
  /** Fastest cooling after annealing [K/s], from every source. */
  readonly annealCooling: readonly (Said & { readonly atMostKPerS: number })[]
  readonly preheat?: TreatmentItem
  readonly austenitise?: TreatmentItem
  /** Lower heat where the quench is in water or brine. */
  readonly austenitiseForWater?: TreatmentItem
  /** The one to work with, and all. */
  readonly soak: Soak
  readonly soaks: readonly Soak[]
  /** In order of preference: those of the best source, then those that only others name. */
  readonly quenchants: readonly QuenchChoice[]
  readonly quenchStatements: readonly QuenchStatement[]
  readonly neverQuenchIn: readonly { readonly kind: QuenchChoice['kind']; readonly source: string }[]
  readonly quenchantsLentBy?: string
  /** Hardens in still air in a bar of ordinary thickness, so that it must not be air-cooled to soften it. */
  readonly airHardening: boolean
  readonly temper?: TreatmentItem
  /** Tempers that a source of the grade warns off. */
  readonly embrittling: readonly NamedEmbrittling[]
  readonly cycles: TemperCycles
  readonly asQuenched: readonly StatedHardness[]
  /** How thick a piece may be to harden through, where a sheet says it. */
  readonly throughHardening: readonly ThroughHardening[]
  readonly annealedBrinell: readonly (Said & { readonly from?: number; readonly to?: number })[]
  readonly workingHardness: readonly StatedHardness[]
}

const CELSIUS_PER_HOUR = 1 / 3600

/** Where a source gives a start for forging and nothing gives a finish. */
const FORGE_FINISH_K = kelvinOf(815)

const USUAL_CYCLES: TemperCycles = {
  from: 1,
  to: 2,
  basis: 'memory',
  source: 'common practice, no source',
  provenance: 'memory',
  confidence: 'medium',
  says: 'one is enough for plain and low-alloy steel; two are common; at least 1 h each, better 2 h',
}

const ROWS_OF: ReadonlyMap<string, readonly TreatmentRow[]> = (() => {
  const rows = new Map<string, TreatmentRow[]>()
  for (const row of TREATMENT_ROWS) rows.set(row[0], [...(rows.get(row[0]) ?? []), row])
  return rows
})()

function rowsOf(gradeId: string, item: TreatmentName): readonly TreatmentRow[] {
  return (ROWS_OF.get(gradeId) ?? []).filter(([, name]) => name === item)
}

/**
 * The published treatment of `grade`, every source side by side. `use` of each item follows `chooseRange`: one source taken whole, printed
 * sheets before memory, never an average. What is missing is lent by a near grade (`lentBy`), or left out.
 */
export function treatmentOf(grade: Grade): GradeTreatment {
  const kept = READ.get(grade.id) ?? readTreatment(grade)
  READ.set(grade.id, kept)
  return kept
}

/** Treatments that were read already; the tables never change. */
const READ = new Map<string, GradeTreatment>()

function readTreatment(grade: Grade): GradeTreatment {
  const { id } = grade
  const use = rowsOf(id, 'hardening use')[0]
  const hardens = use === undefined && grade.family !== 'wrought iron' && grade.family !== 'leaded free-cutting'
  const lent = <T>(own: (gradeId: string) => T | undefined): { readonly item: T; readonly lentBy?: string } | undefined => {
    const mine = own(id)
    if (mine !== undefined) return { item: mine }
    for (const lender of hardens ? lendersTo(grade) : []) {
      const theirs = own(lender)
      if (theirs !== undefined) return { item: theirs, lentBy: lender }
    }
    return undefined
  }
  const item = (own: (gradeId: string) => TreatmentItem | undefined): TreatmentItem | undefined => {
    const found = lent(own)
    return found === undefined ? undefined : found.lentBy === undefined ? found.item : asLent(found.item, found.lentBy)
  }
  const ranges = (name: TreatmentName) => item((gradeId) => chooseRange(rangesOf(gradeId, name)))
  const items = {
    forge: forgeForbiddenOf(id) === undefined ? item(forgeOf) : undefined,
    forgeForbidden: forgeForbiddenOf(id),
    normalise: ranges('normalise'),
    normaliseForbidden: normaliseForbiddenOf(id),
    anneal: ranges('anneal'),
    preheat: ranges('preheat'),
    austenitise: ranges('austenitise'),
    austenitiseForWater: ranges('austenitise (water or brine)'),
    temper: ranges('temper range'),
  }
  const soaks = lent((gradeId) => someOf(soaksOf(gradeId)))?.item ?? []
  const quench = lent((gradeId) => someOf(quenchStatementsOf(gradeId)))
  const statements = byStanding(quench?.item ?? [])
  const cycles = lent((gradeId) => someOf(cyclesOf(gradeId)))?.item
  return {
    gradeId: id,
    hardens,
    hardensSays: use === undefined ? grade.warning : saidBy(use).says,
    ...present(items),
    annealCooling: annealCoolingOf(id),
    soak: chooseSoak(soaks),
    soaks,
    quenchants: preferred(statements),
    quenchStatements: statements,
    neverQuenchIn: statements.flatMap(({ never, source }) => never.map((kind) => ({ kind, source }))),
    ...(quench?.lentBy === undefined ? {} : { quenchantsLentBy: quench.lentBy }),
    airHardening: statements.some(({ choices }) => choices.some(({ kind }) => kind === 'air')),
    embrittling: hardens ? namedEmbrittling([...rowsOf(id, 'temper range'), ...rowsOf(id, 'temper avoid')]) : [],
    cycles: cycles === undefined ? USUAL_CYCLES : byStanding(cycles)[0]!,
    asQuenched: [...hardnessesOf(id, 'as-quenched hardness'), ...measuredAsQuenched(id)],
    throughHardening: throughHardeningOf(id),
    annealedBrinell: rowsOf(id, 'annealed hardness').map((row) => ({ ...saidBy(row), ...bounds(row[2], row[3]) })),
    workingHardness: hardnessesOf(id, 'working hardness over temper range'),
  }
}

/** `items` without the absent ones. */
function present<T extends object>(items: T): { readonly [Key in keyof T]?: Exclude<T[Key], undefined> } {
  const kept = Object.entries(items).filter(([, value]) => value !== undefined)
  return Object.fromEntries(kept) as { readonly [Key in keyof T]?: Exclude<T[Key], undefined> }
}

function asLent(item: TreatmentItem, lender: string): TreatmentItem {
  const mark = (range: TemperatureRange): TemperatureRange => ({
    ...range,
    source: `${range.source} (for ${lender}, a near grade)`,
  })
  return {
    use: mark(item.use),
    all: item.all.map(mark),
    because: `none is given for the grade itself; ${lender} is near`,
    lentBy: lender,
  }
}

function rangesOf(gradeId: string, item: TreatmentName): TemperatureRange[] {
  return rowsOf(gradeId, item).flatMap((row) => {
    const [, , low, high, unit] = row
    const from = low ?? high
    const to = high ?? low
    return unit !== 'C' || from === null || to === null ? [] : [{ ...saidBy(row), fromK: kelvinOf(from), toK: kelvinOf(to) }]
  })
}

/** Start and finish of one source belong together; "forge range" holds both. */
function forgeOf(gradeId: string): TreatmentItem | undefined {
  const starts = rangesOf(gradeId, 'forge start')
  const finishes = rangesOf(gradeId, 'forge not below')
  const whole = rangesOf(gradeId, 'forge range')
  const joined = starts.map((start): TemperatureRange => {
    const finish = finishes.find(({ source }) => source === start.source) ?? byStanding(finishes)[0]
    return { ...start, fromK: finish?.fromK ?? FORGE_FINISH_K, toK: start.toK }
  })
  return chooseRange([...whole, ...joined])
}

function forgeForbiddenOf(gradeId: string): Said | undefined {
  return rowsOf(gradeId, 'forge start')
    .map(saidBy)
    .find(({ says }) => says.startsWith('do not forge'))
}

function normaliseForbiddenOf(gradeId: string): GradeTreatment['normaliseForbidden'] {
  const rows = rowsOf(gradeId, 'normalise').map(saidBy)
  const by = rows.filter(({ says }) => says.startsWith('do not'))
  if (by.length === 0) return undefined
  const notBy = rows.filter(({ says }) => !says.startsWith('do not'))
  const best = (all: readonly Said[]): number => Math.min(Number.POSITIVE_INFINITY, ...all.map(standing))
  return { by, notBy, prevails: best(by) <= best(notBy) }
}

function annealCoolingOf(gradeId: string): (Said & { atMostKPerS: number })[] {
  return rowsOf(gradeId, 'anneal cooling rate').flatMap((row) => {
    const high = row[3] ?? row[2]
    return high === null ? [] : [{ ...saidBy(row), atMostKPerS: high * CELSIUS_PER_HOUR }]
  })
}

function soaksOf(gradeId: string): Soak[] {
  const byRow = rowsOf(gradeId, 'soak at hardening heat').flatMap((row): Soak[] => {
    const [, , low, high] = row
    return low === null || high === null ? [] : [{ ...saidBy(row), fromS: low * 60, toS: high * 60, perMetreS: 0, leastS: 0 }]
  })
  const byText = rowsOf(gradeId, 'austenitise').flatMap((row) => soakFrom(row[5], saidBy(row)) ?? [])
  return [...byRow, ...byText]
}

function chooseSoak(soaks: readonly Soak[]): Soak {
  const order = [...soaks].sort((a, b) => standing(a) - standing(b) || Number(a.toS === 0) - Number(b.toS === 0))
  return order[0] ?? USUAL_SOAK
}

function quenchStatementsOf(gradeId: string): QuenchStatement[] {
  return [...rowsOf(gradeId, 'quenchant'), ...rowsOf(gradeId, 'austenitise')].flatMap((row) => {
    const quenching = quenchingFrom(row[5])
    return quenching.choices.length === 0 ? [] : [{ ...saidBy(row), ...quenching }]
  })
}

function preferred(statements: readonly QuenchStatement[]): QuenchChoice[] {
  const choices: QuenchChoice[] = []
  for (const statement of statements)
    for (const choice of statement.choices) if (!choices.some(({ kind }) => kind === choice.kind)) choices.push(choice)
  return choices
}

function cyclesOf(gradeId: string): TemperCycles[] {
  return rowsOf(gradeId, 'temper cycles').flatMap((row) => {
    const [, , low, high] = row
    return low === null || high === null ? [] : [{ ...saidBy(row), from: low, to: high }]
  })
}

/** A sheet that prints one figure means it within this much, nine times in ten [HRC]; memory. */
const PRINTED_FIGURE_HRC = 1.5

function hardnessesOf(gradeId: string, item: TreatmentName): StatedHardness[] {
  return rowsOf(gradeId, item).flatMap((row) => {
    const { basis, source, says } = saidBy(row)
    const hardness = estimateBetween(row[2] ?? row[3], row[3] ?? row[2])
    return hardness === undefined ? [] : [{ hardness: { ...hardness, basis, source }, says, quench: '' }]
  })
}

function measuredAsQuenched(gradeId: string): StatedHardness[] {
  return AS_QUENCHED_ROWS.filter(({ grade }) => grade === gradeId).flatMap((row) => {
    const hardness = estimateBetween(row.lowHrc ?? row.hrc, row.highHrc ?? row.hrc)
    if (hardness === undefined) return []
    const { quench, note: says, hardenC } = row
    const estimate = {
      ...hardness,
      basis: row.provenance === 'memory' ? 'memory' : 'published',
      source: SOURCES[row.source],
    } as const
    return [{ hardness: estimate, says, quench, ...(hardenC === null ? {} : { austenitiseK: kelvinOf(hardenC) }) }]
  })
}

function estimateBetween(low: number | null, high: number | null): { value: number; low: number; high: number } | undefined {
  if (low === null || high === null) return undefined
  const value = (low + high) / 2
  const half = Math.max((high - low) / 2, PRINTED_FIGURE_HRC)
  return { value, low: value - half, high: value + half }
}

function bounds(from: number | null, to: number | null): { from?: number; to?: number } {
  return { ...(from === null ? {} : { from }), ...(to === null ? {} : { to }) }
}

function someOf<T>(all: readonly T[]): readonly T[] | undefined {
  return all.length === 0 ? undefined : all
}

/** `treatmentOf` by the id of the catalogue; `undefined` for an id that is not in it. */
export function treatmentById(gradeId: string): GradeTreatment | undefined {
  const grade = gradeById(gradeId)
  return grade === undefined ? undefined : treatmentOf(grade)
}
