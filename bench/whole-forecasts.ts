import { readdirSync, readFileSync } from 'node:fs'
import { loadavg } from 'node:os'
import { type ForecastRequest, forecast, readJobText } from '#contract/index.ts'

const EXAMPLES = new URL('../examples/', import.meta.url)
const GRADES = ['sketch', 'draft', 'normal'] as const
type Grade = (typeof GRADES)[number]
/** Forecasts of each example that warm the compiler up, and those of a round that count. */
const WARMING: Record<Grade, number> = { sketch: 24, draft: 2, normal: 0 }
const COUNTED: Record<Grade, number> = { sketch: 8, draft: 3, normal: 1 }
const ROUNDS = 2

function read(name: string): unknown {
  return readJobText(readFileSync(new URL(name, EXAMPLES), 'utf8'), name)
}

/** Whole forecasts of the examples, from what a job file holds to the answer, grade beside grade in this one process. */
export function sayForecasts(say: (line: string) => void): void {
  const load = loadavg()[0]!
  const names = readdirSync(EXAMPLES).filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')
  const shop = read('shop.yaml')
  const jobs = names.map(read)
  const ask = (job: unknown, request: ForecastRequest): number => {
    const start = performance.now()
    forecast(job, { ...request, readFile: () => shop })
    return performance.now() - start
  }
  const first = ask(jobs[0], { grade: 'sketch' })
  for (const grade of GRADES) for (let k = 0; k < WARMING[grade]; k++) for (const job of jobs) ask(job, { grade })
  const rows = jobs.map((): Record<Grade, number[]> => ({ sketch: [], draft: [], normal: [] }))
  // Grades take turns, so that a busy spell of the machine meets all of them.
  for (let round = 0; round < ROUNDS; round++)
    for (const [i, job] of jobs.entries())
      for (const grade of GRADES) for (let k = 0; k < COUNTED[grade]; k++) rows[i]![grade].push(ask(job, { grade }))

  say('## Whole forecasts')
  say('')
  say(
    'From what a job file holds to the answer with its findings, in one process with a warm compiler: milliseconds, least / middle.',
  )
  say('A sketch tries no bars and days, a draft 60, a normal forecast 400. Ratios are those of the least.')
  say(`Load at the start ${load.toFixed(1)}.`)
  say('')
  say('| example | sketch | draft | normal | draft : sketch | normal : sketch |')
  say('| --- | --- | --- | --- | --- | --- |')
  for (const [i, name] of names.entries()) {
    const shown = (grade: Grade): string => `${least(rows[i]![grade]).toFixed(0)} / ${middle(rows[i]![grade]).toFixed(0)}`
    const ratio = (grade: Grade): string => (least(rows[i]![grade]) / least(rows[i]!.sketch)).toFixed(0)
    say(`| ${name.replace('.yaml', '')} | ${GRADES.map(shown).join(' | ')} | ${ratio('draft')} | ${ratio('normal')} |`)
  }
  say('')
  say(`The first sketch of this process, with a cold compiler: ${first.toFixed(0)} ms.`)
  say('')
}

function least(times: readonly number[]): number {
  return Math.min(...times)
}

function middle(times: readonly number[]): number {
  return [...times].sort((a, b) => a - b)[times.length >> 1] ?? Number.NaN
}
