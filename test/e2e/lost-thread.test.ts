import type { Page } from 'playwright-core'
import { describe, expect, test } from 'vitest'
import { HAS_BROWSER } from './browser.ts'
import { onThePage } from './on-the-page.ts'
import { piecePage } from './pages/piece-page.ts'

/** Two full answers, on a machine that has other work too. */
const AT_MOST_MS = 180_000

describe.skipIf(!HAS_BROWSER)('the threads of the engine', { timeout: AT_MOST_MS }, () => {
  const { open, expectComplaint } = onThePage()

  /** The page, which lets the test end its threads from outside, as a browser does that is short of memory. */
  async function openedWithThreads(): Promise<{ page: Page; endAll: () => Promise<void> }> {
    const page = await open(undefined, '/bench')
    await page.addInitScript(() => {
      const threads: Worker[] = []
      const Plain = Worker
      Object.assign(globalThis, {
        Worker: class extends Plain {
          constructor(...how: ConstructorParameters<typeof Plain>) {
            super(...how)
            threads.push(this)
          }
        },
        endThreads: () => {
          for (const each of threads) each.terminate()
        },
      })
    })
    await page.goto(new URL('/', page.url()).href)
    await piecePage(page).opened()
    return { page, endAll: () => page.evaluate('endThreads()') }
  }
  const bar = (page: Page) => page.getByRole('progressbar', { name: 'Working out the full answer' })

  test('one that ends at its work is told, the drawing stays, and trying again brings the answer', async () => {
    expectComplaint(/WorkerLost/u)
    const { page, endAll } = await openedWithThreads()
    const piece = piecePage(page)
    const name = await piece.name.inputValue()
    // In the middle of its work, and not while it is being fetched.
    await bar(page).and(page.locator('[value]:not([value="0"])')).waitFor()
    await endAll()
    const told = page.getByRole('alert').filter({ hasText: 'Your drawing is kept' })
    await told.waitFor()
    expect(await page.getByRole('region', { name: 'The piece over its bath' }).isVisible()).toBe(true)
    expect(await piece.name.inputValue()).toBe(name)
    await told.getByRole('button', { name: 'Try again' }).click()
    await piece.fullAnswer()
    expect(await told.count()).toBe(0)
  })

  test('those that end while idle are replaced without a word', async () => {
    const { page, endAll } = await openedWithThreads()
    const piece = piecePage(page)
    await piece.fullAnswer()
    await endAll()
    await page.getByRole('button', { name: 'in °F' }).or(page.getByLabel('in °F')).first().check()
    await piece.coarseAnswer()
    await piece.fullAnswer()
    expect(await page.getByRole('alert').count()).toBe(0)
  })

  test('the full answer can be stopped, and gone on with', async () => {
    const { page } = await openedWithThreads()
    const piece = piecePage(page)
    await bar(page).waitFor()
    await page.getByRole('button', { name: 'Stop', exact: true }).click()
    await piece.outlook.filter({ hasText: 'stopped; only the coarse answer stands' }).waitFor()
    expect(await bar(page).count()).toBe(0)
    await page.getByRole('button', { name: 'Work it out' }).click()
    await piece.fullAnswer()
  })
})
