import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import type { Forecast } from '#contract/answers.ts'
import { forecast } from '#contract/forecast-answer.ts'
import { planLink } from '#contract/plan-link.ts'
import { readJobText } from '#contract/read-job.ts'
import { type CardOptions, CardTooSmall, cardFragment, cardPage, smallestCard } from './card.ts'
import { cardCode } from './card-qr.ts'
import { CARD_FORMATS, CARD_SIZES, type CardSize } from './card-sizes.ts'
import { CARD_STYLE } from './card-style.ts'
import { linesOf, widthOf } from './card-type.ts'
import { readCode } from './code-reader.test-data.ts'
import { steppedTool } from './fixture.test-data.ts'
import { trueHalfWidths } from './silhouette.ts'
import { escapeText } from './svg.ts'

const example = (name: string): object =>
  readJobText(readFileSync(fileURLToPath(new URL(`../../examples/${name}`, import.meta.url)), 'utf8'), name) as object
const CHISEL_JOB = { ...example('cold-chisel.yaml'), shop: example('shop.yaml') }
const CHISEL = forecast(CHISEL_JOB, { grade: 'draft', members: 2 })
const LINK = await planLink('http://localhost:4615/', CHISEL_JOB)
const HOSTILE = `<script>alert("1")</script> & '"${'\u0000\u202E'}`

const options = (size: CardSize, more: Partial<CardOptions> = {}): CardOptions => ({
  size,
  units: 'metric',
  link: LINK,
  generatedBy: 'a test',
  ownFace: true,
  ...more,
})
/** As read: without markup, degrees with a plain blank. */
const plain = (markup: string) =>
  markup
    .replaceAll('\u00a0', ' ')
    .replace(/<[^>]*>/gu, ' ')
    .replace(/\s+/gu, ' ')
const said = (text: string) => escapeText(text).replace(/\s+/gu, ' ')
const stepsOf = (html: string) =>
  html
    .split(/<li[ >]/u)
    .slice(1)
    .map((part) => part.split('</li>')[0] ?? '')

describe.each(CARD_SIZES)('%s says everything', (size) => {
  const html = cardFragment(CHISEL, options(size))
  const steps = stepsOf(html)

  test('every step: a box, its clock, what to do, and blanks', () => {
    expect(steps).toHaveLength(CHISEL.steps.length)
    const blanks = [
      'Fire read',
      'Colour',
      'Seconds',
      size === 'A4' || size === 'Letter' ? 'After' : 'After (21 °C)',
      'Thermometer',
    ]
    for (const [i, step] of CHISEL.steps.entries()) {
      const words = plain(steps[i] ?? '')
      expect(steps[i]).toContain('class="qw-tick"')
      expect(steps[i]).toContain('class="qw-clock"')
      expect(words.includes(said(step.says)) || words.toLowerCase().includes(said(step.inShort?.does ?? '?').toLowerCase())).toBe(
        true,
      )
      expect(words).toContain(blanks[i])
    }
    expect(steps[0]?.split('class="qw-time"')).toHaveLength(4)
  })

  test('every caution at its step: in full, in short, or by the step where the same stands', () => {
    for (const [i, { cautions, inShort }] of CHISEL.steps.entries()) {
      const own = plain(steps[i] ?? '')
      expect(own).toContain('Take care.')
      const pointed = /As at (\d+)\./u.exec(own)?.[1]
      const words = pointed === undefined ? own : `${own} ${plain(steps[Number(pointed) - 1] ?? '')}`
      if (pointed !== undefined) expect(Number(pointed)).toBeLessThanOrEqual(i)
      for (const [k, caution] of cautions.entries())
        expect(words.includes(said(caution)) || words.includes(said(inShort?.cautions[k] ?? '?'))).toBe(true)
    }
  })

  test('what stops the work stands before the first step; no caution of a finding is lost', () => {
    const before = plain(html.slice(html.indexOf('class="qw-before'), html.indexOf('<ol')))
    const stops = CHISEL.findings.filter(({ severity }) => severity === 'stop')
    expect(stops.length).toBeGreaterThan(0)
    for (const { says } of stops) expect(before).toContain(`Stop. ${said(says)}`)
    const careful = CHISEL.findings.filter(({ caution }) => caution !== undefined)
    expect(careful.length).toBeGreaterThan(1)
    for (const { caution = '', where } of careful) {
      const words = where?.step === undefined ? before : plain(steps[where.step] ?? '')
      expect(words.includes(said(caution)) || words.includes(said(caution.replace(' (OSHA 29 CFR 1926.301)', '')))).toBe(true)
    }
  })

  test('zones with aim, forecast, band and chance, and where to write what came of it', () => {
    const proof = plain(html.slice(html.indexOf('class="qw-proof')))
    for (const { name, aim, tempered_HRC, assumed } of CHISEL.zones) {
      expect(proof).toContain(
        `${name} aim ${aim.replace('..', ' to ')}${assumed ? ' (assumed)' : ''}, forecast ${Math.round(tempered_HRC.value)}`,
      )
      expect(proof).toMatch(/in (?:10|20)\. File/u)
    }
    expect(proof.split('Tester').length - 1).toBe(CHISEL.zones.length)
    expect(plain(html)).toMatch(/Cold chisel|cold chisel/u)
    for (const words of ['W1', 'Date', 'Done by', 'Sources. As quenched', 'a test; draft', 'makers’ sheets rule'])
      expect(plain(html)).toContain(words)
  })
})

describe('cautions in full where there is room', () => {
  test('a large sheet says them all, again at each step', () => {
    const steps = stepsOf(cardFragment(CHISEL, options('A4')))
    for (const [i, { cautions }] of CHISEL.steps.entries())
      for (const caution of cautions) expect(plain(steps[i] ?? '')).toContain(said(caution))
  })

  test('an answer without words in short says them in full on the smallest card, or has none', () => {
    const tool = steppedTool()
    const steps = stepsOf(cardFragment(tool, options('A6')))
    for (const [i, { cautions, says }] of tool.steps.entries())
      for (const words of [says, ...cautions]) expect(plain(steps[i] ?? '')).toContain(said(words))
  })

  test('nothing is left out to make it fit: it is refused, with the size to take', () => {
    const tool = steppedTool()
    const many: Forecast = { ...tool, steps: Array.from({ length: 4 }, () => tool.steps).flat() }
    expect(smallestCard(tool, options('A4'))).toBe('3x5')
    for (const [units, take] of [
      ['metric', 'A4'],
      ['inch', 'Letter'],
    ] as const) {
      try {
        cardPage(many, { size: 'A6', units, generatedBy: 'a test' })
        expect.unreachable()
      } catch (error) {
        expect(error).toBeInstanceOf(CardTooSmall)
        expect(error).toMatchObject({ size: 'A6', take, message: expect.stringContaining(`${take} takes them`) })
      }
    }
    const hundred: Forecast = { ...tool, steps: Array.from({ length: 20 }, () => tool.steps).flat() }
    expect(() => cardFragment(hundred, options('A4'))).toThrow('more steps, zones or cautions than one sheet takes')
  })
})

describe('the code', () => {
  const read = (html: string) => {
    const svg = /<svg[^>]*class="qw-code"[^>]*>.*?<\/svg>/u.exec(html)?.[0] ?? ''
    const modules = Number(/viewBox="0 0 (\d+)/u.exec(svg)?.[1])
    const rows = Array.from({ length: modules }, () => Array<boolean>(modules).fill(false))
    for (const [, x = '', y = '', length = ''] of svg.matchAll(/M(\d+) (\d+)h(\d+)v1H\d+z/gu))
      rows[Number(y)]?.fill(true, Number(x), Number(x) + Number(length))
    const inner = rows.slice(4, -4).map((row) => row.slice(4, -4))
    const dark = (grid: boolean[][]) => grid.flat().filter(Boolean).length
    return {
      ...readCode(inner),
      quiet: dark(rows) === dark(inner),
      moduleMm: Number(/width:([\d.]+)mm/u.exec(svg)?.[1]) / modules,
    }
  }

  test.each(CARD_SIZES)('%s: reads back as the link, with white around it, no module under a third of a millimetre', (size) => {
    const { text, quiet, moduleMm, level } = read(
      cardPage(steppedTool(), { ...options(size), faceSrc: 'url(data:font/woff2;base64,)' }),
    )
    expect({ text, quiet }).toEqual({ text: LINK, quiet: true })
    expect(moduleMm).toBeGreaterThanOrEqual(0.33)
    if (size !== '3x5') expect(level).toBe('M')
  })

  test('links of any length that fits', () => {
    for (let length = 60; length < 250; length += 13) {
      const link = `http://localhost:4615/#plan=1.${'x7Q-'.repeat(100).slice(0, length)}`
      const code = cardCode(link, 30, CARD_FORMATS.A5)
      if (!('svg' in code)) throw new Error(`${length}: needs ${code.needsMm}`)
      expect(read(code.svg)).toMatchObject({ text: link, version: code.version, level: code.correction })
    }
  })

  test('a plan too long for its place is said to be, and why; without a link nothing is said', () => {
    const long = `${LINK}${'A1b-'.repeat(400)}`
    const html = cardFragment(steppedTool(), options('A6', { link: long }))
    expect(html).not.toContain('class="qw-code"')
    expect(plain(html)).toMatch(
      /No code on this one: the plan is too long \(it needs \d+ mm, and there are 26\)\. Open it from its file\./u,
    )
    const endless = cardFragment(steppedTool(), options('A4', { link: 'Aa'.repeat(2000) }))
    expect(plain(endless)).toContain('it is more than any code holds')
    const { link: _, ...without } = options('A5')
    expect(plain(cardFragment(steppedTool(), without))).not.toMatch(/No code|Opens/u)
  })
})

describe('it stands by itself, wherever it stands', () => {
  test('no script, nothing fetched, what people typed cannot become markup', () => {
    const tool = steppedTool()
    const [zone, step, bath, finding] = [tool.zones[0]!, tool.steps[3]!, tool.baths[0]!, tool.findings[1]!]
    const html = cardPage(
      {
        ...tool,
        piece: HOSTILE,
        steel: HOSTILE,
        zones: [{ ...zone, name: HOSTILE, aim: HOSTILE }],
        steps: [step, step, step, { ...step, do: 'quench', in: HOSTILE, says: HOSTILE, cautions: [HOSTILE] }],
        baths: [{ ...bath, name: HOSTILE }],
        findings: [{ ...finding, says: HOSTILE, remedy: HOSTILE, caution: HOSTILE }],
        sources: [HOSTILE],
      },
      { size: 'A4', units: 'metric', link: `javascript:"${HOSTILE}`, generatedBy: HOSTILE },
    )
    expect(html).not.toMatch(/<script|<link|<iframe|<img|@import|url\(|\son\w+=/iu)
    for (const letter of ['\u0000', '\u202E']) expect(html).not.toContain(letter)
    expect(html.split('&lt;script&gt;').length).toBeGreaterThan(8)
    expect([...html.matchAll(/<[a-z][^<>]*>/giu)].every(([tag]) => (tag.split('"').length - 1) % 2 === 0)).toBe(true)
  })

  test('every rule of its style is about what is inside a card', () => {
    const selectors = [...CARD_STYLE.matchAll(/([^{}]+)\{[^{}]*\}/gu)].flatMap(([, list = '']) => list.split(/,(?![^(]*\))/u))
    expect(selectors.length).toBeGreaterThan(30)
    for (const selector of selectors) expect(selector.trim()).toMatch(/^\.qw-card(?:$|[ :.])/u)
  })

  test('air, no zones, no findings, no sections', () => {
    const tool = steppedTool()
    const { sections: _, ...rest } = tool
    const bare: Forecast = {
      ...rest,
      zones: [],
      findings: [],
      baths: [{ ...tool.baths[0]!, name: 'still air', kind: 'still air', line_mm: null }],
    }
    for (const size of CARD_SIZES) {
      const html = cardFragment(bare, options(size))
      expect(html).not.toMatch(/NaN|Infinity|undefined|class="qw-liquid"/u)
      expect(plain(html)).toContain('No zone was asked for.')
      expect(plain(html)).toContain('4: cools in still air')
      expect(plain(html)).toContain('Hand-warm at')
    }
  })
})

describe('what is measured', () => {
  test('lines are counted as a browser breaks them', () => {
    const word = 'holding'
    const wide = widthOf(word, 10, 'own')
    const gap = widthOf(' ', 10, 'own')
    expect(linesOf([{ text: `${word} ${word}` }], 10, 2 * wide + gap + 0.01, 'own')).toBe(1)
    expect(linesOf([{ text: `${word} ${word}` }], 10, 2 * wide + gap - 0.01, 'own')).toBe(2)
    expect(linesOf([{ text: word }, { lengthMm: 5 }, { text: word }], 10, wide + 5.01, 'own')).toBe(3)
    expect(linesOf([{ text: word.repeat(9) }], 10, wide * 2, 'own')).toBe(5)
    expect(linesOf([], 10, 50, 'own')).toBe(1)
    expect(widthOf(word, 10, 'any')).toBeGreaterThan(wide)
    expect(widthOf('漢', 72, 'own')).toBeCloseTo(25.4, 0)
  })

  test('a flat is drawn on its broad side, an octagon across its flats, a round by its outline', () => {
    const widest = (fromMm: number, toMm: number) =>
      trueHalfWidths(CHISEL)
        .filter(([x]) => x >= fromMm && x <= toMm)
        .reduce((most, [, half]) => Math.max(most, half), 0)
    expect(widest(0, 0)).toBe(11)
    expect(widest(45, 170)).toBeCloseTo(10, 5)
    expect(widest(46, 170)).toBeCloseTo(9.525, 5)
    const tool = steppedTool()
    const round = {
      ...tool,
      sections: [
        { from_mm: 0, to_mm: 40, shape: 'round' as const, across_mm: [38, 38] as [number, number] },
        { from_mm: 40, to_mm: 100, shape: 'square' as const, across_mm: [19, 19] as [number, number] },
      ],
    }
    expect(trueHalfWidths(round).slice(-3)).toEqual([
      [40, 9.5],
      [100, 9.5],
      [100, 0],
    ])
    expect(trueHalfWidths(round)).toContainEqual([40, 19])
  })
})
