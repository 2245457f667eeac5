import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type Served, serve } from '#server/serve.ts'
import { complaints, DESK, HAS_BROWSER, openBrowser, PHONE } from './browser.ts'

describe.skipIf(!HAS_BROWSER)('the bench', () => {
  let server: Served
  let browser: Browser

  beforeAll(async () => {
    server = await serve({ port: 0 })
    browser = await openBrowser()
  })
  afterAll(async () => {
    await browser?.close()
    await server?.close()
  })

  async function bench(options: Parameters<Browser['newContext']>[0]): Promise<{ page: Page; heard: string[] }> {
    const context = await browser.newContext(options)
    const heard = complaints(context)
    const page = await context.newPage()
    await page.goto(`${server.address}/bench`)
    await page.locator('.piece-card').first().waitFor()
    return { page, heard }
  }

  const names = (page: Page) => page.locator('.piece-card h2').allInnerTexts()

  test.each([
    ['a desk', DESK],
    ['a phone', PHONE],
  ])('on %s: put away and taken back, copied, and nothing runs out at the side', async (_, screen) => {
    const { page, heard } = await bench(screen)
    const before = await names(page)
    await page.getByRole('button', { name: `Put away ${before[1]}` }).click()
    expect(await names(page)).not.toContain(before[1])
    await page.reload()
    await page.locator('.piece-card').first().waitFor()
    expect(await names(page)).toHaveLength(before.length - 1)
    await page.getByRole('button', { name: `Put away ${before[0]}` }).click()
    await page.getByRole('button', { name: 'Take back' }).click()
    expect(await names(page)).toHaveLength(before.length - 1)
    await page.getByRole('button', { name: `Copy ${before[0]}` }).click()
    await page.getByLabel('Name of the piece').waitFor()
    expect(await page.getByLabel('Name of the piece').inputValue()).toBe(`${before[0]}, copy`)
    await page.goBack()
    await page.locator('.piece-card').first().waitFor()
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
    ).toBeLessThanOrEqual(0)
    const small = await page
      .locator('main button:visible, main h2 a:visible')
      .evaluateAll((all) =>
        all.filter((each) => each.matches('button') && each.getBoundingClientRect().height < 44).map((each) => each.textContent),
      )
    expect(small).toEqual([])
    expect(heard).toEqual([])
    await page.context().close()
  })

  test('my own shop is one touch away from the example one, and taken back by one', async () => {
    const { page } = await bench(DESK)
    const before = await names(page)
    await page.getByRole('button', { name: 'Start my own shop' }).click()
    await page.getByRole('heading', { name: 'The shop' }).waitFor()
    expect(page.url()).toBe(`${server.address}/shop`)
    expect(await page.locator('.entry').count()).toBe(0)
    await page.getByRole('link', { name: 'Bench' }).click()
    await page.getByText('Nothing lies on the bench.').waitFor()
    await page.getByRole('button', { name: 'Take back' }).click()
    expect((await names(page)).toSorted()).toEqual(before.toSorted())
    await page.context().close()
  })

  test('a new piece: from a shape or from a plain bar', async () => {
    const { page, heard } = await bench(DESK)
    await page.getByRole('button', { name: 'Plain bar' }).click()
    await page.getByLabel('Name of the piece').waitFor()
    expect(await page.getByLabel('Name of the piece').inputValue()).toBe('new piece')
    await page.getByRole('link', { name: 'Bench' }).click()
    await page.getByRole('button', { name: 'New piece', exact: true }).click()
    await page.locator('.starting-kind').first().click()
    await page.getByRole('button', { name: 'Take this shape' }).click()
    await page.getByLabel('Name of the piece').waitFor()
    expect(await page.getByRole('dialog').count()).toBe(0)
    await page.getByRole('link', { name: 'Bench' }).click()
    await page.locator('.piece-card').first().waitFor()
    expect(await page.locator('.piece-card').count()).toBe(5)
    expect(heard).toEqual([])
    await page.context().close()
  })
})
