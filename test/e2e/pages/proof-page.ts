import type { Locator, Page } from 'playwright-core'
import { topBar } from './top-bar.ts'

/** How far to trust the figures: what they are off by, each check with its picture, and what is from memory. */
export function proofPage(page: Page) {
  const main = page.getByRole('main')
  return {
    go: () => topBar(page).goTo('Proof'),
    table: main.getByRole('table', { name: 'Error and aim of each forecast' }),
    check: (name: string): Locator => main.getByRole('region', { name, exact: true }),
    picture: (name: string): Locator => main.getByRole('region', { name, exact: true }).locator('figure svg'),
    /** Opens one of the lists and gives what it holds. */
    fromMemory: async (name: string): Promise<Locator> => {
      const list = main.locator('details').filter({ has: page.locator('summary', { hasText: name }) })
      await list.locator('summary').click()
      return list.getByRole('listitem')
    },
  }
}
