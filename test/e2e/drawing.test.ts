import type { Page } from 'playwright-core'
import { describe, expect, test } from 'vitest'
import { parseLength } from '#units/length.ts'
import { DESK, HAS_BROWSER, PHONE } from './browser.ts'
import { onThePage } from './on-the-page.ts'
import { benchPage } from './pages/bench-page.ts'
import { drawing } from './pages/drawing.ts'
import { eachSays, says } from './pages/eyes.ts'
import { piecePage } from './pages/piece-page.ts'
import { shapeSide } from './pages/shape-side.ts'
import { topBar } from './pages/top-bar.ts'

const SIXTEENTH_M = 0.0254 / 16

/** A figure as typed [m]. */
function metresOf(typed: string): number {
  const read = parseLength(typed)
  if (!read.ok) throw new Error(`"${typed}" is no length`)
  return read.value.lengthM
}

describe.skipIf(!HAS_BROWSER)('a piece is drawn', () => {
  const device = onThePage()

  /** A plain bar, 25 mm round and 125 mm long. */
  async function bar(options = DESK) {
    const page = await device.open(options, '/bench')
    await benchPage(page).plainBar()
    return { page, piece: piecePage(page), drawn: drawing(page), shape: shapeSide(page) }
  }
  const shown = (page: Page, name: RegExp) => says(drawing(page).figure(name))

  test('a diameter follows the hand by half millimetres, and is one step to undo', async () => {
    const { page, piece, drawn } = await bar()
    const across = drawn.handle(/across all along/u)
    await drawn.pull(across, 31, 0)
    const held = await says(drawn.held)
    expect(held).toMatch(/^\d+(?:\.5)? mm$/u)
    expect(metresOf(held)).toBeGreaterThan(0.027)
    await drawn.letGo()
    expect(await shown(page, /size across/u)).toBe(`⌀ ${held}`)
    expect(await across.getAttribute('aria-valuetext')).toBe(held)
    expect(await drawn.held.count()).toBe(0)
    await piece.undo.click()
    expect(await shown(page, /size across/u)).toBe('⌀ 25 mm')
    expect(await piece.undo.isDisabled()).toBe(true)
    await piece.redo.click()
    expect(await shown(page, /size across/u)).toBe(`⌀ ${held}`)
  })

  test('in an inch shop it follows by sixteenths; Escape leaves the metal as it was', async () => {
    const { page, piece, drawn } = await bar()
    await topBar(page).inches()
    await drawn.pull(drawn.handle(/across all along/u), 17, 0)
    const held = await says(drawn.held)
    expect(held).toMatch(/^\d+(?:-\d+\/\d+)? in$/u)
    expect(metresOf(held) / SIXTEENTH_M).toBeCloseTo(Math.round(metresOf(held) / SIXTEENTH_M), 6)
    await page.keyboard.press('Escape')
    expect(await shown(page, /size across/u)).toBe('⌀ 25 mm')
    await drawn.letGo()
    expect(await piece.undo.isDisabled()).toBe(true)
    await drawn.pull(drawn.handle(/length, to the other end/u), 0, 40)
    const long = await says(drawn.held)
    await drawn.letGo()
    expect(metresOf(long)).toBeGreaterThan(0.125)
    expect(metresOf(long) / SIXTEENTH_M).toBeCloseTo(Math.round(metresOf(long) / SIXTEENTH_M), 6)
  })

  test('on a phone it follows the finger, and the page stays where it is', async () => {
    const { page, piece, drawn } = await bar(PHONE)
    const across = drawn.handle(/across all along/u)
    await across.scrollIntoViewIfNeeded()
    const scrolled = await page.evaluate(() => scrollY)
    await drawn.swipe(across, 24, -30)
    const wide = (await across.getAttribute('aria-valuetext')) ?? ''
    expect(wide).toMatch(/^\d+(?:\.5)? mm$/u)
    expect(metresOf(wide)).toBeGreaterThan(0.026)
    expect(await page.evaluate(() => scrollY)).toBe(scrolled)
    await piece.undo.click()
    expect(await across.getAttribute('aria-valuetext')).toBe('25 mm')
  })

  test('a quantity is typed over on the drawing and stands there as typed', async () => {
    const { page, drawn, shape } = await bar()
    await drawn.figure(/size across/u).click()
    await page.keyboard.type('7/8 in')
    await page.keyboard.press('Enter')
    expect(await shown(page, /size across/u)).toBe('⌀ 7/8 in')
    expect(await shape.field('Diameter').inputValue()).toBe('7/8 in')
    await drawn.figure(/length/u).click()
    await page.keyboard.type('90 mm')
    await page.keyboard.press('Escape')
    expect(await shown(page, /length/u)).toBe('125 mm')
  })

  test('sections are added, split, put in another order, reshaped and deleted', async () => {
    const { shape } = await bar()
    await shape.open(/^The whole piece/u)
    await shape.type('Diameter', '30 mm')
    await shape.tool('Split').click()
    expect(await shape.sections()).toEqual(['Other end round, 30 mm 62.5 mm long', 'Working end round, 30 mm 62.5 mm long'])
    await shape.tool('Add above').click()
    await shape.field('Square').check()
    await shape.field('Tapered').check()
    await shape.type('Across flats, upper end', '18 mm')
    expect((await shape.sections())[1]).toMatch(/^Section 2 square, .* to 18 mm/u)
    await shape.tool('Move down').click()
    expect((await shape.sections())[2]).toMatch(/^Working end square/u)
    await shape.tool('Delete').click()
    expect(await shape.sections()).toHaveLength(2)
    await shape.open(/^Other end/u)
    await shape.type('Fillet at its lower joint', '2 mm')
    await shape.button('Add a bore').click()
    expect((await shape.sections())[0]).toMatch(/fillet 2 mm, bore/u)
  })

  test('a zone is given, and drawn out by its ends', async () => {
    const { page, drawn, shape } = await bar()
    await shape.button('Add a zone').click()
    await shape.type('Name', 'edge')
    await shape.type('Aim', '54..58 HRC')
    const before = await shape.field('To').inputValue()
    await drawn.pull(drawn.handle(/^Zone edge, upper end/u), 0, -45)
    const held = await says(drawn.held)
    await drawn.letGo()
    expect(held).toMatch(/^\d+(?:\.5)? mm$/u)
    expect(metresOf(held)).toBeLessThan(metresOf(before))
    expect(await shape.field('To').inputValue()).toBe(held)
    expect(await says(shape.entry(/^edge/iu))).toContain('54..58 HRC')
    expect(await shown(page, /^Aim of edge/u)).toBe('54..58 HRC')
  })

  test('what is at fault is said where it is, and the mend takes it away', async () => {
    const { drawn, shape } = await bar()
    await shape.open(/^The whole piece/u)
    await shape.type('Diameter', '22')
    const fault = drawn.region.getByRole('button', { name: /no unit/u })
    await fault.waitFor()
    const field = shape.field('Diameter')
    expect(await field.getAttribute('aria-invalid')).toBe('true')
    expect(await shape.side.getByText(/no unit/u).count()).toBe(1)
    await shape.type('Diameter', '22 mm')
    await fault.waitFor({ state: 'detached' })
    expect(await field.getAttribute('aria-invalid')).toBeNull()
    await shape.type('Length', '40 m')
    await drawn.region.getByRole('button', { name: /40 m/u }).waitFor()
  })

  test('undo goes back to the start whatever was done, and redo to the end', async () => {
    const { piece, drawn, shape } = await bar()
    const whole = async () => [
      await piece.name.inputValue(),
      ...(await eachSays(shape.side.getByRole('listitem').locator('> button'))),
    ]
    const start = await whole()
    await drawn.pull(drawn.handle(/across all along/u), 25, 0)
    await drawn.letGo()
    await shape.open(/^The whole piece/u)
    await shape.tool('Split').click()
    await shape.field('Hexagon').check()
    await shape.button('Add a dish').click()
    await shape.button('Add a zone on this section').click()
    await drawn.handle(/^Zone/u).first().press('ArrowUp')
    await drawn.handle(/^Section 2 of 2, round, length/u).press('PageUp')
    await shape.side.getByLabel('Yes, it is struck').check()
    await piece.name.fill('a tool of many changes')
    await piece.name.press('Tab')
    const end = await whole()
    expect(end).not.toEqual(start)
    let undone = 0
    for (; await piece.undo.isEnabled(); undone++) await piece.undo.click()
    expect(undone).toBe(9)
    expect(await whole()).toEqual(start)
    for (let i = 0; i < undone; i++) await piece.redo.click()
    expect(await piece.redo.isDisabled()).toBe(true)
    expect(await piece.name.inputValue()).toBe('a tool of many changes')
    expect(await shape.sections()).toHaveLength(2)
  })
})
