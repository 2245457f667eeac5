import type { Page } from 'playwright-core'
import { eachSays } from './eyes.ts'

export const FIELDS = ['Heat', 'Became', 'Quenched', 'Tempered', 'Doubt', 'Colours'] as const

/** What stands about the drawing: what the cut shows, the hardness along it, what was found, the time line. */
export function stage(page: Page) {
  const along = page.getByRole('region', { name: 'Hardness along the piece' })
  const timeLine = page.getByRole('region', { name: 'Time line' })
  const choice = page.getByRole('group', { name: 'The cut shows' })
  return {
    along,
    /** The table of the curves: a height and its four figures a row. */
    alongRows: async (): Promise<string[]> => (await eachSays(along.getByRole('row'))).slice(1),
    /** `edge: aim 54..59 HRC, tempered 58 (56 to 60) HRC, chance 72 in 100`. */
    zoneWords: () => eachSays(along.getByRole('listitem')),
    show: (field: (typeof FIELDS)[number]) => choice.getByLabel(field, { exact: true }).check(),
    /** The same on a phone, where it is a list. */
    pick: (field: (typeof FIELDS)[number]) => page.getByRole('combobox', { name: 'The cut shows' }).selectOption(field),
    /** On a phone, what stands beside the piece. */
    turnTo: (what: 'Along it' | 'Found') => page.getByRole('group', { name: 'Beside the piece' }).getByLabel(what).check(),
    shown: (field: (typeof FIELDS)[number]) => choice.getByLabel(field, { exact: true }).isChecked(),
    legend: page.locator('.field-legend'),
    found: page.getByRole('region', { name: 'Found', exact: true }),
    timeLine,
    time: timeLine.getByRole('slider', { name: 'Time in the treatment' }),
    reading: timeLine.locator('.time-reading'),
    history: timeLine.locator('.point-history'),
  }
}
