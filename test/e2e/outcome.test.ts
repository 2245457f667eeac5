import { AxeBuilder } from '@axe-core/playwright'
import { describe, expect, test } from 'vitest'
import { DESK, HAS_BROWSER, PHONE } from './browser.ts'
import { onThePage } from './on-the-page.ts'
import { benchPage } from './pages/bench-page.ts'
import { cutOff, drawnAnew, eachSays, says, tooSmallToTouch } from './pages/eyes.ts'
import { outcomeOf } from './pages/outcome.ts'
import { piecePage } from './pages/piece-page.ts'
import { shapeSide } from './pages/shape-side.ts'
import { shopPage } from './pages/shop-page.ts'
import { topBar } from './pages/top-bar.ts'
import { treatmentSide } from './pages/treatment-side.ts'

/** Quenched at its edge only, and tempered by the heat that is left in the body. */
const GATE_CHISEL = `piece: gate chisel
steel: { grade: W1 }
profile:
  - { shape: flat, from: 2.5 x 22 mm, to: 11 x 20 mm, length: 45 mm }
  - { shape: octagon, across: 19 mm, length: 125 mm }
struck: true
zones:
  - { name: edge, from: 0 mm, to: 20 mm, aim: 56..61 HRC }
shop:
  fires: [{ name: coal fire, kind: coal }]
  baths: [{ name: slack tub, kind: water, volume: 60 L, depth: 400 mm, temperature: 20 °C }]
process:
  - { do: normalise, in: coal fire, to: 830 °C, hold: 3 min, cool: ashes }
  - { do: heat, in: coal fire, to: 790 °C, hold: 5 min }
  - { do: carry, for: 2 s }
  - { do: quench, in: slack tub, depth: 30 mm, for: 6 s }
  - { do: run-colours, stop: purple, in: slack tub }
`

describe.skipIf(!HAS_BROWSER)('what comes of a zone', () => {
  const device = onThePage()

  test.each([
    ['a desk', DESK],
    ['a phone', PHONE],
  ])('on %s: skin and corners by its zone, the seconds at their step, the air about it at the heat', async (_, options) => {
    const page = await device.open(options, '/bench')
    await benchPage(page).jobFile('gate-chisel.yaml', GATE_CHISEL)
    const [piece, shape, treatment] = [piecePage(page), shapeSide(page), treatmentSide(page)]
    await piece.fullAnswer()
    await shape.open(/^edge/iu)
    const edge = outcomeOf(page, 'edge')
    expect(await says(edge.first)).toMatch(
      /^Comes to \d+ HRC \(\d+ to \d+\), from \d+ as quenched\. Chance of its aim: .*\d+ in 100\.$/u,
    )
    expect(await edge.opened(/^Skin: grind 0\.\d+ mm off; a file alone deceives$/u)).toMatch(
      /As hard as underneath from 0\.\d+ mm down; .*grind the skin off, then judge\./u,
    )
    await edge.skinPicture.waitFor()
    await edge.opened(/^Corner/u)
    const rows = await eachSays(edge.sections.getByRole('row'))
    expect(rows.length).toBeGreaterThan(2)
    expect(rows.slice(1).every((row) => /^\d.* mm(?: \d+(?: from \d+)?){3}$/u.test(row))).toBe(true)
    for (const ground of ['slate', 'paper'] as const) {
      await topBar(page).ground(ground)
      await drawnAnew(page)
      const { violations, passes } = await new AxeBuilder({ page }).include('.outcome').analyze()
      expect(passes.length).toBeGreaterThan(0)
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target).join(', ')}`)).toEqual([])
    }
    expect(await cutOff(page)).toEqual([])
    if (options === PHONE) expect(await tooSmallToTouch(page)).toEqual([])

    await piece.side('Treatment')
    await treatment.step(/Run the colours/u).click()
    await treatment.side
      .getByText(/^(?:\d.* to catch it: .* after the lift|No hurry: good from .* after the lift on)$/u)
      .waitFor()
    await treatment.step(/Normalise .*cooled in ashes/u).click()
    await treatment.side.getByText(/^Grain after it: ASTM \d/u).click()
    await treatment.side.getByText(/^Grain: ASTM/u).waitFor()
    await treatment.step(/^2 Heat/u).click()
    const air = treatment.field('Air about it')
    expect(await air.locator('option:checked').textContent()).toBe('as the fire: neutral')
    await air.selectOption('packed')
    await piece.fullAnswer()
    expect(await cutOff(page)).toEqual([])
  })

  test('how a fire of the shop burns is said as usual for its kind, and chosen', async () => {
    const page = await device.open()
    await topBar(page).goTo('Shop')
    const air = shopPage(page).choice('gas forge', 'Air in it')
    expect(await air.locator('option:checked').textContent()).toBe('usual: neutral')
    await air.selectOption('oxidising')
    await page.reload()
    expect(await shopPage(page).choice('gas forge', 'Air in it').inputValue()).toBe('oxidising')
  })
})
