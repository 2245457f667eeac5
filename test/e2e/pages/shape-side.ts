import type { Locator, Page } from 'playwright-core'
import { eachSays } from './eyes.ts'
import { sideOf } from './piece-page.ts'

/** The shape in figures: sections from the other end down, zones with their aims. */
export function shapeSide(page: Page) {
  const side = sideOf(page, 'Shape')
  const entries = side.getByRole('listitem')
  const entry = (name: RegExp): Locator => entries.getByRole('button', { name }).first()
  return {
    side,
    entry,
    /** Takes a section or a zone in hand, unless it is. */
    open: async (name: RegExp): Promise<void> => {
      if ((await entry(name).getAttribute('aria-expanded')) !== 'true') await entry(name).click()
    },
    /** A figure of the section or the zone that is open. */
    field: (name: string): Locator => side.getByLabel(name, { exact: true }),
    type: async (name: string, typed: string): Promise<void> => {
      const field = side.getByLabel(name, { exact: true })
      await field.fill(typed)
      await field.press('Enter')
    },
    tool: (name: string): Locator => side.getByRole('toolbar').getByRole('button', { name, exact: true }),
    button: (name: string | RegExp): Locator => side.getByRole('button', { name }),
    /** The sections in one line each, from the other end down. */
    sections: () => eachSays(side.locator('ol').getByRole('listitem').locator('> button')),
  }
}
