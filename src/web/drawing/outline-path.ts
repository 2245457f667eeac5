import type { Outline } from '#engine/geometry/outline.ts'
import type { OutlinePiece } from '#engine/geometry/outline-pieces.ts'
import type { DrawnBody } from './body.ts'
import type { Heights } from './heights.ts'

/** Where the picture stands across: the axis, and the piece's half-section to its right (1) or left (-1). */
export interface Across {
  readonly axisPx: number
  readonly side: 1 | -1
}

/** The half-section as a closed path along the axis; straight sections where the shape is at fault. */
export function halfPath(body: DrawnBody, outline: Outline | undefined, heights: Heights, across: Across): string {
  const { axisPx } = across
  const line = edgePath(body, outline, heights, across)
  return line === '' ? '' : `${line}L${px(axisPx)} ${px(heights.yOf(body.lengthMm))}L${px(axisPx)} ${px(heights.yOf(0))}Z`
}

/** The outer line of a half-section from the axis at the working end to the axis at the other end. */
export function edgePath(body: DrawnBody, outline: Outline | undefined, heights: Heights, across: Across): string {
  if (outline === undefined) return straightPath(body, heights, across)
  const first = outline.pieces[0]
  if (first === undefined) return ''
  return `M${point(first.from, heights, across)}${outline.pieces.map((piece) => piecePath(piece, heights, across)).join('')}`
}

function piecePath(piece: OutlinePiece, heights: Heights, across: Across): string {
  const to = point(piece.to, heights, across)
  if (piece.kind === 'line') return `L${to}`
  const radius = px(piece.radiusM * 1000 * heights.pxPerMm)
  // A turn from the axis, which points up, toward a radius on the right is clockwise on the screen; on the left it is mirrored.
  const sweep = piece.sweepRad > 0 === across.side > 0 ? 1 : 0
  return `A${radius} ${radius} 0 0 ${sweep} ${to}`
}

function point({ xM, rM }: { readonly xM: number; readonly rM: number }, heights: Heights, { axisPx, side }: Across): string {
  return `${px(axisPx + side * rM * 1000 * heights.pxPerMm)} ${px(heights.yOf(xM * 1000))}`
}

function straightPath({ sections }: DrawnBody, heights: Heights, { axisPx, side }: Across): string {
  const first = sections[0]
  const last = sections.at(-1)
  if (first === undefined || last === undefined) return ''
  const at = (acrossMm: number, xMm: number): string =>
    `${px(axisPx + (side * acrossMm * heights.pxPerMm) / 2)} ${px(heights.yOf(xMm))}`
  const sides = sections.map(({ fromMm, lengthMm, acrossMm: [from, to] }) => `L${at(from, fromMm)}L${at(to, fromMm + lengthMm)}`)
  return `M${at(0, first.fromMm)}${sides.join('')}L${at(0, last.fromMm + last.lengthMm)}`
}

/** To a tenth of a pixel, so that paths stay short. */
export function px(value: number): string {
  return String(Math.round(value * 10) / 10)
}
