/**
 * The one axis of every picture: how high a place of the piece stands on the screen. The piece hangs with its working end down; x is its
 * distance from the working end [mm], y grows downward [px].
 */
export interface Heights {
  readonly pxPerMm: number
  readonly lengthMm: number
  /** Of the whole picture [px]. */
  readonly heightPx: number
  /** Where the working end hangs [px]. */
  readonly workingEndPx: number
  readonly yOf: (xMm: number) => number
  readonly xAt: (yPx: number) => number
}

/** Room over the piece for the tongs, and under it for the bath [px]. */
const ABOVE_PX = 28
const BELOW_PX = 44

/** The room for a piece [px]; over it and under it is left for tongs and bath unless said otherwise. */
export interface Box {
  readonly widthPx: number
  readonly heightPx: number
  readonly abovePx?: number
  readonly belowPx?: number
}

/** Heights for a piece of this length and greatest half width in a box of this size; the same scale across, so that the drawing is true. */
export function heightsFor(lengthMm: number, halfWidthMm: number, box: Box): Heights {
  const { abovePx = ABOVE_PX, belowPx = BELOW_PX } = box
  const roomPx = Math.max(60, box.heightPx - abovePx - belowPx)
  const sidePx = Math.max(20, box.widthPx / 2)
  const pxPerMm = Math.min(roomPx / Math.max(lengthMm, 1e-6), sidePx / Math.max(halfWidthMm, 1e-6))
  const workingEndPx = box.heightPx - belowPx - (roomPx - pxPerMm * lengthMm) / 2
  return {
    pxPerMm,
    lengthMm,
    heightPx: box.heightPx,
    workingEndPx,
    yOf: (xMm) => workingEndPx - xMm * pxPerMm,
    xAt: (yPx) => (workingEndPx - yPx) / pxPerMm,
  }
}
