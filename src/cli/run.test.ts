import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, test } from 'vitest'
import { figureSchema, forecastSchema, steelAnswerSchema } from '#contract/answers.ts'
import { run as answerTo } from './run.ts'
import { terminalOf } from './terminal.ts'

const MAIN = fileURLToPath(new URL('./main.ts', import.meta.url))
const EXAMPLE = fileURLToPath(new URL('../../examples/stepped-bottom-tool.yaml', import.meta.url))
const folder = mkdtempSync(join(tmpdir(), 'quenchwright-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const SMALL = `piece: gauge pin
struck: no
steel: { grade: O1 }
profile: [ { shape: round, across: 10 mm, length: 30 mm } ]
zones: [ { name: nose, from: 0 mm, to: 10 mm, aim: 58..62 HRC } ]
process:
  - { do: heat, in: muffle, to: 800 °C, hold: 15 min }
  - { do: carry, for: 2 s }
  - { do: quench, in: oil, for: 2 min }
  - { do: temper, in: oven, at: 200 °C, hold: 1 h }
shop:
  fires: [ { name: muffle, kind: muffle } ]
  baths: [ { name: oil, kind: medium oil, volume: 10 L, temperature: 50 °C } ]
  ovens: [ { name: oven, max: 300 °C } ]
`

interface Ran {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

/** What the program does, without the second that a process takes to start. */
async function run(...words: string[]): Promise<Ran> {
  let out = ''
  let err = ''
  const code = await answerTo(words, {
    terminal: terminalOf({ columns: 80 }, { LANG: 'C.UTF-8' }),
    write: (text) => {
      out += text
    },
    writeError: (text) => {
      err += text
    },
    errors: process.stderr,
    today: '2025-03-14',
    debug: false,
    stopped: () => Promise.resolve(),
  })
  return { code, out, err }
}

/** The program as a person starts it, from source. */
function runProcess(...words: string[]): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const env = { ...process.env, LANG: 'C.UTF-8', NO_COLOR: '1' }
    const child = spawn(process.execPath, ['--conditions=source', '--import', 'tsx', MAIN, ...words], { env })
    let out = ''
    let err = ''
    child.stdout.on('data', (chunk) => {
      out += chunk
    })
    child.stderr.on('data', (chunk) => {
      err += chunk
    })
    child.on('error', reject)
    child.on('close', (code) => resolve({ code, out, err }))
  })
}

function file(name: string, content: string | Buffer): string {
  const path = join(folder, name)
  writeFileSync(path, content)
  return path
}

function atFault({ code, out, err }: Ran): string {
  expect(code).toBe(2)
  expect(out).toBe('')
  expect(err.trim()).not.toBe('')
  expect(err).not.toMatch(/^\s+at /mu)
  return err
}

describe('answers', () => {
  test('a forecast as JSON is one document that keeps to its schema, with its page beside it', async () => {
    const report = join(folder, 'page.html')
    const { code, out, err } = await runProcess('forecast', EXAMPLE, '--json', '--draft', '--members', '8', '--report', report)
    expect(err).toBe('')
    expect(code).toBe(0)
    const forecast = forecastSchema.parse(JSON.parse(out))
    expect(forecast.zones.map(({ name }) => name)).toContain('dished face')
    expect(readFileSync(report, 'utf8')).toContain('<h1>rivet bottom tool</h1>')
  })

  test('a forecast for people: piece, zones, steps; no colour in a pipe', async () => {
    const { code, out } = await run('forecast', file('small.yaml', SMALL), '--draft', '--members', '4', '--units', 'inch')
    expect(code).toBe(0)
    for (const text of ['gauge pin', 'nose', 'What to do', 'What was found', '°F']) expect(out).toContain(text)
    expect(out).not.toContain('\u001b')
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  })

  test('steel, convert and schema as JSON', async () => {
    const [steel, figure, schema] = await Promise.all([
      run('steel', '4140', '--temper', '400 C', '--hold', '1 h', '--json'),
      run('convert', '52 HRC', 'HV', '--json'),
      run('schema', 'job', '--json'),
    ])
    expect(steelAnswerSchema.parse(JSON.parse(steel.out)).name).toContain('4140')
    expect(figureSchema.parse(JSON.parse(figure.out)).value).toBeGreaterThan(500)
    expect(JSON.parse(schema.out)).toHaveProperty('properties.piece')
    for (const { code, err } of [steel, figure, schema]) expect({ code, err }).toEqual({ code: 0, err: '' })
  })

  test('a plan taken into a job file: comments and the shop by file name still hold', async () => {
    file('shop.yaml', readFileSync(fileURLToPath(new URL('../../examples/shop.yaml', import.meta.url)), 'utf8'))
    const job = file(
      'plan.yaml',
      '# for the railings\npiece: bolster\nstruck: no\nsteel: { grade: O1 }\nprofile: [ { shape: round, across: 10 mm, length: 30 mm } ]\nzones: [ { name: nose, from: 0 mm, to: 10 mm, aim: 54..62 HRC } ]\nshop: shop.yaml\n',
    )
    const out = join(folder, 'jobs', 'taken.yaml')
    const planned = await run('plan', job, '--members', '8', '--take', '1', '--out', out)
    expect(planned.err).toBe('')
    expect(planned.code).toBe(0)
    expect(readFileSync(out, 'utf8')).toContain('# for the railings')
    expect(readFileSync(out, 'utf8')).toContain('../shop.yaml')
    const forecast = await run('forecast', out, '--draft', '--members', '2', '--json')
    expect(forecast.err).toBe('')
    expect(forecastSchema.parse(JSON.parse(forecast.out)).steps.length).toBeGreaterThan(1)
    expect(atFault(await run('plan', job, '--members', '8', '--take', '1', '--out', out))).toContain(
      'there is such a file already',
    )
  })
})

describe('input at fault: exit 2, said on standard error, nothing on standard output', () => {
  test('files that are missing, folders, too large, or no text', async () => {
    const big = file('big.yaml', Buffer.alloc(3_000_000, 'a'))
    const binary = file('photo.yaml', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 0xff, 0xfe]))
    const [missing, directory, large, noText] = (
      await Promise.all([join(folder, 'no.yaml'), folder, big, binary].map((path) => run('forecast', path, '--json')))
    ).map(atFault)
    expect(missing).toContain('no.yaml: there is no such file')
    expect(directory).toContain('a folder, not a file')
    expect(large).toContain('big.yaml: 3 MB')
    expect(noText).toContain('not a text file')
  })

  test('each fault of a job is a line with file, field, what was read and what would do', async () => {
    const job = file(
      'wrong.yaml',
      'piece: punch\nsteel: { grade: O1 }\nprofile: [ { shape: round, across: 12, length: 80 mm } ]\nzoness: []\nprocess: [ { do: carry, for: 3 s } ]\n',
    )
    const lines = atFault(await runProcess('forecast', job))
      .trim()
      .split('\n')
    expect(lines.length).toBeGreaterThanOrEqual(2)
    for (const line of lines) expect(line.startsWith(`${job}: `)).toBe(true)
    expect(lines.join('\n')).toMatch(/profile\[0\]\.across.*12/u)
    expect(lines.join('\n')).toMatch(/zoness.*zones/u)
  })

  test('slips on the command line', async () => {
    const slips = [
      ['forcast', EXAMPLE],
      ['forecast'],
      ['forecast', EXAMPLE, '--members', 'many'],
      ['steel'],
      ['steel', '4140', '--hold', '1 h'],
      ['convert', '52', 'HV'],
      ['schema', 'jobb'],
      ['identify', 'x.yaml'],
      ['forecast', EXAMPLE, '--draft', '--members', '2', '--report', join(folder, 'job.yaml')],
    ]
    const said = (await Promise.all(slips.map((args) => run(...args)))).map(atFault)
    expect(said[0]).toContain('Did you mean forecast?')
    expect(said[2]).toContain('A whole number from 2')
    expect(said[7]).toContain('identify (name a bar from evidence) is not built yet')
    expect(said[8]).toContain('ends in .html')
  })
})
