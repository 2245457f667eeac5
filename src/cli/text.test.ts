import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { routesSchema } from '#contract/answers.ts'
import { InputProblems } from '#contract/problems.ts'
import { steppedTool } from '#report/fixture.test-data.ts'
import { faultReport, InputFault } from './faults.ts'
import { forecastText } from './forecast-text.ts'
import { pieceInLetters } from './piece-in-letters.ts'
import { routesText } from './routes-text.ts'
import { clean, set, shownOn, table, terminalOf } from './terminal.ts'

const at = (columns: number, env: Record<string, string> = { LANG: 'C.UTF-8' }) => terminalOf({ columns }, env)
const text = (columns = 80, forecast = steppedTool()) => forecastText(forecast, at(columns), { units: 'metric', sources: false })
const flat = (written: string) => written.replace(/\s+/gu, ' ')

describe('a forecast in letters', () => {
  test('every finding, zone, step and caution is there', () => {
    const forecast = steppedTool()
    const said = flat(text())
    for (const { says, because, remedy, caution } of forecast.findings)
      for (const each of [says, because, remedy, caution ?? '']) expect(said).toContain(flat(each).trim())
    for (const { name } of forecast.zones) expect(said).toContain(name)
    for (const { says, cautions } of forecast.steps) for (const each of [says, ...cautions]) expect(said).toContain(flat(each))
    for (const { says } of forecast.assumptions) expect(said).toContain(says)
  })

  test.each([44, 60, 80, 100])('no line is longer than %i columns', (columns) => {
    for (const line of text(columns).split('\n')) expect(line.length).toBeLessThanOrEqual(Math.max(columns, 52))
  })

  test('no colour codes unless at a terminal, none with NO_COLOR', () => {
    const colours = (stream: { isTTY: boolean }, env: Record<string, string>) =>
      forecastText(steppedTool(), terminalOf(stream, env), { units: 'metric', sources: false })
    expect(colours({ isTTY: false }, {})).not.toContain('\u001b')
    expect(colours({ isTTY: true }, { NO_COLOR: '1' })).not.toContain('\u001b')
    expect(colours({ isTTY: true }, {})).toContain('\u001b')
  })

  test('where only plain letters show, only plain letters are written', () => {
    const terminal = at(80, { LANG: 'C' })
    expect(shownOn(terminal, forecastText(steppedTool(), terminal, { units: 'metric', sources: true }))).not.toMatch(/\P{ASCII}/u)
  })

  test('names cannot steer the terminal', () => {
    const said = text(80, { ...steppedTool(), piece: 'a\u001b[2Jb\r\nc\u202Ed' })
    for (const letter of ['\u001b', '\r', '\u202e']) expect(said).not.toContain(letter)
    expect(clean('a\u001b[31m\n b')).toBe('a [31m b')
  })
})

test('a plan says every route, its chance and gear, or that there is none and the nearest', () => {
  const forecast = steppedTool()
  const routes = routesSchema.parse({
    routes: [{ says: 'oil, then 232 °C twice', process: [], forecast, chance: 0.62, holdsGear: true }],
    refused: [{ says: 'Water.', because: 'it cracks at the shoulder.' }],
  })
  const said = flat(routesText(routes, at(80), { units: 'metric', sources: false }))
  for (const text of [
    'Route 1: oil, then 232 °C twice',
    'About 6 in 10 that every zone',
    'Your gear can hold it.',
    '- Water. It cracks at the shoulder.',
  ])
    expect(said).toContain(text)
  const none = routesText({ routes: [], refused: [], none: { because: 'No oven is hot enough.', nearest: '52 HRC.' } }, at(80), {
    units: 'metric',
    sources: false,
  })
  expect(none).toBe('No route in this shop meets every aim.\nNo oven is hot enough.\nThe nearest: 52 HRC.')
})

describe('the piece in letters', () => {
  test('working end down: the wide head is below the narrow shank, the level of the bath between', () => {
    const lines = pieceInLetters(steppedTool(), 'metric', 80)
    const widthOf = (line: string | undefined) => [...(line ?? '')].filter((letter) => letter === '─').length
    const foot = lines.findIndex((line) => line.includes('└────────┴'))
    const level = lines.findIndex((line) => line.includes('▽ 50 mm'))
    expect(foot).toBe(lines.length - 1)
    expect(widthOf(lines[0])).toBeLessThan(widthOf(lines.at(-1)))
    expect(level / lines.length).toBeGreaterThan(0.4)
    expect(level / lines.length).toBeLessThan(0.6)
  })

  test('any lathe-turned shape is drawn without a hole in its wall', () => {
    const anyProfile = fc.array(fc.record({ mm: fc.integer({ min: 4, max: 80 }), r: fc.integer({ min: 2, max: 30 }) }), {
      minLength: 1,
      maxLength: 5,
    })
    fc.assert(
      fc.property(anyProfile, (sections) => {
        let x = 0
        const outline_mm: [number, number][] = [[0, 0]]
        for (const { mm, r } of sections) {
          outline_mm.push([x, r], [x + mm, r])
          x += mm
        }
        outline_mm.push([x, 0])
        const lines = pieceInLetters(
          { ...steppedTool(), outline_mm, length_mm: x, baths: [], zones: [], findings: [] },
          'metric',
          80,
        )
        for (const line of lines.slice(1, -1)) expect(line).toMatch(/[│╱╲└┌]\S*.*┊.*[│╱╲┐┘]/u)
        for (const line of lines) expect(line.length).toBeLessThanOrEqual(80)
      }),
      { numRuns: 60 },
    )
  })
})

describe('setting words', () => {
  test('every word is kept, and lines hang below the first word', () => {
    expect(set('one two three four', 12, '- ')).toBe('- one two\n  three four')
    fc.assert(
      fc.property(fc.string(), fc.integer({ min: 5, max: 60 }), (words, columns) => {
        expect(flat(set(words, columns)).trim()).toBe(clean(words))
      }),
    )
  })

  test('a table keeps its columns and folds the last', () => {
    const written = table(['zone', 'says'], [['face', 'a rather long remark that has to be folded somewhere']], at(44))
    expect(written.split('\n')).toEqual(['zone  says', 'face  a rather long remark that has to be', '      folded somewhere'])
  })
})

describe('faults', () => {
  test('each problem of the input is one line with file, field and mend, exit 2', () => {
    const { lines, code } = faultReport(
      new InputProblems([
        { field: 'steel.grade', says: '"41400": did you mean 4140?' },
        { field: '', says: 'b' },
      ]),
      'job.yaml',
      false,
    )
    expect(lines).toEqual(['job.yaml: steel.grade: "41400": did you mean 4140?', 'job.yaml: b'])
    expect(code).toBe(2)
  })

  test('a fault of the program is one line and exit 1; where it was only when asked', () => {
    const error = new TypeError('x is not a function')
    expect(faultReport(error, undefined, false)).toMatchObject({
      code: 1,
      lines: [expect.stringContaining('x is not a function')],
    })
    expect(faultReport(error, undefined, true).lines.join('\n')).toContain('text.test.ts')
    expect(faultReport(new InputFault('--out: no'), 'job.yaml', false)).toEqual({ lines: ['--out: no'], code: 2 })
  })
})
