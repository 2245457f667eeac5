import type { Forecast } from '#contract/answers.ts'
import { type HeightScale, widestMm } from './height-scale.ts'

export const TEXT_PX = 13
/** One line of text with the room around it. */
export const LINE_PX = 16

/** `full` has the zones written out and the measures; `narrow` the piece, its marks and the bath. */
export type Plan = 'full' | 'narrow'

const COLUMNS = {
  full: { zones: 116, bracket: 16, contours: 30, marks: 26, measures: 78 },
  narrow: { zones: 0, bracket: 12, contours: 26, marks: 24, measures: 0 },
} as const

/** Where things stand across the drawing [px]. */
export interface Across {
  readonly bracketPx: number
  readonly axisPx: number
  readonly contoursPx: number
  readonly marksPx: number
  readonly measuresPx: number
  readonly widthPx: number
}

/** Lays the columns out for this piece. */
export function acrossOf({ outline_mm }: Forecast, scale: HeightScale, plan: Plan): Across {
  const columns = COLUMNS[plan]
  const halfPx = widestMm(outline_mm) * scale.pxPerMm
  const bracketPx = columns.zones + columns.bracket
  const axisPx = bracketPx + 8 + halfPx
  const contoursPx = axisPx + halfPx + 4
  const marksPx = contoursPx + columns.contours + columns.marks / 2
  const measuresPx = marksPx + columns.marks / 2 + 2
  return { bracketPx, axisPx, contoursPx, marksPx, measuresPx, widthPx: Math.ceil(measuresPx + columns.measures) }
}
