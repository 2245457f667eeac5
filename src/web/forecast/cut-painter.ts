import type { Picture } from '#contract/picture-fields.ts'
import type { System } from '#units/length.ts'
import type { Field } from '#web/bench/bench.ts'
import type { Ground } from '#web/bench/device.ts'
import type { DrawnBody } from '#web/drawing/body.ts'
import type { Heights } from '#web/drawing/heights.ts'
import { halfPath } from '#web/drawing/outline-path.ts'
import { type Carry, carryOver } from './carry-over.ts'
import { contourLabels } from './contour-labels.ts'
import { contourLines } from './contours.ts'
import { type CutPixels, colourPixels, figurePixels, type PlacedCut, placedCut, structurePixels } from './cut-paint.ts'
import { fieldValues } from './field-values.ts'
import { drawLines, FIGURE_FONT, FIGURE_PX, type Inks, inksOf } from './line-paint.ts'
import type { Standing } from './standing.ts'
import { colourWords, structureWords, type WordAt } from './words-on-metal.ts'

export interface CutView {
  readonly body: DrawnBody
  readonly heights: Heights
  readonly axisPx: number
  readonly widthPx: number
  readonly ratio: number
  readonly ground: Ground
  readonly units: System
  readonly field: Field
  readonly instantS: number
  readonly standing: Standing
}

export interface CutPicture {
  readonly picture: Picture
  /** The drawing that the picture was worked out for. */
  readonly was: DrawnBody
}

/** Pixels that the true outline may reach beyond the rounds of the forecast: they are filled with what is next to them [px]. */
const BLEED_PX = 3

/** Draws one cut-away after the other on its canvas. */
export class CutPainter {
  private readonly canvas: HTMLCanvasElement
  private readonly half = document.createElement('canvas')
  private inks: { readonly ground: Ground; readonly inks: Inks } | undefined

  constructor(canvas: HTMLCanvasElement) {
    this.canvas = canvas
  }

  paint(view: CutView, shown: CutPicture | undefined): void {
    const { widthPx, heights, ratio, ground } = view
    const size = [Math.round(widthPx * ratio), Math.round(heights.heightPx * ratio)] as const
    if (this.canvas.width !== size[0] || this.canvas.height !== size[1]) [this.canvas.width, this.canvas.height] = size
    this.canvas.style.width = `${widthPx}px`
    this.canvas.style.height = `${heights.heightPx}px`
    const pen = this.canvas.getContext('2d')
    if (pen === null) return
    pen.setTransform(ratio, 0, 0, ratio, 0, 0)
    pen.clearRect(0, 0, widthPx, heights.heightPx)
    if (shown === undefined) return
    if (this.inks?.ground !== ground) this.inks = { ground, inks: inksOf(this.canvas) }
    this.draw(pen, view, shown, this.inks.inks)
  }

  private draw(pen: CanvasRenderingContext2D, view: CutView, { picture, was }: CutPicture, inks: Inks): void {
    const { body, heights, ratio, field, axisPx } = view
    const carry = carryOver(was, body)
    const cut = placedCut(picture, carry, heights, ratio)
    const values = fieldValues(picture, field, view.instantS, view.units)
    const pixels =
      values !== undefined
        ? figurePixels(cut, values, field)
        : field === 'became'
          ? structurePixels(cut, picture.structure)
          : colourPixels(cut, picture, heights, carry)
    if (pixels.skin !== undefined) this.lay(pen, view, pixels.skin, -1)
    this.lay(pen, view, pixels.cut, 1)

    pen.save()
    pen.clip(new Path2D(halfPath(body, body.outline, heights, { axisPx, side: 1 })))
    if (view.standing === 'old') hatch(pen, view, inks)
    pen.translate(axisPx, 0)
    const lines = values === undefined ? [] : contourLines(cut.mesh, values.values, values.levels)
    drawLines(pen, lines, ratio, inks, view.standing === 'full')
    pen.restore()

    pen.font = FIGURE_FONT
    const words = values === undefined ? this.words(view, picture, cut, pixels, carry) : []
    const figures =
      values === undefined
        ? []
        : contourLabels(
            lines.map((line) => ({ ...line, points: line.points.map((px) => px / ratio), lengthPx: line.lengthPx / ratio })),
            {
              reachAt: reachAt(pixels.reach, ratio),
              textPx: (text) => pen.measureText(text).width,
              heightPx: FIGURE_PX,
              textOf: values.figureOf,
            },
          )
    pen.textAlign = 'center'
    pen.textBaseline = 'middle'
    pen.lineJoin = 'round'
    for (const { text, xPx, yPx } of [...figures, ...words]) {
      pen.lineWidth = 4
      pen.strokeStyle = inks.halo
      pen.strokeText(text, axisPx + xPx, yPx)
      pen.fillStyle = inks.ink
      pen.fillText(text, axisPx + xPx, yPx)
    }
  }

  private words(view: CutView, picture: Picture, cut: PlacedCut, pixels: CutPixels, carry: Carry): WordAt[] {
    if (view.field === 'became') return structureWords(pixels.image, cut.ratio)
    return colourWords(picture.skin, (xMm) => view.heights.yOf(carry(xMm, 0)[0]), reachAt(pixels.reach, cut.ratio))
  }

  /** Lays pixels onto one half, inside its outline. */
  private lay(pen: CanvasRenderingContext2D, { body, heights, axisPx, ratio }: CutView, pixels: ImageData, side: 1 | -1): void {
    this.half.width = pixels.width
    this.half.height = pixels.height
    this.half.getContext('2d')?.putImageData(pixels, 0, 0)
    pen.save()
    pen.clip(new Path2D(halfPath(body, side === 1 ? body.outline : body.outside, heights, { axisPx, side })))
    pen.translate(axisPx, 0)
    pen.scale(side / ratio, 1 / ratio)
    pen.imageSmoothingEnabled = false
    const by = BLEED_PX * ratio
    for (const [dx, dy] of [
      [by, 0],
      [0, by],
      [0, -by],
      [by, by],
      [by, -by],
      [0, 0],
    ] as const)
      pen.drawImage(this.half, dx, dy)
    pen.restore()
  }
}

function reachAt(reach: Int32Array, ratio: number): (yPx: number) => number {
  return (yPx) => (reach[Math.round(yPx * ratio)] ?? -1) / ratio
}

/** Wide slanting lines over what belongs to an earlier state. */
function hatch(pen: CanvasRenderingContext2D, { axisPx, widthPx, heights }: CutView, inks: Inks): void {
  pen.strokeStyle = inks.halo
  pen.lineWidth = 3
  pen.beginPath()
  for (let at = -heights.heightPx; at < widthPx; at += 14) {
    pen.moveTo(axisPx + at, heights.heightPx)
    pen.lineTo(axisPx + at + heights.heightPx, 0)
  }
  pen.stroke()
}
