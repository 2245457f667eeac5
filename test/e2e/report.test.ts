import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Forecast } from '#contract/answers.ts'
import { steppedTool } from '#report/fixture.test-data.ts'
import { reportPage } from '#report/report-page.ts'
import { HAS_BROWSER, openBrowser } from './browser.ts'

const SCREENS = [
  { name: 'desktop', viewport: { width: 1280, height: 900 } },
  { name: 'tablet', viewport: { width: 820, height: 1180 } },
  { name: 'phone', viewport: { width: 412, height: 915 }, hasTouch: true, isMobile: true },
]

/** A long thin leaf, dipped whole. */
function leaf(): Forecast {
  const tool = steppedTool()
  const { field: _, ...rest } = tool
  return {
    ...rest,
    piece: 'latch spring',
    outline_mm: [
      [0, 0],
      [0, 2.9],
      [180, 2.9],
      [180, 0],
    ],
    length_mm: 180,
    zones: [{ ...tool.zones[0]!, name: 'leaf', from_mm: 0, to_mm: 180, aim: '42..48 HRC' }],
    baths: [{ ...tool.baths[0]!, line_mm: null }],
    along: tool.along.map((at) => ({ ...at, x_mm: at.x_mm * 1.8 })),
  }
}

/** Long names, zones on top of each other, more findings than the piece is tall. */
function crowded(): Forecast {
  const tool = steppedTool()
  const [zone] = tool.zones
  const [finding] = tool.findings
  return {
    ...tool,
    piece: 'A bottom tool with an uncommonly long name for the third span of the old railway bridge',
    zones: [0, 4, 8, 12].map((from_mm, i) => ({
      ...zone!,
      name: `zone with a rather long name, number ${i + 1}`,
      from_mm,
      to_mm: from_mm + 6,
    })),
    findings: Array.from({ length: 9 }, (_, i) => ({
      ...finding!,
      where: { x_mm: 40 + i },
      severity: (['stop', 'warn', 'note'] as const)[i % 3]!,
    })),
    baths: [{ ...tool.baths[0]!, name: 'the big oil drum behind the door of the small forge' }],
  }
}

const CASES: readonly (readonly [string, Forecast, 'metric' | 'inch'])[] = [
  ['stepped tool', steppedTool(), 'metric'],
  ['stepped tool in inches', steppedTool(), 'inch'],
  ['leaf', leaf(), 'metric'],
  ['crowded', crowded(), 'metric'],
]

describe.skipIf(!HAS_BROWSER)('the report in a browser', () => {
  const folder = mkdtempSync(join(tmpdir(), 'report-'))
  let browser: Browser

  beforeAll(async () => {
    browser = await openBrowser()
  })
  afterAll(async () => {
    await browser?.close()
    rmSync(folder, { recursive: true, force: true })
  })

  function written(name: string, forecast: Forecast, units: 'metric' | 'inch'): string {
    const path = join(folder, `${name.replaceAll(' ', '-')}.html`)
    writeFileSync(path, reportPage(forecast, { units, generatedBy: 'a test' }))
    return pathToFileURL(path).href
  }

  test.each(
    CASES.flatMap(([name, forecast, units]) =>
      SCREENS.filter(({ name: screen }) => screen !== 'tablet' || name === 'crowded').map((screen) => ({
        name,
        forecast,
        units,
        screen,
      })),
    ),
  )(
    '$name on a $screen.name: nothing runs out at the side, letters are large enough, labels keep clear',
    async ({ name, forecast, units, screen: { name: screen, ...options } }) => {
      const context = await browser.newContext(options)
      const page = await context.newPage()
      const asked: string[] = []
      page.on('request', (request) => asked.push(request.url()))
      const url = written(name, forecast, units)
      await page.goto(url)
      const seen = await lookAt(page)
      expect(seen.overflowPx, screen).toBeLessThanOrEqual(0)
      expect(seen.smallestPx).toBeGreaterThanOrEqual(12)
      expect(seen.overlaps).toEqual([])
      expect(seen.outside).toEqual([])
      expect(seen.pictures).toBeGreaterThanOrEqual(3)
      expect(asked).toEqual([url])
      for (const text of [forecast.zones[0]!.name, forecast.findings[0]!.says, forecast.steps[0]!.says])
        expect(await page.getByText(text).filter({ visible: true }).count()).toBeGreaterThan(0)
      await context.close()
    },
  )

  test.each(['A4', 'Letter'])(
    'printed on %s: the first page holds drawing, zones and findings; the card begins the second',
    async (format) => {
      const page = await browser.newPage()
      await page.goto(written('stepped tool', steppedTool(), 'metric'))
      const pdf = await page.pdf({ format })
      expect(pdf.subarray(0, 5).toString('latin1')).toBe('%PDF-')
      const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b/gu)?.length ?? 0
      expect(pages).toBeGreaterThanOrEqual(2)
      expect(pages).toBeLessThanOrEqual(3)
      // Lay the page out as wide as the paper between its margins, and see where things come to stand.
      const [width, height] = format === 'A4' ? [184, 273] : [189.9, 255.4]
      const px = (mm: number) => Math.round((mm / 25.4) * 96)
      await page.setViewportSize({ width: px(width), height: px(height) })
      await page.emulateMedia({ media: 'print' })
      const foot = (selector: string) => page.locator(selector).evaluate((element) => element.getBoundingClientRect().bottom)
      expect(await foot('.found')).toBeLessThanOrEqual(px(height))
      const card = await page.locator('.card').evaluate((element) => element.getBoundingClientRect().height)
      expect(card).toBeLessThanOrEqual(px(height))
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
      ).toBeLessThanOrEqual(0)
      await page.close()
    },
  )
})

/** What a pair of eyes would complain of. */
function lookAt(
  page: Page,
): Promise<{ overflowPx: number; smallestPx: number; overlaps: string[]; outside: string[]; pictures: number }> {
  return page.evaluate(() => {
    const overlaps: string[] = []
    const outside: string[] = []
    let smallestPx = 99
    const pictures = [...document.querySelectorAll<SVGSVGElement>('svg.picture')].filter((svg) => svg.getClientRects().length > 0)
    for (const svg of pictures) {
      const frame = svg.getBoundingClientRect()
      const texts = [...svg.querySelectorAll('text')]
      const boxes = texts.map((text) => text.getBoundingClientRect())
      for (const [i, a] of boxes.entries()) {
        const text = texts[i]!
        smallestPx = Math.min(
          smallestPx,
          (Number.parseFloat(getComputedStyle(text).fontSize) * frame.width) / svg.viewBox.baseVal.width,
        )
        if (a.left < frame.left - 1 || a.right > frame.right + 1 || a.top < frame.top - 1 || a.bottom > frame.bottom + 1)
          outside.push(`${svg.querySelector('title')?.textContent}: ${text.textContent}`)
        for (const [k, b] of boxes.entries()) {
          if (k <= i) continue
          const across = Math.min(a.right, b.right) - Math.max(a.left, b.left)
          // A line box is taller than its letters by about a fifth above and below.
          const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) - 0.2 * a.height
          if (across > 0.5 && down > 0.5) overlaps.push(`${text.textContent} / ${texts[k]!.textContent}`)
        }
      }
    }
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const holder = node.parentElement
      if (
        holder === null ||
        holder.closest('svg, style') !== null ||
        node.textContent?.trim() === '' ||
        holder.getClientRects().length === 0
      )
        continue
      smallestPx = Math.min(smallestPx, Number.parseFloat(getComputedStyle(holder).fontSize))
    }
    return {
      overflowPx: document.documentElement.scrollWidth - document.documentElement.clientWidth,
      smallestPx,
      overlaps,
      outside,
      pictures: pictures.filter((svg) => svg.getAttribute('role') === 'img').length,
    }
  })
}
