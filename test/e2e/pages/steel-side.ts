import type { Page } from 'playwright-core'
import { sideOf } from './piece-page.ts'

/** What the piece is made of, and what is known of it. */
export function steelSide(page: Page) {
  const side = sideOf(page, 'Steel')
  const give = async (name: string, typed: string): Promise<void> => {
    const field = side.getByLabel(name, { exact: true })
    await field.fill(typed)
    await field.press('Enter')
  }
  return {
    side,
    field: side.getByLabel('Steel', { exact: true }),
    /** By name, by analysis, or `unknown`. */
    choose: (typed: string) => give('Steel', typed),
    /** What it is called once it is looked up. */
    known: (name: string | RegExp) => side.getByRole('heading', { name, level: 2 }).waitFor(),
    compareWith: (typed: string) => give('Compare with', typed),
    button: (name: string | RegExp) => side.getByRole('button', { name }),
    table: (column: string) => side.getByRole('table').filter({ has: page.getByRole('columnheader', { name: column }) }),
  }
}
