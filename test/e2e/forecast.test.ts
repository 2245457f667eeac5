import type { BrowserContextOptions } from 'playwright-core'
import { describe, expect, test } from 'vitest'
import { DESK, HAS_BROWSER, PHONE } from './browser.ts'
import { onThePage } from './on-the-page.ts'
import { drawing, middleOf } from './pages/drawing.ts'
import { says } from './pages/eyes.ts'
import { piecePage } from './pages/piece-page.ts'
import { FIELDS, stage } from './pages/stage.ts'
import { topBar } from './pages/top-bar.ts'

describe.skipIf(!HAS_BROWSER)('the forecast follows', () => {
  const device = onThePage()

  /** The example piece with its first look. */
  async function firstLook(options: BrowserContextOptions = DESK) {
    const page = await device.open(options)
    await piecePage(page).coarseOnly()
    return { page, piece: piecePage(page), drawn: drawing(page), around: stage(page) }
  }

  test('coarse while a handle is held, in full with its band when it rests', async () => {
    const page = await device.open()
    const [piece, drawn, around] = [piecePage(page), drawing(page), stage(page)]
    await around.along.getByRole('table').waitFor()
    const lastHeight = async () => (await around.alongRows()).at(-1)?.split(' mm')[0]
    const before = await lastHeight()
    await drawn.pull(drawn.handle(/length, to the other end/u), 0, 25)
    expect(await around.along.getAttribute('data-standing')).toBe('coarse')
    await expect.poll(lastHeight, { timeout: 60_000 }).not.toBe(before)
    expect(Number(await lastHeight())).toBeGreaterThan(Number(before))
    await drawn.letGo()
    await piece.fullAnswer()
    expect(await says(piece.outlook)).toMatch(
      /^dished face \d+ to \d+ HRC, (?:meets|may meet|is likely to miss) its aim: .*\d+ in 100$/u,
    )
    for (const row of await around.alongRows()) {
      const figures = [...row.matchAll(/(\d+) \((\d+) to (\d+)\)/gu)].map((found) => found.slice(1).map(Number))
      expect(figures).toHaveLength(4)
      for (const [value, low, high] of figures as [number, number, number][]) {
        expect(low).toBeLessThan(high)
        expect(value).toBeGreaterThanOrEqual(low)
        expect(value).toBeLessThanOrEqual(high)
      }
    }
  })

  test.each([
    ['a desk', DESK],
    ['a phone', PHONE],
  ])('on %s the cut shows one field after another, each unlike the others, with what its shades mean', async (_, options) => {
    const { page, around, drawn } = await firstLook(options)
    const means = {
      Heat: /\d+ (?:to \d+ )?°C/u,
      Became: /^hardened$/u,
      Quenched: /\d+ to \d+ HRC/u,
      Tempered: /\d+ to \d+ HRC/u,
      Doubt: /\d/u,
      Colours: /\d °C/u,
    }
    const seen = new Set<number>()
    for (const field of FIELDS) {
      await (options === PHONE ? around.pick(field) : around.show(field))
      await expect.poll(() => says(around.legend)).toMatch(means[field])
      seen.add(await drawn.painted())
    }
    expect(seen.size).toBe(FIELDS.length)
    if (options !== PHONE) return
    await around.turnTo('Found')
    await around.found.getByRole('button').first().waitFor()
    expect(await around.along.count()).toBe(0)
    await around.turnTo('Along it')
    await around.along.getByRole('table').waitFor()
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0)
  })

  test('one time line: taken by the mouse or by keys, it sets the heat of the cut and tells the step', async () => {
    const { page, around, drawn } = await firstLook()
    expect(await says(around.reading)).toMatch(/^at the end/u)
    const { x, y } = await middleOf(around.time)
    const box = await around.time.boundingBox()
    await page.mouse.move(x, y)
    await page.mouse.down()
    expect(await around.shown('Heat')).toBe(true)
    const seen = new Set<string>()
    const painted = new Set<number>()
    for (const share of [0.05, 0.3, 0.55, 0.8]) {
      await page.mouse.move((box?.x ?? 0) + share * (box?.width ?? 0), y, { steps: 4 })
      seen.add(await says(around.reading))
      painted.add(await drawn.painted())
    }
    await page.mouse.up()
    expect(seen.size).toBe(4)
    expect(painted.size).toBe(4)
    await around.time.focus()
    await around.time.press('Home')
    expect(await says(around.reading)).toMatch(/^normalise 1, 0 s in skin 20 °C/u)
    let steps = ''
    for (let i = 0; i < 9; i++) {
      await around.time.press('PageUp')
      steps += `${await says(around.reading)}\n`
    }
    expect(steps).toMatch(/normalise 2[\s\S]*heat[\s\S]*oil drum[\s\S]*temper[\s\S]*at the end/u)
  })

  test('a place in the cut metal tells its history', async () => {
    const { page, around, drawn } = await firstLook()
    const { x, y } = await middleOf(drawn.region)
    await page.mouse.click(x + 8, y + 60)
    expect(await says(around.history)).toMatch(/\d+(?:\.\d+)? mm up, \d+(?:\.\d+)? mm from the middle: .*HRC/u)
    expect(await says(around.reading)).toMatch(/here \d+ °C/u)
    const before = await says(around.history)
    await drawn.place.press('Shift+ArrowUp')
    expect(await says(around.history)).not.toBe(before)
    await around.history.getByRole('button', { name: /^Put away/u }).click()
    expect(await says(around.history)).toMatch(/^Click into the cut metal/u)
    await topBar(page).inches()
    await page.mouse.click(x + 8, y + 60)
    expect(await says(around.history)).toMatch(/ in up,/u)
  })

  test('who wants nothing to move is offered nothing that does', async () => {
    const { page, around, drawn } = await firstLook({ ...DESK, reducedMotion: 'reduce' })
    expect(await page.getByRole('button', { name: 'Let it run' }).count()).toBe(0)
    await around.show('Heat')
    await drawn.pull(drawn.handle(/^Section 1 of 2, round, across all along/u), 20, 0)
    await drawn.letGo()
    const moving = await page.evaluate(() =>
      document
        .getAnimations()
        .filter(({ effect }) => Number(effect?.getComputedTiming().duration) > 1)
        .map(({ id }) => id),
    )
    expect(moving).toEqual([])
  })

  test('for the others the treatment runs by itself, until it is halted', async () => {
    const { page, around } = await firstLook()
    await page.getByRole('button', { name: 'Let it run' }).click()
    await expect.poll(() => says(around.reading), { timeout: 20_000 }).toMatch(/^normalise/u)
    await page.getByRole('button', { name: 'Halt' }).click()
    const halted = await says(around.reading)
    await page.getByRole('button', { name: 'Let it run' }).waitFor()
    expect(await says(around.reading)).toBe(halted)
  })
})
