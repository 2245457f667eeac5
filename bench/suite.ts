import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { cpus, loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import { type DeckCase, freefemDeck } from '../test/verification/freefem/deck.ts'
import { ensembleReference, solveEnsemble } from './ensemble-case.ts'
import { type ReferenceTable, referenceTables } from './reference-tables.ts'
import { solveThermalCase } from './solve-case.ts'
import { parseThermalCase } from './thermal-case.ts'
import type { ExtrapolatedAnswer } from './two-meshes.ts'
import { sayForecasts } from './whole-forecasts.ts'

const ROOT = new URL('../', import.meta.url)
const FRESH_PROCESSES = 5
const DECK_LIMIT_S = 60
/** A deck that ends within about a minute; the stored answers come from a finer one. */
const DECK_SIZES = { surfaceMm: 2, axisMm: 4, firstS: 0.02, growth: 0.15, longestS: 2 }

type Answer = Pick<ExtrapolatedAnswer, 'seconds' | 'meshSeconds' | 'steps' | 'nodes' | 'method' | 'probes'>

/** Measures everything, prints it and writes docs/bench.md. */
export function runSuite(): number {
  const lines: string[] = []
  const say = (line: string): void => {
    lines.push(line)
    process.stdout.write(`${line}\n`)
  }
  say('# Benchmarks')
  say('')
  say('Written by `npm run bench`; the figures stand as they came out, on a machine that was doing other things too.')
  say(
    `${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, load ${loadavg()[0]!.toFixed(1)} at the start, Node ${process.version}.`,
  )
  say('')
  sayCases(say)
  sayEnsemble(say)
  sayForecasts(say)
  sayOtherProgram(say)
  writeFileSync(new URL('docs/bench.md', ROOT), `${lines.join('\n')}\n`)
  return 0
}

function sayCases(say: (line: string) => void): void {
  say('## Cases with a reference')
  say('')
  say(
    `Each row is ${FRESH_PROCESSES} fresh processes; seconds are those of the solve alone, least / middle / most, with the compiler's`,
  )
  say('warming up in them. Error: the largest and the mean size of the difference from the reference over all probes and times.')
  say(
    '"Extrapolated" solves on the draft and the normal mesh and carries on from both, "extrapolated-fine" on the normal and the fine one.',
  )
  say('')
  say('| case | mesh | nodes | steps | seconds | worst error K | mean error K | reference |')
  say('| --- | --- | --- | --- | --- | --- | --- | --- |')
  for (const file of ['cylinder-in-oil', 'stepped-in-fire', 'drift-in-oil']) {
    for (const grade of ['normal', 'extrapolated', 'extrapolated-fine']) {
      const answers = Array.from({ length: FRESH_PROCESSES }, () => inFreshProcess(file, grade))
      const name = (JSON.parse(caseText(file)) as { name: string }).name
      const reference = referenceTables[name] ?? storedAnswers(file)
      const [first] = answers
      if (first === undefined) continue
      const { worst, mean } = errorsOf(first, reference)
      const seconds = answers.map((each) => each.seconds).sort((a, b) => a - b)
      const spread = [seconds[0]!, seconds[seconds.length >> 1]!, seconds[seconds.length - 1]!]
        .map((s) => s.toFixed(2))
        .join(' / ')
      say(
        `| ${name} | ${grade} | ${first.nodes} | ${first.steps} | ${spread} | ${worst.toFixed(2)} | ${mean.toFixed(2)} | ${reference.source} |`,
      )
    }
  }
  say('')
  const given = parseThermalCase(JSON.parse(caseText('stepped-in-water')))
  const draft = [1, 2, 3, 4].map(() => solveThermalCase(given, { grade: 'draft', toleranceK: 1 }))
  const last = draft[draft.length - 1]!
  say(
    `Draft mesh, case B (${last.nodes} nodes, ${last.steps} steps): ${draft.map(({ seconds }) => seconds.toFixed(3)).join(', ')} s one after another in one process.`,
  )
  say('')
}

function sayEnsemble(say: (line: string) => void): void {
  const given = parseThermalCase(JSON.parse(caseText('cylinder-in-oil')))
  say('## D: a thousand bars without ends')
  say('')
  say('| step tolerance K | steps of the base member | seconds for 1000 | worst error of the base member K |')
  say('| --- | --- | --- | --- |')
  for (const toleranceK of [0.3, 0.05]) {
    const answer = solveEnsemble(given, 1000, toleranceK)
    const worst = Math.max(
      ...ensembleReference.flatMap(({ core_C, side_C }, i) => [
        Math.abs(answer.base[i]!.core_C - core_C),
        Math.abs(answer.base[i]!.side_C - side_C),
      ]),
    )
    say(`| ${toleranceK} | ${answer.steps} | ${answer.seconds.toFixed(2)} | ${worst.toFixed(2)} |`)
  }
  say('')
}

function sayOtherProgram(say: (line: string) => void): void {
  say('## Beside a general-purpose program')
  say('')
  if (spawnSync('FreeFem++', ['-nw', '-h'], { stdio: 'ignore' }).error !== undefined) {
    say('FreeFem++ is not installed here; nothing was compared in this run.')
    return
  }
  const given = JSON.parse(caseText('drift-in-oil')) as DeckCase
  const folder = mkdtempSync(join(tmpdir(), 'deck-'))
  const deck = join(folder, 'deck.edp')
  writeFileSync(deck, freefemDeck(given, DECK_SIZES))
  const start = performance.now()
  const ran = spawnSync('FreeFem++', ['-nw', '-v', '0', deck], {
    encoding: 'utf8',
    timeout: DECK_LIMIT_S * 1000,
    env: { ...process.env, OMP_NUM_THREADS: '1', OPENBLAS_NUM_THREADS: '1' },
  })
  const seconds = (performance.now() - start) / 1000
  rmSync(folder, { recursive: true })
  const rows = [...(ran.stdout ?? '').matchAll(/^row (.*)$/gm)].map((match) => match[1]!.trim().split(/\s+/).map(Number).slice(1))
  const reference = storedAnswers('drift-in-oil')
  const ours = inFreshProcess('drift-in-oil', 'normal')
  const { worst, mean } = errorsOf(ours, reference)
  say(
    `Case E on one core. FreeFem++ with quadratic elements of ${DECK_SIZES.surfaceMm} mm and its own TR-BDF2 in its own language:`,
  )
  if (rows.length < given.times_s.length)
    say(`not done after ${seconds.toFixed(0)} s, ${rows.length} of ${given.times_s.length} times reached.`)
  else {
    const off = rows.flatMap((row, i) => row.map((t, p) => Math.abs(t - reference.rows[i]!.temperature_C[p]!)))
    say(`${seconds.toFixed(1)} s, worst ${Math.max(...off).toFixed(2)} K from the stored answers of its finer run.`)
  }
  say(
    `This program, normal mesh: ${ours.seconds.toFixed(2)} s (mesh ${ours.meshSeconds.toFixed(2)} s), worst ${worst.toFixed(2)} K, mean ${mean.toFixed(2)} K; ` +
      `${(seconds / ours.seconds).toFixed(0)} times as fast in this run.`,
  )
}

function caseText(file: string): string {
  return readFileSync(new URL(`bench/cases/${file}.json`, ROOT), 'utf8')
}

function inFreshProcess(file: string, grade: string): Answer {
  const printed = execFileSync(
    process.execPath,
    [
      '--conditions=source',
      '--import',
      'tsx',
      'bench/main.ts',
      '--case',
      `bench/cases/${file}.json`,
      '--probes',
      '--grade',
      grade,
    ],
    { encoding: 'utf8', cwd: ROOT },
  )
  return JSON.parse(printed) as Answer
}

function storedAnswers(file: string): ReferenceTable {
  const stored = JSON.parse(readFileSync(new URL(`test/verification/data/conduction-freefem-${file}.json`, ROOT), 'utf8')) as {
    made_by: string
    rows: ReferenceTable['rows']
  }
  return { source: `${stored.made_by.split(',')[0]}, quadratic elements`, within_K: 0.5, rows: stored.rows }
}

function errorsOf(answer: Answer, reference: ReferenceTable): { worst: number; mean: number } {
  const off = reference.rows.flatMap(({ temperature_C }, row) =>
    temperature_C.map((t, p) => Math.abs(answer.probes[p]!.temperature_C[row]! - t)),
  )
  return { worst: Math.max(...off), mean: off.reduce((sum, each) => sum + each, 0) / off.length }
}
