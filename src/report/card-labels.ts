import { type Face, widthOf } from './card-type.ts'
import { spreadLabels } from './label-places.ts'
import { element, label } from './svg.ts'

export interface ZoneName {
  readonly name: string
  readonly says: string
  readonly assumed: boolean
  readonly from_mm: number
  readonly to_mm: number
}

/** Surface of a bath on the drawing. */
export interface Level {
  readonly atMm: number
  /** How deep, where only part of the piece goes in. */
  readonly says: string | undefined
}

/** Where names may stand on the drawing, in millimetres of paper. */
export interface LabelPlace {
  readonly lineMm: number
  readonly sizePt: number
  readonly face: Face
  readonly widthMm: number
  /** Height of the upper end. */
  readonly topMm: number
  readonly bracketMm: number
  readonly labelsMm: number
  y(xMm: number): number
}

export interface CardLabel {
  readonly lines: readonly string[]
  readonly atMm: number
  readonly strong: boolean
}

/** Names may go so far below the working end before the words of the bath. */
export const LABELS_BELOW_MM = 1.1
const APART_MM = 0.6

/**
 * Names with their aims and the depth of each dip; where they are taller than the piece they take `extraMm` below it, at most
 * `spareMm`, or depths and then aims are left to the steps and the proof beside the drawing, which have them too.
 */
export function labelsThatFit(
  zones: readonly ZoneName[],
  levels: readonly Level[],
  at: LabelPlace,
  pieceMm: number,
  spareMm: number,
): { readonly labels: readonly CardLabel[]; readonly extraMm: number } {
  const { y, labelsMm, lineMm, sizePt, face, widthMm } = at
  const roomMm = widthMm - labelsMm - 0.5
  const names = (withAims: boolean) =>
    zones.map(
      ({ name, says, from_mm, to_mm }): CardLabel => ({
        lines: [
          ...wrapped(name, roomMm / 1.05, sizePt, face, withAims ? 2 : 1),
          ...(withAims ? wrapped(says, roomMm, sizePt, face, 3) : []),
        ],
        atMm: y((from_mm + to_mm) / 2),
        strong: true,
      }),
    )
  // A depth is written above its line.
  const depths = levels.flatMap(({ atMm, says }): CardLabel[] =>
    says === undefined ? [] : [{ lines: [cut(says, roomMm, sizePt, face)], atMm: atMm - 0.6 * lineMm, strong: false }],
  )
  for (const labels of [[...names(true), ...depths], names(true), names(false)]) {
    const tallMm = labels.reduce((sum, { lines }) => sum + lines.length * lineMm + APART_MM, 0)
    const extraMm = Math.max(0, tallMm - pieceMm - LABELS_BELOW_MM)
    if (extraMm <= spareMm) return { labels, extraMm }
  }
  return { labels: [], extraMm: 0 }
}

/** The names at their heights, giving way to each other. */
export function labelsDrawn(labels: readonly CardLabel[], { labelsMm, lineMm, topMm }: LabelPlace, lowestMm: number): string {
  const middles = spreadLabels(
    labels.map(({ atMm, lines }) => ({ atPx: atMm, tallPx: lines.length * lineMm + APART_MM })),
    topMm,
    lowestMm,
  )
  return labels
    .flatMap(({ lines, strong }, i) => {
      const top = (middles[i] ?? 0) - (lines.length * lineMm) / 2
      return lines.map((text, k) =>
        label(labelsMm, top + (k + 0.8) * lineMm, text, { class: strong && k === 0 ? 'qw-name qw-strong' : 'qw-name' }),
      )
    })
    .join('')
}

/** A bracket along each zone. */
export function bracketsOf(zones: readonly ZoneName[], { y, bracketMm }: LabelPlace): string {
  return zones
    .map(({ from_mm, to_mm, assumed }) =>
      element('path', {
        d: `M${round(bracketMm)} ${round(y(to_mm) + 0.2)}h0.9V${round(y(from_mm) - 0.2)}h-0.9`,
        class: assumed ? 'qw-zone-bracket qw-assumed' : 'qw-zone-bracket',
      }),
    )
    .join('')
}

/** Words in lines no longer than the room; a longer word stands by itself, and what is more than `most` lines ends in dots. */
export function wrapped(text: string, widthMm: number, sizePt: number, face: Face, most: number): string[] {
  const lines: string[] = []
  for (const word of text.split(' ').filter((each) => each !== '')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`
    if (lines.length > 0 && widthOf(longer, sizePt, face) <= widthMm) lines[lines.length - 1] = longer
    else lines.push(word)
  }
  const shown = lines.length <= most ? lines : [...lines.slice(0, most - 1), `${lines[most - 1]}...`]
  return shown.map((line) => cut(line, widthMm, sizePt, face))
}

/** A word longer than the whole room, as much of it as goes in. */
function cut(line: string, widthMm: number, sizePt: number, face: Face): string {
  if (widthOf(line, sizePt, face) <= widthMm) return line
  let kept = line.replace(/\.{3}$/u, '')
  while (kept.length > 1 && widthOf(`${kept}...`, sizePt, face) > widthMm) kept = kept.slice(0, -1)
  return `${kept}...`
}

export function round(value: number): number {
  return Math.round(value * 100) / 100
}
