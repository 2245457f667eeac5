import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { HAS_BROWSER, openBrowser } from './browser.ts'
import { type Running, startServer } from './served.ts'

describe.skipIf(!HAS_BROWSER)('without network, after the first look', () => {
  let server: Running
  let browser: Browser
  let context: BrowserContext
  let page: Page

  beforeAll(async () => {
    server = await startServer()
    browser = await openBrowser()
    context = await browser.newContext()
    page = await context.newPage()
    await page.goto(server.address)
    // Said once everything is kept on the device.
    await page.getByText('it works without network').waitFor()
  })
  afterAll(async () => {
    await browser?.close()
    await server?.end()
  })

  test('network off: the page opens anew and works out a forecast', async () => {
    await context.setOffline(true)
    await opensAndAnswers(page)
    await context.setOffline(false)
  })

  test('the server gone: every place opens, the engine answers, what was typed is there', async () => {
    const name = page.getByLabel('Name of the piece')
    await name.fill('drift for the bridge railing')
    await name.press('Tab')
    // Kept a moment after the typing.
    await page.waitForTimeout(800)
    expect(await server.end('SIGTERM')).toBe(0)
    await opensAndAnswers(page)
    expect(await page.getByLabel('Name of the piece').inputValue()).toBe('drift for the bridge railing')
    for (const place of ['Rack', 'Shop', 'Proof', 'Bench']) {
      await page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: place }).click()
      await page.locator('main h1, main h2').first().waitFor()
      expect(await page.getByText('could not be fetched').count()).toBe(0)
    }
    // A new address in a new tab, straight from the device.
    const other = await context.newPage()
    await other.goto(`${server.address}/shop`)
    await other.locator('main h1, main h2').first().waitFor()
    await other.close()
  })
})

/** Opens the page anew and waits until the engine has worked out the full answer. */
async function opensAndAnswers(page: Page): Promise<void> {
  await page.reload()
  await page.getByLabel('Name of the piece').waitFor()
  await page.locator('.time-line[data-standing="full"]').waitFor({ timeout: 50_000 })
}
