import { describe, expect, test } from 'vitest'
import { DESK, HAS_BROWSER, PHONE } from './browser.ts'
import { onThePage } from './on-the-page.ts'
import { benchPage } from './pages/bench-page.ts'
import { eachSays, says } from './pages/eyes.ts'
import { piecePage } from './pages/piece-page.ts'
import { shopPage } from './pages/shop-page.ts'
import { steelSide } from './pages/steel-side.ts'
import { topBar } from './pages/top-bar.ts'
import { treatmentSide } from './pages/treatment-side.ts'

const ANSWERS_MS = 60_000

describe.skipIf(!HAS_BROWSER)('a plan is made', { timeout: 120_000 }, () => {
  const device = onThePage()

  test('the steel: by name, from the rack, by analysis, unknown', async () => {
    const page = await device.open()
    const [piece, steel] = [piecePage(page), steelSide(page)]
    await piece.side('Steel')
    await steel.known('4140')
    await steel.choose('drill rod')
    await steel.known('W1')
    await steel.button(/^punch bar/u).click()
    await steel.known('S7')
    expect(await steel.field.inputValue()).toBe('S7')
    await steel.choose('C 0.45, Mn 0.75, Si 0.25')
    await steel.known('analysed steel')
    await steel.side.getByText(/^C 0\.4\d to 0\.4\d, Mn/u).waitFor()
    await steel.choose('unknown')
    await steel.side.getByText('A bar of unknown steel has no forecast.').waitFor()
    await steel.choose('42CrMo5')
    expect(await says(steel.side.locator('.problem'))).toMatch(/42CrMo4/u)
    for (let i = 0; i < 5; i++) await piece.undo.click()
    await steel.known('4140')
  })

  test('the steel beside a second one: facts, and what would come of the piece', async () => {
    const page = await device.open()
    const [piece, steel] = [piecePage(page), steelSide(page)]
    await piece.coarseOnly()
    await piece.side('Steel')
    await steel.compareWith('O1')
    await steel.table('O1').first().waitFor()
    const facts = await eachSays(steel.table('O1').first().getByRole('row'))
    expect(facts.length).toBeGreaterThan(5)
    await steel.button('This piece in O1').click()
    const outcome = steel.table('Zone')
    await outcome.waitFor()
    expect(await eachSays(outcome.getByRole('row'))).toEqual([
      'Zone 4140 O1',
      expect.stringMatching(/^dished face .*\d+ in 100 .*\d+ in 100$/u),
    ])
    await steel.button('Take O1 for this piece').click()
    await steel.known('O1')
  })

  test.each([
    ['desk', DESK],
    ['phone', PHONE],
  ])('the shop is set up once, on a %s, and kept', async (_, options) => {
    const page = await device.open(options, '/shop')
    const shop = shopPage(page)
    await shop.button('Start my own shop').click()
    await expect.poll(() => shop.all.count()).toBe(0)
    for (const one of ['fire', 'bath', 'oven', 'hardness tester', 'file']) await shop.add(one.replace('hardness ', ''))
    await shop.choice('coal fire', 'Kind').selectOption('gas')
    await shop.give('coal fire', 'Called', 'long forge')
    await shop.give('oil bucket', 'Holds', '12')
    expect(await says(shop.gear('oil bucket').locator('.problem'))).toMatch(/no unit/u)
    await shop.give('oil bucket', 'Holds', '5 gal')
    await shop.gear('oil bucket').locator('.problem').waitFor({ state: 'detached' })
    await shop.give('small oven', 'Its dial reads', '15 °F high')
    await shop.putAway('55 file')
    expect(await shop.all.count()).toBe(4)
    await shop.button('Take back').click()
    expect(await shop.all.count()).toBe(5)
    await page.reload()
    await shop.gear('long forge').waitFor()
    expect(await shop.gear('oil bucket').getByLabel('Holds').inputValue()).toBe('5 gal')
    expect(await shop.gear('small oven').getByLabel('Its dial reads').inputValue()).toBe('15 °F high')
    expect(await shop.choice('long forge', 'Kind').inputValue()).toBe('gas')
  })

  test('a finding is opened, its remedy tried, taken back, and kept', async () => {
    const page = await device.open(DESK, '/bench')
    await benchPage(page).piece('cold chisel')
    const [piece, treatment] = [piecePage(page), treatmentSide(page)]
    await piece.fullAnswer()
    await piece.side('Treatment')
    const asWritten = await treatment.steps()
    const splinters = treatment.flag(/struck end is too hard/u)
    await splinters.click()
    expect(await says(treatment.finding)).toMatch(/throws splinters.*Take care/u)
    const remedies = treatment.finding.getByRole('button', { name: /^Try:/u })
    expect(await remedies.count()).toBeGreaterThan(0)
    await remedies.first().click()
    await treatment.tried.getByText('What was found is gone.').waitFor()
    expect(await treatment.steps()).not.toEqual(asWritten)
    await piece.fullAnswer()
    await expect.poll(() => says(treatment.tried), { timeout: ANSWERS_MS }).not.toMatch(/first look/u)
    expect(await says(treatment.tried)).toMatch(/What was found is gone\..*struck end: chance \d+/u)
    expect(await splinters.count()).toBe(0)
    await treatment.tried.getByRole('button', { name: 'Take it back' }).click()
    await treatment.tried.waitFor({ state: 'detached' })
    expect(await treatment.steps()).toEqual(asWritten)
    await splinters.waitFor()
    await splinters.click()
    await remedies.first().click()
    await treatment.tried.getByRole('button', { name: 'Keep it' }).click()
    await treatment.tried.waitFor({ state: 'detached' })
    expect(await treatment.steps()).not.toEqual(asWritten)
    expect(await says(piece.undo)).toMatch(/^Undo : Try:/u)
    await piece.undo.click()
    expect(await treatment.steps()).toEqual(asWritten)
  })

  test('routes are proposed, one is taken, a step of it is changed by hand, and its cost is told', async () => {
    const page = await device.open()
    const [piece, treatment] = [piecePage(page), treatmentSide(page)]
    await piece.coarseOnly()
    await piece.side('Treatment')
    const before = await treatment.steps()
    await treatment.propose()
    expect(await treatment.routes.count()).toBeGreaterThanOrEqual(2)
    const words = await says(treatment.routes.first())
    expect(words).toMatch(/At the fire .*In the oven .*From first to last .*gear/u)
    await treatment.routes.getByRole('button', { name: 'Take this one' }).first().click()
    await treatment.sheet.waitFor({ state: 'detached' })
    const taken = await treatment.steps()
    expect(taken).not.toEqual(before)
    await piece.fullAnswer()
    await treatment.step(/Temper /u).click()
    const at = await treatment.field('At').inputValue()
    await treatment.field('At').press('ArrowDown')
    expect(await treatment.field('At').inputValue()).not.toBe(at)
    await expect.poll(() => says(treatment.cost), { timeout: ANSWERS_MS }).toMatch(/The last change.*dished face: chance \d+/u)
    await piece.undo.click()
    await piece.undo.click()
    expect(await treatment.steps()).toEqual(before)
    await treatment.side.getByRole('button', { name: /^Compare the routes/u }).click()
    await treatment.sheet.waitFor()
  })

  test('a treatment is written by hand: steps put in, moved, taken out; what cannot be read waits with its mend', async () => {
    const page = await device.open(DESK, '/bench')
    await benchPage(page).plainBar()
    const [piece, steel, treatment] = [piecePage(page), steelSide(page), treatmentSide(page)]
    await piece.side('Steel')
    await steel.choose('1045')
    await steel.known('1045')
    await piece.side('Treatment')
    await treatment.button('Write one by hand').click()
    const count = (await treatment.steps()).length
    await treatment.side.getByLabel('One more step').selectOption('Normalise')
    await treatment.button('Put it in').click()
    expect((await treatment.steps()).map((each) => each.split(' ')[1])).toEqual(
      ['Normalise', 'Heat', 'Carry', 'Quench', 'Temper'].slice(0, count + 1),
    )
    await treatment.type('To', 'bright orange')
    await treatment.side.locator('.step-form .problem').waitFor()
    await treatment.type('To', '1600 °F')
    expect((await treatment.steps())[0]).toMatch(/to 1600 °F/u)
    await treatment.button('Later').click()
    await treatment.button('Take out').click()
    expect(await treatment.steps()).toHaveLength(count)
    await topBar(page).goTo('Shop')
  })
})
