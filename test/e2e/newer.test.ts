import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type Served, serve } from '#server/serve.ts'
import { HAS_BROWSER, openBrowser } from './browser.ts'
import { PAGE } from './built-page.ts'

describe.skipIf(!HAS_BROWSER)('a newer edition', () => {
  const folder = mkdtempSync(join(tmpdir(), 'newer-'))
  let server: Served
  let browser: Browser
  let page: Page

  beforeAll(async () => {
    cpSync(PAGE, folder, { recursive: true })
    server = await serve({ port: 0, page: folder })
    browser = await openBrowser()
    page = await browser.newPage()
    await page.goto(server.address)
    await page.getByText('it works without network').waitFor()
  })
  afterAll(async () => {
    await browser?.close()
    await server?.close()
    rmSync(folder, { recursive: true, force: true })
  })

  /** The same page with another title, as a later build would stand in its folder. */
  function built(title: string): void {
    const index = readFileSync(join(folder, 'index.html'), 'utf8').replace(/<title>.*<\/title>/u, `<title>${title}</title>`)
    const worker = readFileSync(join(folder, 'sw.js'), 'utf8')
    const changed = worker.replace(/("?url"?:\s*"index\.html",\s*"?revision"?:\s*")[^"]+/u, `$1${title.length}`)
    expect(changed).not.toBe(worker)
    for (const [name, text] of [
      ['index.html', index],
      ['sw.js', changed],
    ] as const) {
      writeFileSync(join(folder, name), text)
      for (const end of ['br', 'gz']) rmSync(join(folder, `${name}.${end}`), { force: true })
    }
  }

  test('waits to be asked for, and what is on the bench stays', async () => {
    await page.getByLabel('Name of the piece').fill('kept over')
    await page.getByLabel('Name of the piece').press('Tab')
    await page.waitForTimeout(800)
    built('Quenchwright, newer')
    await page.reload()
    await page.getByText('A newer Quenchwright is ready.').waitFor()
    expect(await page.title()).toBe('Quenchwright')
    // Put off: it is the old one still, and asks with the next visit.
    await page.getByRole('button', { name: 'Later' }).click()
    expect(await page.getByText('A newer Quenchwright').count()).toBe(0)
    await page.reload()
    expect(await page.title()).toBe('Quenchwright')
    await page.getByRole('button', { name: 'Use it' }).click()
    await expect.poll(() => page.title(), { timeout: 30_000 }).toBe('Quenchwright, newer')
    await page.getByLabel('Name of the piece').waitFor()
    expect(await page.getByLabel('Name of the piece').inputValue()).toBe('kept over')
  })
})
