import type { CardFormat } from './card-sizes.ts'
import { type Face, linesOf, MM_PER_PT, type Run, widthOf } from './card-type.ts'
import type { Blank, CardWords } from './card-words.ts'
import { element, escapeText } from './svg.ts'

/** Sizes of type on one card, chosen so that it fits. */
export interface CardType {
  readonly bodyPt: number
  readonly sidePt: number
  readonly face: Face
}

/** A paragraph as it is measured and as it is written: the two are made from the same words, so that neither forgets one. */
export interface Row {
  readonly runs: readonly Run[]
  readonly sizePt: number
  /** Taken from the width by a bar, a frame or a box at its left. */
  readonly indentMm: number
  readonly html: string
}

/** Rows that stand together: a step, the proof. */
export interface Block {
  readonly kind: 'before' | 'step' | 'proof'
  readonly rows: readonly Row[]
}

/** Between rows of a block [mm]. */
export const ROW_GAP_MM = 0.35
const BAR_MM = 2.2
const FRAME_MM = 2.4

/** The box to tick, with the room right of it. */
export function tickMm({ bodyPt }: CardType): { readonly boxMm: number; readonly indentMm: number } {
  const boxMm = bodyPt * MM_PER_PT * 0.95
  return { boxMm, indentMm: boxMm + bodyPt * MM_PER_PT * 0.5 }
}

export function heightOfRow({ runs, sizePt, indentMm }: Row, widthMm: number, { leading }: CardFormat, face: Face): number {
  const share = Math.max(1, ...runs.map((run) => ('share' in run ? (run.share ?? 1) : 1)))
  return (linesOf(runs, sizePt, widthMm - indentMm, face) + share - 1) * sizePt * MM_PER_PT * leading
}

/** Piece, steel, and who and when. */
export function headRow(words: CardWords, type: CardType, format: CardFormat): Row {
  const share = 1.4
  return row(
    'qw-head',
    [{ text: words.piece, bold: true, share, tag: 'h1' }, { text: words.steel, tag: 'steel' }, ...words.headBlanks],
    type.bodyPt,
    type,
    format,
  )
}

/** What stands against it, in a frame before the first step. */
export function beforeBlock({ before }: CardWords, type: CardType, format: CardFormat): Block | undefined {
  if (before.length === 0) return undefined
  return {
    kind: 'before',
    rows: before.map(({ head, says }) =>
      row('qw-against', [{ text: head, bold: true }, { text: says }], type.sidePt, type, format, FRAME_MM),
    ),
  }
}

/** `apart`: heading, words and blanks each in lines of their own; else they run on. */
export function stepBlocks({ steps }: CardWords, type: CardType, format: CardFormat, apart: boolean): Block[] {
  const { indentMm } = tickMm(type)
  return steps.map(({ head, clock, does, care, blanks }) => {
    const clockRun: Said = { text: clock, tag: 'clock' }
    // A caution of a few words needs no lines of its own.
    const within = !apart && care !== '' && care.length < SHORT_CARE
    const rows = apart
      ? [
          row('qw-do', [clockRun, { text: head, bold: true, tag: 'h2' }], type.bodyPt, type, format, indentMm),
          row('qw-do', [{ text: does }], type.bodyPt, type, format, indentMm),
        ]
      : [
          row(
            'qw-do',
            [
              clockRun,
              { text: `${head}.`, bold: true, tag: 'h2' },
              { text: does },
              ...blanks,
              ...(within ? [{ text: care, tag: 'care' as const }] : []),
            ],
            type.bodyPt,
            type,
            format,
            indentMm,
          ),
        ]
    if (care !== '' && !within)
      rows.push(
        row(
          'qw-care',
          [{ text: TAKE_CARE, bold: true }, { text: care }],
          type.sidePt,
          type,
          format,
          (apart ? indentMm : 0) + BAR_MM,
        ),
      )
    if (apart && blanks.length > 0) rows.push(row('qw-fill', blanks, type.sidePt, type, format, indentMm))
    return { kind: 'step', rows }
  })
}

const TAKE_CARE = 'Take\u00a0care.'
const SHORT_CARE = 64

/** Zone by zone what was aimed at, what is forecast, and room for what came of it. */
export function proofBlock({ zones, proof }: CardWords, type: CardType, format: CardFormat): Block {
  const last = zones.length - 1
  return {
    kind: 'proof',
    rows: zones.map(({ name, says, blanks }, i) =>
      row(
        'qw-zone',
        [{ text: name, bold: true }, { text: says }, ...blanks, ...(i === last ? proof : [])],
        type.sidePt,
        type,
        format,
      ),
    ),
  }
}

export function footRows({ foot }: CardWords, type: CardType, format: CardFormat): Row[] {
  return foot.map((text) => row('qw-foot', [{ text }], format.sourcePt, type, format))
}

/** The blank between a figure and its unit, where no line breaks. */
const UNIT = /(?<=\d) (?=°|(?:min|h|s|mm|in|HRC)\b)/gu

type Said = {
  readonly text: string
  readonly bold?: boolean
  readonly share?: number
  readonly tag?: 'h1' | 'h2' | 'clock' | 'care' | 'steel'
}

function row(
  kind: string,
  parts: readonly (Said | Blank)[],
  sizePt: number,
  type: CardType,
  format: CardFormat,
  indentMm = 0,
): Row {
  const runs: Run[] = []
  const written: string[] = []
  for (const part of parts)
    if ('label' in part) {
      const { lengthMm, html } = blank(part, sizePt, type, format)
      runs.push({ lengthMm })
      written.push(html)
    } else if (part.text !== '') {
      const text = part.text.replace(UNIT, '\u00a0')
      runs.push(...runsOf({ ...part, text }, sizePt, type.face))
      written.push(said({ ...part, text }))
    }
  return {
    runs,
    sizePt,
    indentMm,
    html: element('div', { class: kind, style: `font-size:${sizePt}pt${marginOf(kind, indentMm)}` }, written.join(' ')),
  }
}

/** A bar and a frame stand within their row; a box to tick stands beside it. */
function marginOf(kind: string, indentMm: number): string {
  const leftMm = indentMm - (kind === 'qw-care' ? BAR_MM : kind === 'qw-against' ? FRAME_MM : 0)
  return leftMm > 0 ? `;margin-left:${mm(leftMm)}` : ''
}

function runsOf({ text, bold = false, share, tag }: Said, sizePt: number, face: Face): Run[] {
  const em = sizePt * MM_PER_PT
  switch (tag) {
    // The clock stands in the first line at its right, whatever else does.
    case 'clock':
      return [{ lengthMm: widthOf(text, sizePt, face) + em }]
    case 'steel':
      return [{ text }, { lengthMm: em }]
    case 'care':
      return [{ lengthMm: BAR_MM }, { text: TAKE_CARE, bold: true }, { text }]
    default:
      return [{ text, bold, ...(share === undefined ? {} : { share }) }]
  }
}

function said({ text, bold, share, tag }: Said): string {
  const style = share === undefined ? {} : { style: `font-size:${share}em` }
  switch (tag) {
    case 'h1':
    case 'h2':
      return element(tag, style, escapeText(text))
    case 'clock':
    case 'steel':
      return element('span', { class: `qw-${tag}` }, escapeText(text))
    case 'care':
      return element('span', { class: 'qw-care' }, `<b>${TAKE_CARE}</b> `, escapeText(text))
    default:
      return bold === true ? element('b', style, escapeText(text)) : escapeText(text)
  }
}

/** A label with a line to write on, or a small box for each time. */
function blank({ label, room }: Blank, sizePt: number, type: CardType, format: CardFormat): { lengthMm: number; html: string } {
  const em = sizePt * MM_PER_PT
  const labelMm = widthOf(label, sizePt, type.face) + 0.35 * em
  if (typeof room === 'object') {
    const box = element('i', { class: 'qw-time', style: `width:${mm(0.8 * em)};height:${mm(0.8 * em)}` }, '')
    return {
      lengthMm: labelMm + room.boxes * 1.1 * em + 0.4 * em,
      html: element(
        'span',
        { class: 'qw-blank', 'aria-label': `${label}: ${room.boxes} boxes to tick` },
        escapeText(label),
        box.repeat(room.boxes),
      ),
    }
  }
  const lineMm = format.blankMm * (room === 'word' ? 1.5 : 1)
  return {
    lengthMm: labelMm + lineMm + 0.4 * em,
    html: element(
      'span',
      { class: 'qw-blank' },
      escapeText(label),
      element('i', { class: 'qw-line', style: `width:${mm(lineMm)}` }, ''),
    ),
  }
}

export function mm(length: number): string {
  return `${Math.round(length * 100) / 100}mm`
}
