import type { Forecast } from '#contract/answers.ts'
import type { System } from '#units/length.ts'
import { type CardCode, cardCode } from './card-qr.ts'
import {
  type Block,
  beforeBlock,
  type CardType,
  footRows,
  headRow,
  heightOfRow,
  proofBlock,
  ROW_GAP_MM,
  type Row,
  stepBlocks,
} from './card-rows.ts'
import { CARD_FORMATS, type CardFormat, type CardSize, type Wordiness } from './card-sizes.ts'
import { type Face, linesOf, MM_PER_PT } from './card-type.ts'
import { type CardWords, cardWords } from './card-words.ts'

/** Everything about a card that is settled before it is written. */
export interface CardPlan {
  readonly format: CardFormat
  readonly type: CardType
  readonly wordiness: Wordiness
  /** The steps go on below the piece over the whole width. */
  readonly around: boolean
  readonly head: Row
  readonly blocks: readonly Block[]
  readonly foot: readonly Row[]
  readonly leftMm: number
  readonly pieceMm: number
  /** Between the blocks, so that they fill the height. */
  readonly gapMm: number
  readonly code: CardCode | undefined
  /** Said under the code, or in its place. */
  readonly codeSays: string
}

export interface CardAsked {
  readonly size: CardSize
  readonly units: System
  readonly link: string | undefined
  readonly generatedBy: string
  readonly face: Face
}

const LEAST_GAP: Readonly<Record<Block['kind'], number>> = { before: 0.6, step: 0.6, proof: 0.8 }
const MOST_GAP_MM = 3.2
/** Under the head, over the foot, and what a printer may round away. */
const RULES_MM = 4
const STEP_PT = 0.25
/** A step that begins so little below the piece may in print begin beside it. */
const CLEAR_MM = 1.5

/**
 * A layout for so small a sheet that everything is on it: whole sentences where there is room, fewer words where not, the largest
 * type that fits; then the steps around the piece, not only beside it; then without the code. Undefined where even that does not fit:
 * nothing that is to be done or minded is ever left out.
 */
export function fittedCard(forecast: Forecast, asked: CardAsked): CardPlan | undefined {
  const format = CARD_FORMATS[asked.size]
  const found = codeFor(asked, format)
  const bare = { leftMm: format.narrowMm, code: undefined, codeSays: 'code' in found ? NO_ROOM : found.says }
  const columns = 'code' in found ? [{ leftMm: format.leftMm, code: found.code, codeSays: found.says }, bare] : [bare]
  const said = format.wordiness.map((wordiness) => ({
    wordiness,
    words: cardWords(forecast, { wordiness, units: asked.units, generatedBy: asked.generatedBy }),
  }))
  for (const column of columns)
    for (const around of [false, true])
      for (const each of said) {
        const at = (bodyPt: number) => laidOut(asked, { format, bodyPt, around, ...each, ...column })
        // What does not fit in the smallest type fits in none.
        const least = at(format.leastPt)
        if (least === undefined) continue
        for (let bodyPt = format.mostPt; bodyPt > format.leastPt; bodyPt -= STEP_PT) {
          const plan = at(bodyPt)
          if (plan !== undefined) return plan
        }
        return least
      }
  return undefined
}

const NO_ROOM = 'No code on this one: the steps need its place. A larger card has it.'

function codeFor(
  { link }: CardAsked,
  format: CardFormat,
): { readonly code: CardCode; readonly says: string } | { readonly says: string } {
  if (link === undefined) return { says: '' }
  const code = cardCode(link, format.leftMm, format)
  if ('svg' in code) return { code, says: `Opens this plan at ${hostOf(link)}` }
  const needs = Number.isFinite(code.needsMm)
    ? `it needs ${Math.ceil(code.needsMm)} mm, and there are ${Math.floor(format.leftMm)}`
    : 'it is more than any code holds'
  return { says: `No code on this one: the plan is too long (${needs}). Open it from its file.` }
}

function hostOf(link: string): string {
  return link
    .replace(/#.*$/su, '')
    .replace(/^\w+:\/\//u, '')
    .replace(/\/$/u, '')
}

interface Choice {
  readonly format: CardFormat
  readonly wordiness: Wordiness
  readonly words: CardWords
  readonly bodyPt: number
  readonly around: boolean
  readonly leftMm: number
  readonly code: CardCode | undefined
  readonly codeSays: string
}

function laidOut({ face }: CardAsked, choice: Choice): CardPlan | undefined {
  const { format, wordiness, words, bodyPt, around, leftMm, code, codeSays } = choice
  const type: CardType = { bodyPt, sidePt: Math.max(format.leastSidePt, bodyPt * format.sideShare), face }
  const wideMm = format.widthMm - 2 * format.marginMm
  const head = headRow(words, type, format)
  const foot = footRows(words, type, format)
  const before = beforeBlock(words, type, format)
  const blocks = [
    ...(before === undefined ? [] : [before]),
    ...stepBlocks(words, type, format, wordiness.sentences),
    proofBlock(words, type, format),
  ]
  const bodyMm = [head, ...foot].reduce(
    (rest, each) => rest - heightOfRow(each, wideMm, format, face),
    format.heightMm - 2 * format.marginMm - RULES_MM,
  )
  const codeMm = (code?.sideMm ?? 0) + captionMm(codeSays, format, leftMm, face)
  const pieceMm = around ? format.aroundMm : bodyMm - codeMm
  if ((!around && pieceMm < format.pieceMm) || pieceMm + codeMm > bodyMm) return undefined
  let usedMm = 0
  for (const [i, block] of blocks.entries()) {
    if (i > 0) usedMm += LEAST_GAP[block.kind]
    const beside = !around || usedMm < pieceMm + codeMm + CLEAR_MM
    usedMm += heightOfBlock(block, beside ? wideMm - leftMm - format.gapMm : wideMm, format, face)
  }
  if (usedMm > bodyMm) return undefined
  const gapMm = Math.min(MOST_GAP_MM, (bodyMm - usedMm) / Math.max(1, blocks.length - 1))
  return { format, type, wordiness, around, head, blocks, foot, leftMm, pieceMm, gapMm, code, codeSays }
}

export function gapBefore({ kind }: Block, { gapMm }: CardPlan): number {
  return LEAST_GAP[kind] + gapMm
}

function heightOfBlock({ kind, rows }: Block, widthMm: number, format: CardFormat, face: Face): number {
  const rowsMm =
    rows.reduce((sum, each) => sum + heightOfRow(each, widthMm, format, face), 0) + ROW_GAP_MM * Math.max(0, rows.length - 1)
  return rowsMm + (kind === 'before' ? 2 : kind === 'proof' ? 1 : 0)
}

function captionMm(says: string, format: CardFormat, leftMm: number, face: Face): number {
  return says === ''
    ? 0
    : 1 + linesOf([{ text: says }], captionPt(format), leftMm, face) * captionPt(format) * MM_PER_PT * format.leading
}

export function captionPt({ sourcePt }: CardFormat): number {
  return sourcePt + 0.5
}
