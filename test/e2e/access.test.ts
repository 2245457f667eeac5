import { AxeBuilder } from '@axe-core/playwright'
import type { Locator, Page } from 'playwright-core'
import { describe, expect, test } from 'vitest'
import { DESK, HAS_BROWSER, PHONE } from './browser.ts'
import { onThePage } from './on-the-page.ts'
import { drawing } from './pages/drawing.ts'
import { cutOff, drawnAnew, says, tabTo, tooSmallToTouch } from './pages/eyes.ts'
import { piecePage } from './pages/piece-page.ts'
import { screens } from './pages/screens.ts'
import { stage } from './pages/stage.ts'
import { treatmentSide } from './pages/treatment-side.ts'

/** What keeps somebody out. Lesser matters are told in the log. */
const GRAVE = ['serious', 'critical']

/** The other ground has other colours, and nothing else. */
const OF_COLOUR = ['color-contrast', 'link-in-text-block']

/** What axe finds on the page as it stands, one line each: what, how grave, where. */
async function axeFinds(
  page: Page,
  part?: string,
  rules?: string[],
): Promise<{ readonly grave: string[]; readonly lesser: string[] }> {
  const axe = new AxeBuilder({ page })
  if (part !== undefined) axe.include(part)
  if (rules !== undefined) axe.withRules(rules)
  const { violations, passes } = await axe.analyze()
  expect(passes.length).toBeGreaterThan(0)
  const lines = violations.map(({ id, impact, nodes }) => ({
    grave: GRAVE.includes(impact ?? ''),
    says: `${id} (${impact}): ${nodes.map(({ target, failureSummary }) => `${target} ${failureSummary}`).join(' | ')}`,
  }))
  return {
    grave: lines.filter(({ grave }) => grave).map(({ says }) => says),
    lesser: lines.filter(({ grave }) => !grave).map(({ says }) => says),
  }
}

/** A desk at 200 %, and the narrowest screen that is promised. */
const AT_200 = { width: 720, height: 450 }
const NARROWEST = { width: 320, height: 640 }

/** The page answers a key at once; a busy machine may not. */
const SOON = { timeout: 20_000 }

describe.skipIf(!HAS_BROWSER)('who sees, hears or moves less', { timeout: 240_000 }, () => {
  const device = onThePage()

  test.each([
    ['a desk', DESK, [AT_200]],
    ['a phone', PHONE, [PHONE.viewport, NARROWEST]],
  ] as const)(
    'on no screen of %s axe finds anything grave, on either ground, and nothing is cut off',
    async (_, options, sizes) => {
      const page = await device.open(options)
      await piecePage(page).fullAnswer()
      const faults: string[] = []
      for (const { name, part, reach, leave } of screens(page)) {
        await reach()
        for (const [ground, rules] of [['paper'], ['slate', OF_COLOUR]] as const) {
          await page.evaluate((wanted) => {
            document.documentElement.dataset.ground = wanted
          }, ground)
          const found = await axeFinds(page, part, rules)
          faults.push(...found.grave.map((told) => `${name}, ${ground}: ${told}`))
          for (const told of found.lesser) console.log(`${name}, ${ground}: ${told}`)
        }
        for (const size of sizes) {
          await page.setViewportSize(size)
          await drawnAnew(page)
          faults.push(...(await cutOff(page)).map((told) => `${name}, ${size.width} px: ${told}`))
        }
        if (options === PHONE) faults.push(...(await tooSmallToTouch(page)).map((told) => `${name}: ${told}`))
        await page.setViewportSize(options.viewport)
        await drawnAnew(page)
        await leave?.()
      }
      expect(faults).toEqual([])
    },
  )

  test('by keyboard alone: a diameter, undo, a sheet, the time line, a field, a step; the focus is always in sight', async () => {
    const page = await device.open()
    const [piece, drawn, around, treatment] = [piecePage(page), drawing(page), stage(page), treatmentSide(page)]
    await around.along.getByRole('table').waitFor()
    const unseen: string[] = []
    const go = async (there: Locator, key?: 'Shift+Tab'): Promise<void> => {
      unseen.push(...(await tabTo(page, there, key)))
    }
    const across = drawn.handle(/^Section 1 of 2, round, across all along/u)
    await go(across)
    await page.keyboard.press('ArrowUp')
    await expect.poll(() => across.getAttribute('aria-valuetext'), SOON).toBe('38.5 mm')
    await page.keyboard.press('Control+z')
    await expect.poll(() => across.getAttribute('aria-valuetext'), SOON).toBe('1-1/2 in')
    await expect.poll(() => piece.undo.isDisabled(), SOON).toBe(true)

    await go(around.time)
    await page.keyboard.press('PageDown')
    await expect.poll(() => says(around.reading), SOON).not.toMatch(/^at the end/u)
    await expect.poll(() => around.shown('Heat'), SOON).toBe(true)
    await go(page.getByRole('group', { name: 'The cut shows' }).getByLabel('Heat'), 'Shift+Tab')
    await page.keyboard.press('ArrowRight')
    await expect.poll(() => around.shown('Became'), SOON).toBe(true)

    const shapes = page.getByRole('button', { name: 'Start from another shape' })
    await go(shapes)
    await page.keyboard.press('Enter')
    const sheet = page.getByRole('dialog', { name: 'Start from a shape' })
    // The shapes come a moment after the sheet; before them its one button is the last stop, and Tab would leave the page.
    await sheet.getByRole('listitem').first().waitFor()
    await page.keyboard.press('Tab')
    await expect.poll(() => sheet.evaluate((each) => each.contains(document.activeElement)), SOON).toBe(true)
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'detached' })
    await expect.poll(() => shapes.evaluate((each) => each === document.activeElement), SOON).toBe(true)

    await go(page.getByRole('navigation', { name: 'Sides of the piece' }).getByRole('button', { name: 'Treatment' }), 'Shift+Tab')
    await page.keyboard.press('Enter')
    await go(treatment.step(/Temper small oven/u))
    await page.keyboard.press('Enter')
    await go(treatment.field('At'))
    await page.keyboard.press('ArrowDown')
    await expect.poll(() => treatment.field('At').inputValue(), SOON).not.toBe('450 °F')
    await expect.poll(() => says(piece.undo), SOON).toMatch(/temper: at/iu)
    expect(unseen).toEqual([])
  })
})
