/** A colour of the page as it stands, for a canvas. */
export function inkOf(name: string): string {
  return getComputedStyle(document.documentElement).getPropertyValue(name).trim()
}

export const PLOT_FONT = "16px 'Source Sans 3 Variable', 'Source Sans 3', system-ui, sans-serif"

/** Writes on a plot with a light edge about the letters; x, y in device pixels as uPlot gives them. */
export function writeOn(pen: CanvasRenderingContext2D, text: string, x: number, y: number, align: CanvasTextAlign): void {
  const ratio = devicePixelRatio
  pen.save()
  pen.font = PLOT_FONT.replace('16px', `${16 * ratio}px`)
  pen.textAlign = align
  pen.textBaseline = 'middle'
  pen.lineJoin = 'round'
  pen.lineWidth = 4 * ratio
  pen.strokeStyle = inkOf('--ground')
  pen.strokeText(text, x, y)
  pen.fillStyle = inkOf('--ink')
  pen.fillText(text, x, y)
  pen.restore()
}
