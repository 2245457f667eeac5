import type { Page } from 'playwright-core'
import { says } from './eyes.ts'
import { sideOf } from './piece-page.ts'

/** The card of the piece, as it goes onto paper. */
export function cardSide(page: Page) {
  const side = sideOf(page, 'Card')
  const card = side.getByRole('article', { name: /: card$/u })
  return {
    side,
    card,
    print: side.getByRole('button', { name: 'Print the card' }),
    size: (says: string) => side.getByRole('group', { name: 'Paper' }).getByLabel(says, { exact: true }).check(),
    /** One box to tick a step. */
    boxes: card.getByRole('img', { name: 'box to tick' }),
    onPaper: async (): Promise<{
      readonly pages: number
      readonly widthMm: number
      readonly heightMm: number
      readonly text: string
    }> => {
      const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1')
      const [, width, height] = /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/u.exec(pdf) ?? []
      await page.emulateMedia({ media: 'print' })
      const text = await says(page.locator('body'))
      await page.emulateMedia({ media: null })
      return {
        pages: pdf.match(/\/Type\s*\/Page\b/gu)?.length ?? 0,
        widthMm: Math.round((Number(width) / 72) * 25.4),
        heightMm: Math.round((Number(height) / 72) * 25.4),
        text,
      }
    },
  }
}
