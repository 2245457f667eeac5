import { describe, expect, test } from 'vitest'
import { type Forecast, routesSchema } from '#contract/answers.ts'
import { chanceText, heightOf, inOrder } from './figure-text.ts'
import { steppedTool } from './fixture.test-data.ts'
import { reportPage } from './report-page.ts'
import { REPORT_STYLE } from './report-style.ts'
import { escapeText } from './svg.ts'

const page = (forecast: Forecast, units: 'metric' | 'inch' = 'metric') => reportPage(forecast, { units, generatedBy: 'a test' })
const HOSTILE = `<script>alert("1")</script> & '"\u0000\u202E`

describe('the page says everything in the answer', () => {
  const forecast = steppedTool()
  const html = page(forecast)

  test.each(forecast.findings.map((finding) => [finding.id, finding] as const))(
    'finding %s: what, why, what to do, and its caution',
    (_, finding) => {
      for (const text of [finding.says, finding.because, finding.remedy, finding.caution])
        if (text !== undefined) expect(html).toContain(escapeText(text))
    },
  )

  test('every zone with its aim, its figures with their band, and its chance', () => {
    for (const zone of forecast.zones) {
      expect(html).toContain(escapeText(zone.name))
      expect(html).toContain(zone.aim.replace('..', ' to '))
      expect(html).toContain(`<b>${Math.round(zone.tempered_HRC.value)} HRC</b>`)
      expect(html).toContain(`${Math.round(zone.tempered_HRC.low)} to ${Math.round(zone.tempered_HRC.high)}`)
      expect(html).toContain(chanceText(zone.chance))
    }
  })

  test('every step with its cautions, a box to tick and something to fill in', () => {
    const boxes = html.split('class="box"').length - 1
    expect(boxes).toBe(forecast.steps.length)
    for (const { says, cautions } of forecast.steps)
      for (const text of [says, ...cautions]) expect(html).toContain(escapeText(text))
    expect(html.split('class="blank').length).toBeGreaterThan(forecast.steps.length)
  })

  test('probes, assumptions with their reason, sources, who made it', () => {
    for (const { name } of forecast.probes) expect(html).toContain(name)
    for (const { says, because } of forecast.assumptions)
      expect(html).toContain(`${says} <span class="soft">Because ${because}</span>`)
    for (const source of forecast.sources) expect(html).toContain(source)
    expect(html).toContain('a test; normal, 64 members, seed 1')
  })

  test('each finding with a place has its number on the drawing, in the order of the list', () => {
    const drawing = html.slice(html.indexOf('id="piece-wide-title"'), html.indexOf('id="along-wide-title"'))
    for (const [i, finding] of inOrder(forecast.findings).entries()) {
      const mark = new RegExp(`class="(?:strong|on-ink)">${i + 1}</text>`, 'u')
      expect(mark.test(drawing)).toBe(heightOf(finding, forecast) !== undefined)
    }
  })

  test('the gravest finding comes first', () => {
    expect(inOrder(forecast.findings).map(({ severity }) => severity)).toEqual(['stop', 'warn', 'note'])
  })
})

describe('the page stands by itself', () => {
  test('no script, nothing fetched, no style from elsewhere', () => {
    const html = page(steppedTool())
    expect(html).not.toMatch(/<script|<link|<iframe|<img|@import|javascript:|\son\w+=/iu)
    expect(html.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:|\/\//u)
    expect(html.match(/url\([^)]*\)/gu)).toEqual(['url(#glow)'])
  })

  test('what people typed cannot become markup', () => {
    const calm = steppedTool()
    const [zone] = calm.zones
    const [probe] = calm.probes
    const [finding] = calm.findings
    const [step] = calm.steps
    const html = page({
      ...calm,
      piece: HOSTILE,
      steel: HOSTILE,
      zones: [{ ...zone!, name: HOSTILE, aim: HOSTILE }],
      probes: [{ ...probe!, name: HOSTILE }],
      findings: [{ ...finding!, says: HOSTILE, because: HOSTILE, remedy: HOSTILE, caution: HOSTILE, where: { zone: HOSTILE } }],
      steps: [{ ...step!, do: HOSTILE, in: HOSTILE, says: HOSTILE, cautions: [HOSTILE] }],
      assumptions: [{ says: HOSTILE, because: HOSTILE }],
      sources: [HOSTILE],
      baths: [{ ...calm.baths[0]!, name: HOSTILE, kind: HOSTILE }],
    })
    expect(html).not.toContain('<script')
    for (const letter of ['\u0000', '\u202E']) expect(html).not.toContain(letter)
    expect(html.split('&lt;script&gt;').length).toBeGreaterThan(15)
    expect(attributesBroken(html)).toBe(false)
  })

  test('headings go down one step at a time, and every picture has a name and words of its own', () => {
    const html = page(steppedTool())
    const levels = [...html.matchAll(/<h([1-6])/gu)].map(([, level]) => Number(level))
    expect(levels[0]).toBe(1)
    expect(levels.filter((level) => level === 1)).toHaveLength(1)
    for (const [i, level] of levels.entries()) expect(level - (levels[i - 1] ?? 1)).toBeLessThanOrEqual(1)
    const ids = [...html.matchAll(/ id="([^"]+)"/gu)].map(([, id]) => id)
    expect(new Set(ids).size).toBe(ids.length)
    for (const [, named = ''] of html.matchAll(/aria-labelledby="([^"]+)"/gu))
      for (const id of named.split(' ')) expect(ids).toContain(id)
  })

  test('ink on paper, on screen and on white, reads at 4.5 to 1 or better', () => {
    for (const [, block = ''] of REPORT_STYLE.matchAll(/:root \{([^}]*)\}/gu)) {
      const colour = (name: string) => new RegExp(`--${name}: (#[0-9a-f]{3,6})`, 'u').exec(block)?.[1] ?? '#000'
      for (const ink of ['ink', 'soft'])
        for (const ground of ['paper', 'liquid']) expect(contrast(colour(ink), colour(ground))).toBeGreaterThan(4.5)
    }
  })
})

describe('answers with little in them', () => {
  const bare: Forecast = {
    ...steppedTool(),
    zones: [],
    probes: [],
    findings: [],
    assumptions: [],
    baths: [],
    curves: { x_mm: 0, time_s: [], skin_C: [], centre_C: [] },
  }

  test('no zones, findings, baths or curves: the page says what to do next', () => {
    const html = page(bare)
    expect(html).toContain('Nothing stands against it.')
    expect(html).toContain('No zones were asked for.')
    expect(html).not.toMatch(/NaN|Infinity|undefined/u)
  })

  test('without the field the cut half has no lines and the note does not speak of them', () => {
    const { field: _, ...without } = steppedTool()
    const html = page(without)
    expect(html).not.toContain('Lines in the cut half')
    expect(html).not.toContain('class="contour-number"')
  })

  test('a whole dip, a dip in air, inches', () => {
    const [bath] = steppedTool().baths
    const whole = page({ ...steppedTool(), baths: [{ ...bath!, line_mm: null }] })
    expect(whole).toContain('All of it goes into oil drum.')
    const air = page({ ...steppedTool(), baths: [{ ...bath!, name: 'still air', kind: 'still air', line_mm: null }] })
    expect(air).toContain('cools in still air')
    expect(air).not.toContain('class="liquid"')
    const inches = page(steppedTool(), 'inch')
    expect(inches).toContain('1-1/2')
    expect(inches).toMatch(/\d °F/u)
    expect(inches.slice(inches.indexOf('id="piece-wide-title"'), inches.indexOf('id="along-wide-title"'))).not.toMatch(/ mm|°C/u)
  })

  test('other ways are listed, and that none meets the aim is said with the nearest', () => {
    const forecast = steppedTool()
    const routes = routesSchema.parse({
      routes: [{ says: 'Oil, then 232 °C twice', process: [], forecast, chance: 0.8, holdsGear: false }],
      none: { because: 'no oven is hot enough.', nearest: '52 HRC.' },
      refused: [{ says: 'Water', because: 'it cracks at the shoulder' }],
    })
    const html = reportPage(forecast, { units: 'metric', routes, generatedBy: 'a test' })
    for (const text of [
      'Oil, then 232 °C twice',
      'Your gear cannot hold all of it.',
      'no oven is hot enough.',
      'Water (it cracks at the shoulder)',
    ])
      expect(html).toContain(text)
  })
})

/** An attribute value that holds a bare quote or angle bracket. */
function attributesBroken(html: string): boolean {
  return [...html.matchAll(/<[a-z][^<>]*>/giu)].some(([tag]) => (tag.split('"').length - 1) % 2 !== 0)
}

function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a)
  return (light + 0.05) / (dark + 0.05)
}

/** Relative luminance, WCAG 2.2. */
function luminance(hex: string): number {
  const full = hex.length === 4 ? [...hex.slice(1)].map((digit) => digit + digit).join('') : hex.slice(1)
  const [r = 0, g = 0, b = 0] = [0, 2, 4].map((at) => {
    const share = Number.parseInt(full.slice(at, at + 2), 16) / 255
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}
