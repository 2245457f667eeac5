import { readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { fileURLToPath } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Forecast } from '#contract/answers.ts'
import { forecast } from '#contract/forecast-answer.ts'
import { planLink } from '#contract/plan-link.ts'
import { readJobText } from '#contract/read-job.ts'
import { cardPage } from '#report/card.ts'
import { CARD_FORMATS, CARD_SIZES, type CardSize } from '#report/card-sizes.ts'
import { HAS_BROWSER, openBrowser } from './browser.ts'

const EXAMPLES = fileURLToPath(new URL('../../examples/', import.meta.url))
const read = (name: string) => readJobText(readFileSync(`${EXAMPLES}${name}`, 'utf8'), name) as Record<string, unknown>
const SHOP = read('shop.yaml')
const FACE = createRequire(import.meta.url).resolve(
  '@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2',
)
const faceSrc = `url(data:font/woff2;base64,${readFileSync(FACE).toString('base64')})`

/** Eight steps, the bath up to a shoulder, an end drawn in the flame: as much as a smith puts into one job. */
const EIGHT_STEPS = {
  ...read('stepped-bottom-tool.yaml'),
  piece: 'set hammer',
  zones: [
    { name: 'face', from: '0 mm', to: '20 mm', aim: '48..54 HRC' },
    { name: 'struck end', from: '90 mm', to: '100 mm', aim: 'at most 40 HRC' },
  ],
  process: [
    { do: 'normalise', in: 'gas forge', to: '880 °C', hold: '12 min' },
    { do: 'normalise', in: 'gas forge', to: '850 °C', hold: '8 min', times: 2 },
    { do: 'stress-relieve', in: 'gas forge', to: '650 °C', hold: '30 min' },
    { do: 'heat', in: 'gas forge', to: '855 °C', hold: '12 min' },
    { do: 'carry', for: '3 s' },
    { do: 'quench', in: 'oil drum', depth: '50 mm', for: '4 min' },
    { do: 'temper', in: 'small oven', at: '220 °C', hold: '2 h', times: 2 },
    { do: 'temper', in: 'coal fire', at: '500 °C', hold: '5 min', part: { from: '70 mm', to: '100 mm' } },
  ],
}

interface Made {
  readonly answer: Forecast
  readonly link: string
}

async function made(job: object, units: 'metric' | 'inch' = 'metric'): Promise<Made> {
  const whole = { ...job, shop: SHOP }
  return { answer: forecast(whole, { grade: 'draft', members: 2, units }), link: await planLink('http://localhost:4615/', whole) }
}

let browser: Browser
let page: Page
beforeAll(async () => {
  if (!HAS_BROWSER) return
  browser = await openBrowser()
  page = await browser.newPage()
})
afterAll(() => browser?.close())

async function print({ answer, link }: Made, size: CardSize, units: 'metric' | 'inch', own: boolean) {
  await page.setContent(
    cardPage(answer, { size, units, link, generatedBy: 'Quenchwright 0.1.0, 2025-03-14', ...(own ? { faceSrc } : {}) }),
  )
  const seen = await page.evaluate(async () => {
    await document.fonts.ready
    const box = (of: string) => document.querySelector(of)?.getBoundingClientRect() ?? new DOMRect()
    const card = box('.qw-card')
    const outside = [...document.querySelectorAll('.qw-card *')].filter((each) => {
      const { left, right, top, bottom } = each.getBoundingClientRect()
      return left < card.left - 0.5 || right > card.right + 0.5 || top < card.top - 0.5 || bottom > card.bottom + 0.5
    })
    return {
      outside: outside.map(({ className, tagName }) => `${tagName} ${className}`),
      roomPx: box('.qw-feet').top - box('.qw-proof').bottom,
      bodyPt: Number.parseFloat(document.querySelector<HTMLElement>('.qw-do')?.style.fontSize ?? ''),
      hasCode: document.querySelector('.qw-code') !== null,
    }
  })
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1')
  const sheet = /\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)/u.exec(pdf)
  return {
    ...seen,
    pages: pdf.match(/\/Type\s*\/Page\b/gu)?.length,
    sheetMm: [1, 2].map((i) => Math.round((Number(sheet?.[i]) / 72) * 25.4)),
  }
}

const LEAST_PT = { A6: 7.5, '3x5': 6, A5: 11, A4: 11, Letter: 11 }

function soundOn(size: CardSize, { outside, pages, sheetMm, roomPx, bodyPt }: Awaited<ReturnType<typeof print>>): void {
  const { widthMm, heightMm } = CARD_FORMATS[size]
  expect({ outside, pages, sheetMm }).toEqual({ outside: [], pages: 1, sheetMm: [Math.round(widthMm), Math.round(heightMm)] })
  expect(roomPx).toBeGreaterThanOrEqual(0)
  expect(bodyPt).toBeGreaterThanOrEqual(LEAST_PT[size])
}

describe.skipIf(!HAS_BROWSER)('each example goes onto one sheet of every size, all of it', () => {
  const names = readdirSync(EXAMPLES).filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')
  test.each(names)('%s', async (name) => {
    const tool = await made(read(name))
    for (const size of CARD_SIZES) {
      const sheet = await print(tool, size, 'metric', true)
      soundOn(size, sheet)
      if (size !== '3x5') expect(sheet.hasCode).toBe(true)
    }
    for (const size of ['A5', 'A4', 'Letter'] as const) soundOn(size, await print(tool, size, 'metric', false))
  })
})

test.skipIf(!HAS_BROWSER)('in inches', async () => {
  const tool = await made(read('hot-slot-punch.yaml'), 'inch')
  for (const size of CARD_SIZES) soundOn(size, await print(tool, size, 'inch', true))
})

test.skipIf(!HAS_BROWSER)('eight steps with two normalising heats go onto A5 and larger', async () => {
  const tool = await made(EIGHT_STEPS)
  for (const size of ['A5', 'A4', 'Letter'] as const) {
    const sheet = await print(tool, size, 'metric', true)
    soundOn(size, sheet)
    expect(sheet.hasCode).toBe(true)
  }
})
