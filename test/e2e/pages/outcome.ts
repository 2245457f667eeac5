import type { Page } from 'playwright-core'
import { says } from './eyes.ts'

/** What comes of a zone that is open on the shape side: one line, and the rest of it a tap away. */
export function outcomeOf(page: Page, zone: string) {
  const part = page.getByRole('region', { name: `What comes of ${zone}`, exact: true })
  return {
    first: part.locator('> p'),
    /** Opens a line and gives all that stands under it. */
    opened: async (line: RegExp): Promise<string> => {
      const fold = part.getByRole('group').filter({ has: page.locator('summary', { hasText: line }) })
      await fold.locator('summary').click()
      return says(fold)
    },
    skinPicture: part.getByRole('img', { name: /^Hardness by depth after tempering: .* HRC at the surface/u }),
    sections: part.getByRole('table'),
  }
}
