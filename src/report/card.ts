import type { Forecast } from '#contract/answers.ts'
import type { System } from '#units/length.ts'
import { type CardAsked, type CardPlan, captionPt, fittedCard, gapBefore } from './card-fit.ts'
import { cardPiece } from './card-piece.ts'
import { type Block, mm, tickMm } from './card-rows.ts'
import type { CardFormat, CardSize } from './card-sizes.ts'
import { CARD_STYLE, cardPageRule } from './card-style.ts'
import { element, escapeText } from './svg.ts'

export interface CardOptions {
  readonly size: CardSize
  readonly units: System
  /** What the code on the card opens (`planLink`); without it the card has none. */
  readonly link?: string
  /** Said at the foot: program, version, and when, if the caller has a clock. */
  readonly generatedBy: string
  /** True where Source Sans 3 stands ready: more goes onto a card than in whatever face a machine has. */
  readonly ownFace?: boolean
}

export interface CardPageOptions extends Omit<CardOptions, 'ownFace'> {
  /** Source Sans 3 as `src` of a font face, `url(data:font/woff2;base64,...)`, to travel with the page. */
  readonly faceSrc?: string
}

/** The treatment does not go onto a card of this size without leaving something out, which is never done. */
export class CardTooSmall extends Error {
  override readonly name = 'CardTooSmall'
  readonly size: CardSize
  /** The smallest size that takes it; undefined when none does. */
  readonly take: CardSize | undefined

  constructor(size: CardSize, take: CardSize | undefined) {
    super(
      take === undefined
        ? 'the treatment has more steps, zones or cautions than one sheet takes, and nothing is left out of a card; print the report, or cut the treatment in two jobs'
        : `the steps and their cautions do not go onto ${size}, and nothing is left out of a card; ${take} takes them`,
    )
    this.size = size
    this.take = take
  }
}

/**
 * One tool's treatment on one sheet of paper, to carry to the fire: a page that stands by itself, no script, nothing fetched.
 * Every step has its box, its clock, its blanks and all its cautions, on every size. Throws `CardTooSmall`.
 */
export function cardPage(forecast: Forecast, { faceSrc, ...options }: CardPageOptions): string {
  const { size } = options
  const fragment = cardFragment(forecast, { ...options, ownFace: faceSrc !== undefined })
  const face = faceSrc === undefined ? '' : `@font-face{font-family:"Source Sans 3 Variable";src:${faceSrc};font-weight:200 900}`
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    element('title', {}, escapeText(`${forecast.piece}: card, ${size}`)),
    `<style>${cardPageRule(size)}${face}${PAGE_STYLE}${CARD_STYLE}</style>`,
    '</head>',
    '<body>',
    fragment,
    '</body>',
    '</html>',
    '',
  ].join('\n')
}

const PAGE_STYLE =
  'html,body{margin:0;padding:0;background:#fff}@media screen{body{background:#d9d6d0;padding:6mm;min-width:max-content}.qw-card{margin:0 auto;box-shadow:0 0 2mm rgb(0 0 0/30%)}}'

/** The card by itself, for a page that holds `CARD_STYLE` and, for printing, `cardPageRule`. Throws `CardTooSmall`. */
export function cardFragment(forecast: Forecast, options: CardOptions): string {
  const plan = fittedCard(forecast, askedBy(options))
  if (plan === undefined) throw new CardTooSmall(options.size, smallestCard(forecast, options))
  return written(forecast, plan, options)
}

/** The smallest size that takes the treatment, of the two large ones the one that goes with the units; undefined when none does. */
export function smallestCard(forecast: Forecast, options: Omit<CardOptions, 'size'>): CardSize | undefined {
  const large: CardSize[] = options.units === 'inch' ? ['Letter', 'A4'] : ['A4', 'Letter']
  const sizes: CardSize[] = ['3x5', 'A6', 'A5', ...large]
  return sizes.find((size) => fittedCard(forecast, askedBy({ ...options, size })) !== undefined)
}

function askedBy({ size, units, link, generatedBy, ownFace }: CardOptions): CardAsked {
  return { size, units, link, generatedBy, face: ownFace === true ? 'own' : 'any' }
}

function written(forecast: Forecast, plan: CardPlan, { size, units }: CardOptions): string {
  const { format, type, around, head, blocks, foot, leftMm, pieceMm, code, codeSays } = plan
  const piece = cardPiece(forecast, {
    units,
    widthMm: leftMm,
    heightMm: pieceMm,
    sizePt: Math.min(type.sidePt, 9),
    face: type.face,
  })
  const caption =
    codeSays === ''
      ? ''
      : element('div', { class: 'qw-caption', style: `font-size:${captionPt(format)}pt` }, escapeText(codeSays))
  const steps = blocks.filter(({ kind }) => kind === 'step')
  const firstStep = blocks.indexOf(steps[0] ?? (blocks[0] as Block))
  return element(
    'article',
    {
      class: `qw-card qw-card-${size.toLowerCase()}`,
      lang: 'en',
      'aria-label': `${forecast.piece}: card`,
      // A hair under the sheet, so that no rounding asks for a second one.
      style: `width:${mm(format.widthMm)};min-height:${mm(format.heightMm - 0.4)};padding:${mm(format.marginMm)};line-height:${format.leading}`,
    },
    element('header', {}, head.html),
    element(
      'div',
      { class: around ? 'qw-around' : 'qw-sheet', ...(around ? {} : { style: `gap:${mm(format.gapMm)}` }) },
      element(
        'div',
        { class: 'qw-left', style: `width:${mm(leftMm)}${around ? `;margin-right:${mm(format.gapMm)}` : ''}` },
        piece.svg,
        around ? '' : notes(pieceMm - piece.heightMm, format),
        element('div', {}, code?.svg ?? '', caption),
      ),
      element(
        'div',
        { class: 'qw-right' },
        ...blocks.slice(0, firstStep).map((block) => group('div', block, plan, true)),
        element('ol', {}, ...steps.map((block, i) => group('li', block, plan, firstStep === 0 && i === 0))),
        ...blocks.slice(firstStep + steps.length).map((block) => group('div', block, plan, false)),
      ),
    ),
    element('footer', { class: 'qw-feet' }, ...foot.map(({ html }) => html)),
  )
}

/** Lines to write on where the piece leaves room. */
function notes(roomMm: number, { leastPt }: CardFormat): string {
  const lineMm = leastPt * 0.65
  const lines = Math.min(12, Math.floor((roomMm - NOTES_HEAD_MM) / lineMm))
  if (lines < 2) return ''
  const rule = element('div', { style: `height:${mm(lineMm)}` }, '')
  return element('div', { class: 'qw-notes', style: `font-size:${leastPt - 1}pt` }, 'Notes', rule.repeat(lines))
}

const NOTES_HEAD_MM = 8

function group(name: 'div' | 'li', block: Block, plan: CardPlan, first: boolean): string {
  const { kind, rows } = block
  const gap = first ? {} : { style: `margin-top:${mm(gapBefore(block, plan))}` }
  const inside = rows.map(({ html }) => html)
  if (kind !== 'step') return element(name, { class: `qw-${kind} qw-rows`, ...gap }, ...inside)
  const { boxMm } = tickMm(plan.type)
  const box = element(
    'i',
    { class: 'qw-tick', role: 'img', 'aria-label': 'box to tick', style: `width:${mm(boxMm)};height:${mm(boxMm)}` },
    '',
  )
  return element(name, gap, box, element('div', { class: 'qw-rows' }, ...inside))
}
