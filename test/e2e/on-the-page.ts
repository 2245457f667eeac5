import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect } from 'vitest'
import { type Served, serve } from '#server/serve.ts'
import { complaints, DESK, openBrowser } from './browser.ts'

/** A machine with other work to do takes its time; what is not there by then does not come. */
const WAIT_MS = 60_000

/** Keeping the page for use without network has a test of its own; here it is not let in the way. */
const NOT_KEPT = /this browser does not keep the page/u

export interface OnThePage {
  /** The page at an address of the server, in a browser that has never seen it. */
  readonly open: (options?: BrowserContextOptions, path?: string) => Promise<Page>
  readonly address: () => string
  /** Complaints that the test is about; whatever else the page complains of fails it. */
  readonly expectComplaint: (words: RegExp) => void
}

/** One server and one browser for the tests of a file. Every test has a device of its own, and leaves no complaint of the page. */
export function onThePage(): OnThePage {
  let server: Served
  let browser: Browser
  let expected = [NOT_KEPT]
  const devices: { readonly context: BrowserContext; readonly heard: readonly string[] }[] = []

  beforeAll(async () => {
    server = await serve({ port: 0 })
    browser = await openBrowser()
  })
  afterEach(async () => {
    const heard = devices.flatMap((device) => device.heard).filter((words) => !expected.some((each) => each.test(words)))
    expected = [NOT_KEPT]
    for (const { context } of devices.splice(0)) await context.close()
    expect(heard).toEqual([])
  })
  afterAll(async () => {
    await browser?.close()
    await server?.close()
  })

  return {
    async open(options = DESK, path = '/') {
      const context = await browser.newContext({ locale: 'en-GB', serviceWorkers: 'block', ...options })
      context.setDefaultTimeout(WAIT_MS)
      devices.push({ context, heard: complaints(context) })
      const page = await context.newPage()
      await page.goto(server.address + path)
      return page
    },
    address: () => server.address,
    expectComplaint: (words) => {
      expected.push(words)
    },
  }
}
