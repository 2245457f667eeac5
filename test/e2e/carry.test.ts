import { readFileSync } from 'node:fs'
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import { planLink } from '#contract/plan-link.ts'
import { readJobText } from '#contract/read-job.ts'
import { type Served, serve } from '#server/serve.ts'
import { complaints, HAS_BROWSER, openBrowser } from './browser.ts'

const LATCH = `piece: gate latch
steel: { grade: O1 }
profile:
  - { shape: flat, across: 5 x 20 mm, length: 90 mm }
zones:
  - { name: nose, from: 0 mm, to: 20 mm, aim: 50..54 HRC }
`

describe.skipIf(!HAS_BROWSER)('a piece is carried', () => {
  let server: Served
  let browser: Browser
  let context: BrowserContext
  let heard: string[]

  beforeAll(async () => {
    server = await serve({ port: 0 })
    browser = await openBrowser()
  })
  afterEach(() => context.close())
  afterAll(async () => {
    await browser?.close()
    await server?.close()
  })

  async function open(path = '/bench', options: BrowserContextOptions = {}, before?: () => void): Promise<Page> {
    context = await browser.newContext(options)
    heard = complaints(context)
    const page = await context.newPage()
    if (before !== undefined) await page.addInitScript(before)
    await page.goto(server.address + path)
    return page
  }

  const job = (name: string, text: string) => ({ name, mimeType: 'text/yaml', buffer: Buffer.from(text) })
  const told = (page: Page) => page.locator('.carry-told')
  const name = (page: Page) => page.getByLabel('Name of the piece')
  const menu = (page: Page) => page.getByRole('button', { name: 'File and link' })

  test('in as a file, out as a file that holds the same and the gear it is planned for', async () => {
    const page = await open()
    await page.setInputFiles('input[type=file]', job('latch.yaml', LATCH))
    await name(page).waitFor()
    expect(await name(page).inputValue()).toBe('gate latch')
    expect(await told(page).textContent()).toContain('latch.yaml is on the bench.')
    const coming = page.waitForEvent('download')
    await menu(page).click()
    await page.getByRole('button', { name: 'Save the job file' }).click()
    const download = await coming
    expect(download.suggestedFilename()).toBe('gate-latch.yaml')
    const { shop, ...saved } = readJobText(readFileSync(await download.path(), 'utf8'), 'saved') as Record<string, unknown>
    expect(saved).toEqual(readJobText(LATCH, 'latch'))
    expect(shop).toMatchObject({ baths: expect.any(Array), ovens: expect.any(Array) })
    expect(heard).toEqual([])
  })

  test('dropped anywhere on the page', async () => {
    const page = await open('/rack')
    await page.getByRole('heading', { name: 'The rack' }).waitFor()
    const files = await page.evaluateHandle((text) => {
      const held = new DataTransfer()
      held.items.add(new File([text], 'latch.yaml'))
      return held
    }, LATCH)
    await page.dispatchEvent('main', 'dragenter', { dataTransfer: files })
    await page.getByText('Let go:').waitFor()
    await page.dispatchEvent('main', 'drop', { dataTransfer: files })
    await name(page).waitFor()
    expect(await name(page).inputValue()).toBe('gate latch')
    expect(await page.getByText('Let go:').count()).toBe(0)
  })

  test('a file with faults opens with them; what is no job stays outside and says why', async () => {
    const page = await open()
    await page.setInputFiles('input[type=file]', job('latch.yaml', LATCH.replace('90 mm', '90')))
    await name(page).waitFor()
    expect(await told(page).textContent()).toMatch(/one fault to mend[\s\S]*profile\[0\]\.length: .*no unit/u)
    await page.getByRole('link', { name: 'Bench' }).click()
    const pieces = await page.locator('.piece-card').count()
    for (const [file, says] of [
      [job('broken.yaml', 'piece: [x\nsteel: {'), /broken\.yaml, line/u],
      [job('package.json', '{ "name": "x" }'), /package\.json is no job file: none of piece/u],
      [job('picture.yaml', '\u0000\u0001'), /not a text file/u],
    ] as const) {
      await page.setInputFiles('input[type=file]', file)
      await told(page).filter({ hasText: file.name }).waitFor()
      expect(await told(page).textContent()).toMatch(says)
      expect(await told(page).getAttribute('role')).toBe('alert')
    }
    expect(await page.locator('.piece-card').count()).toBe(pieces)
  })

  test('out as a link, in on another device', async () => {
    const page = await open('/', { permissions: ['clipboard-read', 'clipboard-write'] })
    await name(page).fill('latch for the north gate')
    await name(page).press('Tab')
    await menu(page).click()
    await page.getByRole('button', { name: 'Copy a link' }).click()
    await told(page).getByText('The link is copied.').waitFor()
    const link = await page.evaluate(() => navigator.clipboard.readText())
    expect(link.startsWith(`${server.address}/#plan=`)).toBe(true)
    await context.close()
    const other = await open(link.slice(server.address.length))
    await told(other).getByText('is on the bench').waitFor()
    expect(await name(other).inputValue()).toBe('latch for the north gate')
    expect(other.url()).not.toContain('plan=')
    // Opened anew it is the same piece, and not put on the bench once more.
    await other.reload()
    await name(other).waitFor()
    expect(await told(other).count()).toBe(0)
  })

  test('a link at any place of the page; one that is cut or newer says so', async () => {
    const link = await planLink(server.address, readJobText(LATCH, 'latch'))
    const hash = link.slice(link.indexOf('#'))
    const page = await open(`/shop${hash}`)
    await name(page).waitFor()
    expect(await name(page).inputValue()).toBe('gate latch')
    await page.evaluate(
      (cut) => {
        location.hash = cut
      },
      hash.slice(0, -9),
    )
    await told(page).getByText('The link was not opened.').waitFor()
    expect(await told(page).textContent()).toMatch(/cut short or changed/u)
    await page.evaluate(
      (newer) => {
        location.hash = newer
      },
      hash.replace('plan=1.', 'plan=9.'),
    )
    await told(page).getByText('newer Quenchwright').waitFor()
    expect(await name(page).inputValue()).toBe('gate latch')
  })

  test('storage refused: said for as long as it is so, and the work goes on', async () => {
    const page = await open('/', {}, () => {
      Object.defineProperty(IDBFactory.prototype, 'open', {
        value: () => {
          throw new DOMException('refused', 'SecurityError')
        },
      })
    })
    await page.getByRole('alert').filter({ hasText: 'refuses to keep anything' }).waitFor()
    await name(page).fill('kept in memory')
    await name(page).press('Tab')
    await page.getByRole('link', { name: 'Bench' }).click()
    await page.getByRole('link', { name: 'kept in memory' }).waitFor()
    expect(await page.getByRole('alert').textContent()).toContain('Save the piece as a file')
  })

  test('storage full: said, and taken back when there is room again', async () => {
    const page = await open('/', {}, () => {
      const { put } = IDBObjectStore.prototype
      IDBObjectStore.prototype.put = function (...given) {
        if ((globalThis as { full?: boolean }).full) throw new DOMException('full', 'QuotaExceededError')
        return put.apply(this, given)
      }
    })
    await name(page).waitFor()
    await page.evaluate(() => {
      ;(globalThis as { full?: boolean }).full = true
    })
    await name(page).fill('too much')
    await name(page).press('Tab')
    await page.getByRole('alert').filter({ hasText: 'storage of this device is full' }).waitFor()
    await page.evaluate(() => {
      ;(globalThis as { full?: boolean }).full = false
    })
    await name(page).fill('room again')
    await name(page).press('Tab')
    await page.getByRole('alert').filter({ hasText: 'is full' }).waitFor({ state: 'detached' })
    await page.reload()
    await name(page).waitFor()
    expect(await name(page).inputValue()).toBe('room again')
  })
})
