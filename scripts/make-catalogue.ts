/**
 * Makes the steel catalogue again from tables of published figures:
 *
 *   node --conditions=source --import tsx scripts/make-catalogue.ts FOLDER
 *
 * FOLDER holds grades.csv, grades_heat_treat.csv, temper_curves.csv, as_quenched_vs_austenitise.csv and hardening_depth.csv, one figure
 * a row with its source, provenance and confidence. The TypeScript tables go to src/engine/materials/tables/ and carry all three along.
 * Figures stay in the units of the source; treatment.ts and temper-curves.ts turn them into kelvin and seconds.
 */
import { spawnSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parse } from 'csv-parse/sync'

type Row = { readonly [column: string]: string }

const root = dirname(dirname(fileURLToPath(import.meta.url)))
const target = join(root, 'src/engine/materials/tables')
const folder = process.argv[2]
if (folder === undefined) {
  console.error('make-catalogue: name the folder that holds the CSV tables')
  process.exit(2)
}

const ELEMENT_COLUMNS = ['C', 'Mn', 'Si', 'P', 'S', 'Cr', 'Ni', 'Mo', 'V', 'W']

function read(file: string): Row[] {
  return parse(readFileSync(join(folder as string, file), 'utf8'), { columns: true, skip_empty_lines: true }) as Row[]
}

const sources = new Map<string, string>()

/** A short name for a source, made of its own words; the same source gets the same name in every table. */
function sourceId(given: string): string {
  const text = /^general( practice)?$/.test(given) ? 'common practice, no source' : given
  for (const [id, known] of sources) if (known === text) return id
  const words = text
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .split('-')
    .filter((word) => word !== '')
  let id = ''
  for (const word of words) {
    if (id.length + word.length > 32) break
    id += id === '' ? word : `-${word}`
  }
  let unique = id
  for (let n = 2; sources.has(unique); n++) unique = `${id}-${n}`
  sources.set(unique, text)
  return unique
}

function number(cell: string | undefined, where: string): number | null {
  if (cell === undefined || cell.trim() === '') return null
  const value = Number(cell)
  if (!Number.isFinite(value)) throw new Error(`${where}: "${cell}" is not a number`)
  return value
}

function cell(row: Row, column: string): string {
  const text = row[column]
  if (text === undefined) throw new Error(`no column ${column} in ${JSON.stringify(row)}`)
  return text.trim()
}

/** Remarks on how a copy of the source was kept say nothing of the steel. */
function remark(text: string): string {
  return text.replaceAll(/\bstored (copy|text)\b/g, '$1 read').replace(/^same rows as in temper_curves$/, '')
}

/** As the house style quotes: single marks unless the text holds one. */
function quoted(value: string | number | null): string {
  if (typeof value !== 'string') return String(value)
  return value.includes("'") ? JSON.stringify(value) : `'${value}'`
}

const literal = (value: unknown): string => JSON.stringify(value)

function kept(row: Row): string {
  return `source: ${literal(sourceId(cell(row, 'source')))}, provenance: ${literal(cell(row, 'provenance'))}, confidence: ${literal(cell(row, 'confidence'))}`
}

function write(file: string, imports: string, body: string): void {
  writeFileSync(
    join(target, file),
    `// Made by scripts/make-catalogue.ts from tables of published figures; change those and make it again.\n${imports}\n${body}\n`,
  )
}

// Composition limits: null where the source gives no bound.
const grades = read('grades.csv').map((row) => {
  const id = cell(row, 'grade_id')
  const limits = ELEMENT_COLUMNS.flatMap((element) => {
    const low = number(row[`${element}_min`], `${id} ${element}_min`)
    const high = number(row[`${element}_max`], `${id} ${element}_max`)
    return low === null && high === null ? [] : [`${element}: [${low}, ${high}]`]
  })
  const names = { uns: 'uns', en: 'en_name', wNr: 'w_nr', jis: 'jis_near', note: 'other', warning: 'warning' }
  const texts = Object.entries(names).map(([key, column]) => `${key}: ${literal(cell(row, column))}`)
  return `{ id: ${literal(id)}, system: ${literal(cell(row, 'system'))}, family: ${literal(cell(row, 'family'))}, ${texts.join(', ')},
    limits: { ${limits.join(', ')} }, source: ${literal(sourceId(cell(row, 'composition_source')))},
    provenance: ${literal(cell(row, 'provenance'))}, confidence: ${literal(cell(row, 'confidence'))},
    equivalents: ${literal(cell(row, 'equivalents_provenance'))} }`
})

const treatments: string[] = []
let grade = ''
for (const row of read('grades_heat_treat.csv')) {
  const id = cell(row, 'grade_id')
  if (id !== grade) treatments.push(`  // ${id}`)
  grade = id
  const item = cell(row, 'item')
  const where = `${id} ${item}`
  const fields = [
    id,
    item,
    number(row.low, where),
    number(row.high, where),
    cell(row, 'unit'),
    cell(row, 'text'),
    sourceId(cell(row, 'source')),
    cell(row, 'provenance'),
    cell(row, 'confidence'),
    remark(cell(row, 'note')),
  ]
  treatments.push(`  [${fields.map(quoted).join(', ')}],`)
}

/** "2 min, 4 preferred" on these sheets means hours at least, not minutes. */
const HOLDS: { readonly [asGiven: string]: readonly [hours: number | null, says: string] } = {
  '': [null, 'not given'],
  '2': [2, '2 h'],
  '2 min, 4 preferred': [2, '2 h at least, 4 h preferred'],
  '1 h per inch, 2 min': [2, '1 h per inch of section, 2 h at least'],
}

const curveRows = new Map<string, Row[]>()
for (const row of read('temper_curves.csv')) {
  const id = cell(row, 'curve_id')
  curveRows.set(id, [...(curveRows.get(id) ?? []), row])
}
const curves = [...curveRows].map(([id, rows]) => {
  const first = rows[0] as Row
  const hold = HOLDS[cell(first, 'hold_h_per_temper')]
  if (hold === undefined) throw new Error(`${id}: unknown hold "${cell(first, 'hold_h_per_temper')}"`)
  const points = rows.map((row) => {
    const columns = ['temper_c', 'hardness_hrc', 'hrc_low', 'hrc_high', 'hardness_hb']
    return JSON.stringify(columns.map((column) => number(row[column], `${id} ${column}`)))
  })
  return `{ id: ${literal(id)}, grade: ${literal(cell(first, 'grade'))}, typical: ${literal(cell(first, 'typical_composition'))},
    section: ${literal(cell(first, 'section'))}, hardenC: ${number(first.harden_c, id)}, quench: ${literal(cell(first, 'quench'))},
    holdH: ${hold[0]}, holdSays: ${literal(hold[1])}, cycles: ${number(first.cycles, id)}, note: ${literal(remark(cell(first, 'note')))},
    ${kept(first)},
    points: [${points.join(', ')}] }`
})

const asQuenched = read('as_quenched_vs_austenitise.csv').map((row) => {
  const id = cell(row, 'case_id')
  const numbers = { holdMin: 'hold_min', hardenC: 'harden_c', hrc: 'as_quenched_hrc', lowHrc: 'hrc_low', highHrc: 'hrc_high' }
  const figures = Object.entries(numbers).map(([key, column]) => `${key}: ${number(row[column], id)}`)
  return `{ grade: ${literal(cell(row, 'steel'))}, quench: ${literal(cell(row, 'quench'))}, ${figures.join(', ')},
    grainSize: ${literal(cell(row, 'astm_grain_size'))}, ${kept(row)}, note: ${literal(remark(cell(row, 'note')))} }`
})

const depths = read('hardening_depth.csv').map((row) => {
  const id = cell(row, 'case_id')
  return `{ id: ${literal(id)}, steel: ${literal(cell(row, 'steel'))}, composition: ${literal(cell(row, 'composition'))},
    sectionMm: ${number(row.diameter_or_section_mm, id)}, quench: ${literal(cell(row, 'quench'))}, quantity: ${literal(cell(row, 'quantity'))},
    fromCentreMm: ${number(row.radius_mm_from_centre, id)}, value: ${number(row.value, id)}, unit: ${literal(cell(row, 'unit'))},
    ${kept(row)}, note: ${literal(remark(cell(row, 'note')))} }`
})

const rowTypes = "import type { AsQuenchedRow, CurveRow, DepthRow, GradeRow, TreatmentRow } from './rows.ts'"
const only = (name: string): string => rowTypes.replace(/\{.*\}/, `{ ${name} }`)
write(
  'grades.ts',
  only('GradeRow'),
  `/** Composition limits in weight per cent; null is no bound. */\nexport const GRADE_ROWS: readonly GradeRow[] = [${grades.join(',\n')}]`,
)
write(
  'heat-treatments.ts',
  only('TreatmentRow'),
  `/** Grade, item, low, high, unit, text, source, provenance, confidence, note. */\n// biome-ignore format: one figure a line reads and compares best\nexport const TREATMENT_ROWS: readonly TreatmentRow[] = [\n${treatments.join('\n')}\n]`,
)
write(
  'temper-curves.ts',
  only('CurveRow'),
  `/** Points: temperature in C (null: as quenched), HRC, lowest and highest HRC, Brinell. */\nexport const CURVE_ROWS: readonly CurveRow[] = [${curves.join(',\n')}]`,
)
write(
  'as-quenched.ts',
  only('AsQuenchedRow'),
  `export const AS_QUENCHED_ROWS: readonly AsQuenchedRow[] = [${asQuenched.join(',\n')}]`,
)
write('hardening-depths.ts', only('DepthRow'), `export const DEPTH_ROWS: readonly DepthRow[] = [${depths.join(',\n')}]`)
const named = [...sources].map(([id, text]) => `${literal(id)}: ${literal(text)},`)
write(
  'sources.ts',
  '',
  `/** Every publication that the tables name. */\nexport const SOURCES = {\n${named.join('\n')}\n} as const\nexport type SourceId = keyof typeof SOURCES`,
)

const formatted = spawnSync(join(root, 'node_modules/.bin/biome'), ['check', '--write', target], { stdio: 'inherit' })
if (formatted.status !== 0) process.exit(1)
console.error(
  `make-catalogue: ${grades.length} grades, ${treatments.length - grades.length} figures of treatment, ${curves.length} tempering curves`,
)
