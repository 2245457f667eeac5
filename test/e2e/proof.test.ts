import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { ValidationRecord } from '#report/validation-record.ts'
import { HAS_BROWSER, PHONE } from './browser.ts'
import { onThePage } from './on-the-page.ts'
import { says } from './pages/eyes.ts'
import { proofPage } from './pages/proof-page.ts'
import { topBar } from './pages/top-bar.ts'

const { checks } = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', '..', 'docs', 'validation.json'), 'utf8'),
) as ValidationRecord
const AC1 = 'Ac1 of named grades'
const ac1 = checks.find(({ name }) => name === AC1)

describe.skipIf(!HAS_BROWSER)('how far to trust the figures', () => {
  const device = onThePage()

  test('from the top bar: the table of docs/validation.json, a picture with a mark for each figure, sources, and the units chosen', async () => {
    const page = await device.open()
    const proof = proofPage(page)
    await topBar(page).metric()
    await proof.go()
    for (const { name, all, committed } of checks) {
      expect(await says(proof.check(name))).toContain(`off on average over ${all.n} figures`)
      expect(await proof.picture(name).count()).toBe(committed ? 1 : 0)
    }
    const error = ac1?.all.meanAbsolute ?? 0
    const row = proof.table.getByRole('row').filter({ has: page.getByRole('link', { name: AC1 }) })
    expect(await says(row)).toContain(`${error.toFixed(0)} °C`)
    await topBar(page).inches()
    await expect.poll(() => says(row)).toContain(`${(1.8 * error).toFixed(0)} °F`)

    await row.getByRole('link').click()
    await expect.poll(() => proof.check(AC1).evaluate((each) => Math.abs(each.getBoundingClientRect().top) < 40)).toBe(true)
    const marks = await proof.picture(AC1).locator('.mark').count()
    const families = new Set(ac1?.rows?.map(({ family }) => family)).size
    expect(marks).toBe((ac1?.all.n ?? 0) + families)
    await proof.check(AC1).getByText('Where the figures are from').click()
    expect(await says(proof.check(AC1))).toContain(ac1?.sources[0] ?? 'no source')
  })

  test('straight to its address on a phone: the lists from memory open, and nothing runs out of the screen', async () => {
    const page = await device.open(PHONE, '/proof')
    const proof = proofPage(page)
    const fires = await proof.fromMemory('Fires (')
    expect(await fires.count()).toBeGreaterThan(10)
    expect(await says(fires)).toContain('src/engine/surface-heat/fire.ts')
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.viewport.width)
  })
})
