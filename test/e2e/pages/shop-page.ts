import type { Locator, Page } from 'playwright-core'

/** The gear of the shop, set up once. */
export function shopPage(page: Page) {
  const main = page.getByRole('main')
  const gear = (name: string): Locator => main.getByRole('listitem', { name, exact: true })
  return {
    gear,
    all: main.getByRole('listitem'),
    add: (one: string) => main.getByRole('button', { name: new RegExp(`^Add an? ${one}$`, 'u') }).click(),
    give: async (name: string, field: string, typed: string): Promise<void> => {
      const written = gear(name).getByLabel(field, { exact: true })
      await written.fill(typed)
      await written.press('Enter')
    },
    choice: (name: string, field: string) => gear(name).getByRole('combobox', { name: field }),
    putAway: (name: string) => main.getByRole('button', { name: `Put away ${name}`, exact: true }).click(),
    button: (name: string) => main.getByRole('button', { name, exact: true }),
  }
}
