/**
 * Pictures of every screen, at a desk and on a phone, on both grounds, to be looked at; they go to screens/, which is kept out of the
 * repository. With --readme the few small ones that README shows are made anew in docs/pictures/.
 *
 *   npm run screens            all, into screens/
 *   npm run screens -- --only treatment
 *   npm run screens -- --readme
 */
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { DESK, openBrowser, PHONE } from '../test/e2e/browser.ts'
import { startServer } from '../test/e2e/served.ts'
import { pageBuilt } from './page-build.mjs'

const ROOT = join(import.meta.dirname, '..')
const ANSWER_MS = 60_000

interface Screen {
  readonly name: string
  /** From the example piece, open at its shape with its forecast. */
  readonly reach: (page: Page) => Promise<void>
}

const side = (name: string) => async (page: Page) => {
  await page.getByRole('navigation', { name: 'Sides of the piece' }).getByRole('button', { name }).click()
  await page.waitForTimeout(600)
}
const place = (name: string) => async (page: Page) => {
  await page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name }).click()
  await page.locator('main h1').first().waitFor()
}
const field = (value: string) => async (page: Page) => {
  await page.evaluate((wanted) => {
    const select = document.querySelector<HTMLSelectElement>('.field-choice select')
    const radio = document.querySelector<HTMLInputElement>(`.field-choice input[value="${wanted}"]`)
    if (select !== null) {
      select.value = wanted
      select.dispatchEvent(new Event('change', { bubbles: true }))
    } else radio?.click()
  }, value)
  await page.waitForTimeout(400)
}

const SCREENS: readonly Screen[] = [
  { name: 'shape', reach: async () => undefined },
  ...(['heat', 'became', 'quenched', 'tempered', 'band', 'colours'] as const).map((each) => ({
    name: `field-${each}`,
    reach: field(each),
  })),
  {
    name: 'heat-in-the-bath',
    reach: async (page) => {
      await field('heat')(page)
      const line = page.getByRole('slider', { name: /time/iu }).first()
      await line.focus()
      for (const key of ['Home', ...Array<string>(4).fill('PageUp'), ...Array<string>(8).fill('ArrowRight')])
        await line.press(key)
      await line.blur()
      await page.waitForTimeout(400)
    },
  },
  {
    name: 'steel',
    reach: async (page) => {
      await side('Steel')(page)
      await page.locator('.steel-known').waitFor({ timeout: ANSWER_MS })
    },
  },
  { name: 'treatment', reach: side('Treatment') },
  {
    name: 'routes',
    reach: async (page) => {
      await side('Treatment')(page)
      await page.getByRole('button', { name: 'Propose a treatment' }).click()
      await page
        .getByRole('button', { name: /take this/iu })
        .first()
        .waitFor({ timeout: 120_000 })
    },
  },
  {
    name: 'card',
    reach: async (page) => {
      await side('Card')(page)
      await page.locator('.qw-card').waitFor({ timeout: ANSWER_MS })
    },
  },
  { name: 'bench', reach: place('Bench') },
  { name: 'rack', reach: place('Rack') },
  { name: 'shop', reach: place('Shop') },
  { name: 'proof', reach: place('Proof') },
]

/** What README shows. */
const README_PICTURES = [
  ['field-tempered', 'desk', 'paper'],
  ['heat-in-the-bath', 'desk', 'slate'],
  ['treatment', 'phone', 'paper'],
] as const

async function look(
  browser: Browser,
  address: string,
  size: 'desk' | 'phone',
  ground: string,
  screens: readonly Screen[],
  into: string,
) {
  for (const screen of screens) {
    const context = await browser.newContext({ ...(size === 'desk' ? DESK : PHONE), locale: 'en-GB' })
    await context.addInitScript((kept) => localStorage.setItem('quenchwright.ground', kept), ground)
    const page = await context.newPage()
    try {
      await page.goto(address)
      await page.locator('.outlook-word', { hasText: 'HRC' }).waitFor({ timeout: ANSWER_MS })
      const kept = page.getByRole('button', { name: 'Good' })
      // Said once, and away by itself on a quick machine.
      await kept.click({ timeout: 15_000 }).catch(() => undefined)
      await screen.reach(page)
      const file = join(into, `${screen.name}-${size}-${ground}.png`)
      await page.screenshot({
        path: file,
        fullPage: size === 'phone' || ['bench', 'rack', 'shop', 'proof'].includes(screen.name),
      })
      console.log(file)
    } finally {
      await context.close()
    }
  }
}

if (!pageBuilt((words: string) => console.error(words))) throw new Error('the page could not be built')
const server = await startServer()
const browser = await openBrowser()
try {
  const wanted = process.argv.includes('--only') ? process.argv[process.argv.indexOf('--only') + 1] : undefined
  if (process.argv.includes('--readme')) {
    const into = join(ROOT, 'docs', 'pictures')
    mkdirSync(into, { recursive: true })
    for (const [name, size, ground] of README_PICTURES)
      await look(
        browser,
        server.address,
        size,
        ground,
        SCREENS.filter((each) => each.name === name),
        into,
      )
  } else {
    const into = join(ROOT, 'screens')
    mkdirSync(into, { recursive: true })
    const screens = SCREENS.filter(({ name }) => wanted === undefined || name.includes(wanted))
    for (const size of ['desk', 'phone'] as const)
      for (const ground of ['paper', 'slate']) await look(browser, server.address, size, ground, screens, into)
  }
} finally {
  await browser.close()
  await server.end()
}
