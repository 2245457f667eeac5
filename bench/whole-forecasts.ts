import { readdirSync, readFileSync } from 'node:fs'
import { type ForecastRequest, forecast, readJobText } from '#contract/index.ts'

const EXAMPLES = new URL('../examples/', import.meta.url)
const GRADES = ['sketch', 'draft', 'normal'] as const
/** Rounds over all examples that warm the compiler up, and rounds that count. */
const WARMING: Record<Grade, number> = { sketch: 30, draft: 4, normal: 1 }
const COUNTED: Record<Grade, number> = { sketch: 20, draft: 6, normal: 2 }
type Grade = (typeof GRADES)[number]

function read(name: string): unknown {
  return readJobText(readFileSync(new URL(name, EXAMPLES), 'utf8'), name)
}

/** Whole forecasts of the examples, from what a job file holds to the answer, grade beside grade in this one process. */
export function sayForecasts(say: (line: string) => void): void {
  const names = readdirSync(EXAMPLES).filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')
  const shop = read('shop.yaml')
  const jobs = names.map(read)
  const ask = (job: unknown, request: ForecastRequest): number => {
    const start = performance.now()
    forecast(job, { ...request, readFile: () => shop })
    return performance.now() - start
  }
  const first = ask(jobs[0], { grade: 'sketch' })
  const rows = jobs.map(() => new Map<Grade, readonly number[]>())
  for (const grade of GRADES) {
    for (let round = 0; round < WARMING[grade]; round++) for (const job of jobs) ask(job, { grade })
    const times = jobs.map((): number[] => [])
    for (let round = 0; round < COUNTED[grade]; round++)
      for (const [i, job] of jobs.entries()) times[i]!.push(ask(job, { grade }))
    for (const [i, row] of rows.entries())
      row.set(
        grade,
        times[i]!.sort((a, b) => a - b),
      )
  }
  say('## Whole forecasts')
  say('')
  say(
    'From what a job file holds to the answer with its findings, in one process with a warm compiler; milliseconds, least / middle.',
  )
  say(
    'A sketch tries no bars and days, a draft 60, a normal forecast 400; how many sketches go into one of them, by the middles.',
  )
  say('')
  say('| example | sketch | draft | normal | draft : sketch | normal : sketch |')
  say('| --- | --- | --- | --- | --- | --- |')
  for (const [i, name] of names.entries()) {
    const of = (grade: Grade): readonly number[] => rows[i]!.get(grade) ?? []
    const shown = (grade: Grade): string => `${least(of(grade)).toFixed(0)} / ${middle(of(grade)).toFixed(0)}`
    const ratio = (grade: Grade): string => (middle(of(grade)) / middle(of('sketch'))).toFixed(0)
    say(`| ${name.replace('.yaml', '')} | ${GRADES.map(shown).join(' | ')} | ${ratio('draft')} | ${ratio('normal')} |`)
  }
  say('')
  say(`The very first sketch of this process, with a cold compiler: ${first.toFixed(0)} ms.`)
  say('')
}

function least(sorted: readonly number[]): number {
  return sorted[0] ?? Number.NaN
}

function middle(sorted: readonly number[]): number {
  return sorted[sorted.length >> 1] ?? Number.NaN
}
