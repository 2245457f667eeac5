import type { Page } from 'playwright-core'
import { piecePage, sideOf } from './piece-page.ts'
import { shapeSide } from './shape-side.ts'
import { stage } from './stage.ts'
import { topBar } from './top-bar.ts'

export interface Screen {
  readonly name: string
  /** What is new on it, if the rest is as on the screen before. */
  readonly part?: string
  /** From the screen before, all of them in order. */
  readonly reach: () => Promise<unknown>
  readonly leave?: () => Promise<unknown>
}

const SIDE = '.piece-side'
const SHEET = 'dialog[open]'

/** Every screen of the page with the example piece on it, in an order to walk through. */
export function screens(page: Page): readonly Screen[] {
  const piece = piecePage(page)
  const shape = shapeSide(page)
  const around = stage(page)
  const treatment = sideOf(page, 'Treatment')
  return [
    { name: 'shape', reach: () => piece.side('Shape') },
    { name: 'shape, a section open', part: SIDE, reach: () => shape.entry(/^Working end/u).click() },
    { name: 'shape, a zone open', part: SIDE, reach: () => shape.entry(/^dished face/u).click() },
    {
      name: 'shape, at fault',
      reach: async () => {
        await shape.type('To', 'twenty')
        await shape.side.getByText('at fault').first().waitFor()
      },
      leave: async () => {
        await piece.undo.click()
        await piece.fullAnswer()
      },
    },
    {
      name: 'shapes to start from',
      part: SHEET,
      reach: async () => {
        await shape.button('Start from another shape').click()
        await page
          .getByRole('dialog')
          .getByRole('button')
          .filter({ has: page.locator('svg') })
          .first()
          .click()
        await page.getByRole('button', { name: 'Take this shape' }).waitFor()
      },
      leave: () => page.keyboard.press('Escape'),
    },
    {
      name: 'a finding, open',
      part: '.finding-flags',
      reach: async () => {
        const turns = page.getByRole('group', { name: 'Beside the piece' })
        if (await turns.isVisible()) await turns.getByLabel('Found').check()
        await around.found.getByRole('button', { name: /^Note/u }).first().click()
        await around.found.getByRole('dialog').waitFor()
      },
      leave: () => page.keyboard.press('Escape'),
    },
    {
      name: 'file and link',
      part: '.piece-head',
      reach: () => page.getByRole('button', { name: 'File and link' }).click(),
      leave: () => page.keyboard.press('Escape'),
    },
    { name: 'other tempers', part: '.time-line', reach: () => around.timeLine.getByLabel('Other tempers').check() },
    {
      name: 'steel',
      part: SIDE,
      reach: async () => {
        await piece.side('Steel')
        await sideOf(page, 'Steel').getByRole('heading', { name: 'How it is treated' }).waitFor()
      },
    },
    {
      name: 'steel beside another',
      part: SIDE,
      reach: async () => {
        const other = sideOf(page, 'Steel').getByLabel('Compare with')
        await other.fill('O1')
        await other.press('Enter')
        await sideOf(page, 'Steel').getByRole('columnheader', { name: 'O1' }).waitFor()
      },
    },
    { name: 'treatment', part: SIDE, reach: () => piece.side('Treatment') },
    {
      name: 'treatment, a step open',
      part: SIDE,
      reach: () => treatment.getByRole('button', { name: /Quench oil drum/u }).click(),
    },
    {
      name: 'routes',
      part: SHEET,
      reach: async () => {
        await treatment.getByRole('button', { name: 'Propose a treatment' }).click()
        await page.getByRole('dialog', { name: 'Routes side by side' }).waitFor()
      },
      leave: () => page.getByRole('dialog').getByRole('button', { name: 'Close' }).click(),
    },
    {
      name: 'card',
      part: SIDE,
      reach: async () => {
        await piece.side('Card')
        await page.getByRole('article', { name: /: card$/u }).waitFor()
      },
    },
    ...(['Bench', 'Rack', 'Shop', 'Proof'] as const).map((place) => ({ name: place, reach: () => topBar(page).goTo(place) })),
  ]
}
