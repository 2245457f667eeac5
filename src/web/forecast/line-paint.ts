import type { ContourLine } from './contours.ts'

/** Figures on lines [px]; their boxes are a little higher. */
export const FIGURE_FONT = "600 15px 'Source Sans 3 Variable', 'Source Sans 3', system-ui, sans-serif"
export const FIGURE_PX = 16

/** Colours of the page for a canvas. */
export interface Inks {
  readonly ink: string
  readonly halo: string
}

export function inksOf(element: Element): Inks {
  const style = getComputedStyle(element)
  const named = (name: string): string => style.getPropertyValue(name).trim()
  return { ink: named('--ink'), halo: named('--raised') }
}

/** Lines of equal value: ink with a light edge, so that they show on light and on dark; broken while the answer is not the full one. */
export function drawLines(
  pen: CanvasRenderingContext2D,
  lines: readonly ContourLine[],
  ratio: number,
  inks: Inks,
  whole: boolean,
): void {
  if (lines.length === 0) return
  pen.beginPath()
  for (const { points } of lines) {
    pen.moveTo(points[0]! / ratio, points[1]! / ratio)
    for (let i = 2; i < points.length; i += 2) pen.lineTo(points[i]! / ratio, points[i + 1]! / ratio)
  }
  pen.lineJoin = 'round'
  pen.globalAlpha = 0.65
  pen.strokeStyle = inks.halo
  pen.lineWidth = 3
  pen.stroke()
  pen.globalAlpha = 1
  pen.strokeStyle = inks.ink
  pen.lineWidth = 1.1
  pen.setLineDash(whole ? [] : [5, 3])
  pen.stroke()
  pen.setLineDash([])
}
