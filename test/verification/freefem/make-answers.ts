import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type DeckCase, type DeckSizes, freefemDeck } from './deck.ts'

/**
 * Runs FreeFem++ (Debian package freefem++) on a case and writes what it answers beside the other data of this folder:
 *
 *     node --conditions=source --import tsx test/verification/freefem/make-answers.ts
 *
 * Takes about half an hour on one core. The tests read the stored answers and never need FreeFem++.
 */
const CASE = 'drift-in-oil'
const SIZES: DeckSizes = { surfaceMm: 0.6, axisMm: 1.4, firstS: 0.004, growth: 0.05, longestS: 0.5 }

const root = new URL('../../../', import.meta.url)
const given = JSON.parse(readFileSync(new URL(`bench/cases/${CASE}.json`, root), 'utf8')) as DeckCase
const folder = mkdtempSync(join(tmpdir(), 'deck-'))
const deck = join(folder, 'deck.edp')
writeFileSync(deck, freefemDeck(given, SIZES))
const printed = execFileSync('FreeFem++', ['-nw', '-v', '0', deck], {
  encoding: 'utf8',
  env: { ...process.env, OMP_NUM_THREADS: '1', OPENBLAS_NUM_THREADS: '1' },
  maxBuffer: 1e8,
})
rmSync(folder, { recursive: true })

const rows = [...printed.matchAll(/^row (.*)$/gm)].map((match) => match[1]!.trim().split(/\s+/).map(Number))
if (rows.length !== given.times_s.length)
  throw new Error(`FreeFem++ gave ${rows.length} rows for ${given.times_s.length} times:\n${printed}`)
const answers = {
  made_by: 'FreeFem++ 4.9, script written by test/verification/freefem/deck.ts',
  provenance: 'computed',
  case: CASE,
  sizes: SIZES,
  unknowns: Number(/unknowns (\d+)/.exec(printed)?.[1]),
  steps: Number(/steps (\d+)/.exec(printed)?.[1]),
  probes: given.probes.map(({ name }) => name),
  rows: rows.map(([time_s, ...temperature_C]) => ({ time_s, temperature_C })),
}
writeFileSync(new URL(`test/verification/data/conduction-freefem-${CASE}.json`, root), `${JSON.stringify(answers, null, 1)}\n`)
