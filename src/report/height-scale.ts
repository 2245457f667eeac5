import type { Forecast } from '#contract/answers.ts'

/** Heights on the paper shared by every picture that stands beside the piece: working end down, other end up. */
export interface HeightScale {
  readonly pxPerMm: number
  readonly topPx: number
  readonly bottomPx: number
  readonly totalPx: number
  /** Height on the paper of a place so far from the working end. */
  y(xMm: number): number
}

export interface Room {
  /** Greatest width of the piece itself. */
  readonly acrossPx: number
  /** Greatest height of the piece itself. */
  readonly tallPx: number
}

const ABOVE_PX = 40
const BELOW_PX = 70
const LEAST_BODY_PX = 220

/** The greatest scale at which the piece fits the room, the same along and across. */
export function heightScaleFor({ length_mm, outline_mm }: Forecast, { acrossPx, tallPx }: Room): HeightScale {
  const pxPerMm = Math.min(acrossPx / Math.max(2 * widestMm(outline_mm), 1e-3), tallPx / Math.max(length_mm, 1e-3))
  const bodyPx = length_mm * pxPerMm
  // A squat piece stands in the middle of enough paper for what is written beside it.
  const sparePx = Math.max(0, LEAST_BODY_PX - bodyPx) / 2
  const topPx = ABOVE_PX + sparePx
  const bottomPx = topPx + bodyPx
  return {
    pxPerMm,
    topPx,
    bottomPx,
    totalPx: bottomPx + sparePx + BELOW_PX,
    y: (xMm) => bottomPx - xMm * pxPerMm,
  }
}

/** Greatest radius of the outline. */
export function widestMm(outline: Forecast['outline_mm']): number {
  return outline.reduce((widest, [, r]) => Math.max(widest, r), 0)
}

/** Outer radius at a height; the outline may come back on itself at a hollow or a bore, where the greatest counts. */
export function radiusAt(outline: Forecast['outline_mm'], xMm: number): number {
  let radius = 0
  for (const [i, [x, r]] of outline.entries()) {
    const [x0, r0] = outline[i - 1] ?? [x, r]
    if (xMm < Math.min(x0, x) || xMm > Math.max(x0, x)) continue
    radius = Math.max(radius, x === x0 ? Math.max(r, r0) : r0 + ((xMm - x0) / (x - x0)) * (r - r0))
  }
  return radius
}
