import { readFileSync } from 'node:fs'
import { basename } from 'node:path'
import type { Page } from 'playwright-core'
import { piecePage } from './piece-page.ts'
import { topBar } from './top-bar.ts'

/** The pieces in hand, and how one comes onto the bench. */
export function benchPage(page: Page) {
  const opened = () => piecePage(page).opened()
  return {
    go: () => topBar(page).goTo('Bench'),
    /** A length of round bar, to be drawn into shape. */
    plainBar: async () => {
      await page.getByRole('button', { name: 'Plain bar' }).click()
      await opened()
    },
    piece: async (name: string) => {
      await page.getByRole('main').getByRole('link', { name, exact: true }).click()
      await opened()
    },
    /** A job file of this machine, or one that is written for the test. */
    jobFile: async (path: string, text = readFileSync(path, 'utf8')) => {
      await page
        .getByLabel('Job files to open')
        .first()
        .setInputFiles({ name: basename(path), mimeType: 'text/yaml', buffer: Buffer.from(text) })
      await opened()
    },
  }
}
