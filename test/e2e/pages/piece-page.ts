import type { Locator, Page } from 'playwright-core'

export type SideName = 'Shape' | 'Steel' | 'Treatment' | 'Card'

/** A piece that is open: its name, where its forecast stands, undo, and the way to its sides. */
export function piecePage(page: Page) {
  const timeLine = page.getByRole('region', { name: 'Time line' })
  const answered = (standing: string): Promise<void> => timeLine.and(page.locator(`[data-standing="${standing}"]`)).waitFor()
  return {
    name: page.getByLabel('Name of the piece'),
    /** One line on the forecast. */
    outlook: page.locator('.outlook-word [role=status]'),
    undo: page.getByRole('button', { name: /^Undo/u }),
    redo: page.getByRole('button', { name: /^Redo/u }),
    fullAnswer: () => answered('full'),
    coarseAnswer: () => answered('coarse'),
    /** The first look stands, and nothing further is worked out: for what can be seen of it at once. */
    coarseOnly: async (): Promise<void> => {
      await page.getByRole('button', { name: 'Stop', exact: true }).click()
      await answered('coarse')
    },
    side: async (name: SideName): Promise<Locator> => {
      await page.getByRole('navigation', { name: 'Sides of the piece' }).getByRole('button', { name }).click()
      const side = sideOf(page, name)
      await side.waitFor()
      await side.getByText('Fetching this part').waitFor({ state: 'detached' })
      return side
    },
    /** One of the pieces of the example workshop, from the bench of a newcomer. */
    opened: async (): Promise<void> => {
      await page.getByLabel('Name of the piece').waitFor()
      await sideOf(page, 'Shape').getByRole('heading', { name: 'Sections' }).waitFor()
    },
  }
}

export function sideOf(page: Page, name: SideName): Locator {
  return page.getByRole('region', { name, exact: true })
}
