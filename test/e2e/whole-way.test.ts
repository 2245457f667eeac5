import { describe, expect, test } from 'vitest'
import { CARD_FORMATS, type CardSize } from '#report/card-sizes.ts'
import { DESK, HAS_BROWSER, PHONE } from './browser.ts'
import { onThePage } from './on-the-page.ts'
import { benchPage } from './pages/bench-page.ts'
import { cardSide } from './pages/card-side.ts'
import { drawing } from './pages/drawing.ts'
import { says } from './pages/eyes.ts'
import { piecePage } from './pages/piece-page.ts'
import { shapeSide } from './pages/shape-side.ts'
import { steelSide } from './pages/steel-side.ts'
import { treatmentSide } from './pages/treatment-side.ts'

const SIZES: readonly (readonly [CardSize, string])[] = [
  ['A6', 'A6'],
  ['3x5', '3 x 5 in'],
  ['A5', 'A5'],
  ['A4', 'A4'],
  ['Letter', 'Letter'],
]

describe.skipIf(!HAS_BROWSER)('the whole way', { timeout: 180_000 }, () => {
  const device = onThePage()

  test.each([
    ['by mouse at a desk', DESK],
    ['by finger on a phone', PHONE],
  ])('from nothing to a printed card, %s', async (_, options) => {
    const page = await device.open(options, '/bench')
    await benchPage(page).plainBar()
    const [piece, drawn, shape] = [piecePage(page), drawing(page), shapeSide(page)]
    await piece.name.fill('rail drift')
    await piece.name.press('Tab')
    await drawn.pull(drawn.handle(/across at the working end/u), -20, 0)
    await drawn.letGo()
    await shape.open(/^The whole piece/u)
    await shape.type('Diameter, working end', '16 mm')
    await shape.type('Length', '5 in')
    await shape.button('Add a zone on this section').click()
    await shape.type('Name', 'nose')
    await shape.type('To', '20 mm')
    await shape.type('Aim', '45..55 HRC')
    await piece.side('Steel')
    await steelSide(page).choose('1045')
    await steelSide(page).known('1045')
    await piece.side('Treatment')
    const treatment = treatmentSide(page)
    await treatment.propose()
    await treatment.routes.first().getByRole('button', { name: 'Take this one' }).click()
    const steps = await treatment.steps()
    await piece.fullAnswer()
    await piece.side('Card')
    const card = cardSide(page)
    await card.size('A5')
    await expect.poll(() => card.print.isEnabled(), { timeout: 60_000 }).toBe(true)
    // The browser's own print window cannot be seen from here; that it is asked for can.
    await page.evaluate(() => {
      Object.assign(globalThis, { print: () => document.body.classList.add('asked-to-print') })
    })
    await card.print.click()
    expect(await page.locator('body.asked-to-print').count()).toBe(1)
    expect(await card.boxes.count()).toBe(steps.length)
    const { pages, text } = await card.onPaper()
    expect(pages).toBe(1)
    for (const words of ['Rail drift', '1045', 'nose', 'Eye protection', 'hot metal']) expect(text).toContain(words)
    // Nothing of the page itself.
    for (const words of ['Undo', 'File and link', 'Sections', 'Print the card']) expect(text).not.toContain(words)
  })

  test('the card goes onto one sheet of every size, with every step', async () => {
    const page = await device.open(DESK, '/bench')
    await benchPage(page).piece('hot slot punch')
    const [piece, card] = [piecePage(page), cardSide(page)]
    await piece.side('Treatment')
    const steps = await treatmentSide(page).steps()
    await piece.fullAnswer()
    await piece.side('Card')
    for (const [size, words] of SIZES) {
      await card.size(words)
      await card.card.and(page.locator(`.qw-card-${size.toLowerCase()}`)).waitFor()
      const { widthMm, heightMm } = CARD_FORMATS[size]
      const { text, ...sheet } = await card.onPaper()
      expect(sheet).toEqual({ pages: 1, widthMm: Math.round(widthMm), heightMm: Math.round(heightMm) })
      expect(await card.boxes.count()).toBe(steps.length)
      for (const told of ['Hot slot punch', 'S7', '945 °C', '215 °C', 'Eye protection', 'Carbon monoxide'])
        expect(text).toContain(told)
    }
    expect(await says(card.side.getByRole('status'))).toContain('The cautions stay on it')
  })
})
