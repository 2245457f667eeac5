import { existsSync } from 'node:fs'
import { type Browser, type BrowserContext, chromium } from 'playwright-core'

const BROWSER = process.env.CHROMIUM ?? '/usr/bin/chromium'

/** False where there is no browser: the tests that need one count as skipped, which scripts/setup.mjs says loudly. */
export const HAS_BROWSER = existsSync(BROWSER)

export function openBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: BROWSER,
    args: [
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
    ],
  })
}

/** A desk and a phone, as the design has them. */
export const DESK = { viewport: { width: 1440, height: 900 } }
export const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }

/** Everything that a page complains of: faults thrown, errors in its console, answers of 400 and more. */
export function complaints(context: BrowserContext): string[] {
  const heard: string[] = []
  context.on('weberror', (fault) => heard.push(`thrown: ${fault.error().message}`))
  context.on('console', (message) => {
    if (message.type() === 'error') heard.push(`console: ${message.text()}`)
  })
  context.on('response', (response) => {
    if (response.status() >= 400) heard.push(`${response.status()}: ${response.url()}`)
  })
  return heard
}
