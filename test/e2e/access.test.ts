import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { describe, expect, test } from 'vitest'
import { DESK, HAS_BROWSER, PHONE } from './browser.ts'
import { onThePage } from './on-the-page.ts'
import { cutOff, drawnAnew, tooSmallToTouch } from './pages/eyes.ts'
import { piecePage } from './pages/piece-page.ts'
import { screens } from './pages/screens.ts'

/** What keeps somebody out. Lesser matters are told in the log. */
const GRAVE = ['serious', 'critical']

/** The other ground has other colours, and nothing else. */
const OF_COLOUR = ['color-contrast', 'link-in-text-block']

/** What axe finds on the page as it stands, one line each: what, how grave, where. */
async function axeFinds(page: Page, rules?: string[]): Promise<{ readonly grave: string[]; readonly lesser: string[] }> {
  const axe = new AxeBuilder({ page })
  const { violations } = await (rules === undefined ? axe : axe.withRules(rules)).analyze()
  const lines = violations.map(({ id, impact, nodes }) => ({
    grave: GRAVE.includes(impact ?? ''),
    says: `${id} (${impact}): ${nodes.map(({ target, failureSummary }) => `${target} ${failureSummary}`).join(' | ')}`,
  }))
  return {
    grave: lines.filter(({ grave }) => grave).map(({ says }) => says),
    lesser: lines.filter(({ grave }) => !grave).map(({ says }) => says),
  }
}

/** A desk at 200 %, a phone, the narrowest that is promised. */
const SMALL = [
  { width: 720, height: 450 },
  { width: 390, height: 844 },
  { width: 320, height: 640 },
] as const

describe.skipIf(!HAS_BROWSER)('who sees, hears or moves less', () => {
  const device = onThePage()

  test.each([
    ['desk', DESK],
    ['phone', PHONE],
  ] as const)(
    'axe finds nothing grave on any screen of a %s, on either ground',
    async (size, options) => {
      const page = await device.open(options)
      await piecePage(page).fullAnswer()
      const grave: string[] = []
      for (const { name, reach, leave } of screens(page)) {
        const t0 = Date.now()
        await reach()
        const t1 = Date.now()
        for (const [ground, rules] of [['paper'], ['slate', OF_COLOUR]] as const) {
          await page.evaluate((wanted) => {
            document.documentElement.dataset.ground = wanted
          }, ground)
          const found = await axeFinds(page, rules)
          grave.push(...found.grave.map((says) => `${name}, ${ground}: ${says}`))
          for (const says of found.lesser) console.log(`${size}, ${name}, ${ground}: ${says}`)
        }
        console.log('TIME', size, name, t1 - t0, Date.now() - t1)
        await leave?.()
      }
      expect(grave).toEqual([])
    },
    240_000,
  )

  test('at 200 % and on small phones nothing is cut off or runs out at the side, and a finger meets what it means', async () => {
    const page = await device.open(PHONE)
    await piecePage(page).fullAnswer()
    const faults = new Set<string>()
    for (const { name, reach, leave } of screens(page)) {
      await reach()
      for (const { width, height } of SMALL) {
        await page.setViewportSize({ width, height })
        await drawnAnew(page)
        for (const says of await cutOff(page)) faults.add(`${name}, ${width} px: ${says}`)
      }
      for (const says of await tooSmallToTouch(page)) faults.add(`${name}: ${says}`)
      await leave?.()
    }
    expect([...faults]).toEqual([])
  }, 240_000)
})
