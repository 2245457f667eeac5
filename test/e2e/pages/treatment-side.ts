import type { Locator, Page } from 'playwright-core'
import { eachSays } from './eyes.ts'
import { sideOf } from './piece-page.ts'

/** The treatment step by step, what a change of it costs, and the routes that are proposed. */
export function treatmentSide(page: Page) {
  const side = sideOf(page, 'Treatment')
  const sheet = page.getByRole('dialog', { name: 'Routes side by side' })
  return {
    side,
    /** What is to be done, in one line a step, without the clock of the forecast. */
    steps: async (): Promise<string[]> =>
      (await eachSays(side.locator('.step-touch'))).map((words) => words.replace(/ (?:at the start,|after \d).*$/u, '')),
    step: (name: RegExp): Locator => side.getByRole('button', { name }).first(),
    field: (name: string): Locator => side.getByLabel(name, { exact: true }),
    type: async (name: string, typed: string): Promise<void> => {
      const field = side.getByLabel(name, { exact: true })
      await field.fill(typed)
      await field.press('Enter')
    },
    button: (name: string): Locator => side.getByRole('button', { name, exact: true }),
    cost: side.getByRole('complementary'),
    sheet,
    routes: sheet.getByRole('article'),
    propose: async (): Promise<void> => {
      await side.getByRole('button', { name: /^Propose/u }).click()
      await sheet.waitFor()
    },
    /** A finding on the drawing, closed. */
    flag: (name: RegExp): Locator => page.getByRole('region', { name: 'Found', exact: true }).getByRole('button', { name }),
    /** The finding that is open. */
    finding: page.getByRole('region', { name: 'Found', exact: true }).getByRole('dialog'),
    /** What is being tried. */
    tried: page.getByRole('region', { name: 'Tried' }),
  }
}
