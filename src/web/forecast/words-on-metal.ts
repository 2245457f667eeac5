import type { Picture } from '#contract/picture-fields.ts'
import type { ValueImage } from './raster.ts'
import { lookOf } from './structure-look.ts'

/** A word on the metal: its middle, x from the axis [px of the page]. */
export interface WordAt {
  readonly text: string
  readonly xPx: number
  readonly yPx: number
}

/** Room about a word that is needed and kept [px]. */
const HIGH_PX = 18
const PER_LETTER_PX = 7.2

/** What the metal has become, written once into the largest part of each kind where there is room. */
export function structureWords({ width, height, values }: ValueImage, ratio: number): WordAt[] {
  const best = new Map<number, { yPx: number; wide: number; xPx: number }>()
  for (let y = 0; y < height; y += 4) {
    let from = 0
    for (let x = 1; x <= width; x++) {
      const kind = values[y * width + from]!
      if (x < width && values[y * width + x]! === kind) continue
      const wide = (x - from) / ratio
      const known = best.get(kind)
      if (
        !Number.isNaN(kind) &&
        (known === undefined || wide > known.wide) &&
        tallEnough(values, width, height, from, x, y, ratio)
      )
        best.set(kind, { yPx: y / ratio, wide, xPx: (from + x) / 2 / ratio })
      from = x
    }
  }
  const words: WordAt[] = []
  for (const [kind, { yPx, wide, xPx }] of best) {
    const text = lookOf(kind).word
    if (wide < text.length * PER_LETTER_PX) continue
    if (words.every((other) => Math.abs(other.yPx - yPx) >= HIGH_PX)) words.push({ text, xPx, yPx })
  }
  return words
}

function tallEnough(
  values: Float32Array,
  width: number,
  height: number,
  from: number,
  to: number,
  y: number,
  ratio: number,
): boolean {
  const half = Math.ceil((HIGH_PX / 2) * ratio)
  if (y - half < 0 || y + half >= height) return false
  const kind = values[y * width + from]!
  return [y - half, y + half].every((row) => values[row * width + from]! === kind && values[row * width + to - 1]! === kind)
}

/** The name of each temper colour at the middle of its stretch of the skin, where it is wide enough; all stand in the legend. */
export function colourWords(
  { xMm, colour }: Picture['skin'],
  yOf: (xMm: number) => number,
  reachAt: (yPx: number) => number,
): WordAt[] {
  const words: WordAt[] = []
  let from = 0
  for (let i = 1; i <= colour.length; i++) {
    if (i < colour.length && colour[i]!.name === colour[from]!.name) continue
    const yPx = (yOf(xMm[from]!) + yOf(xMm[i - 1]!)) / 2
    const text = colour[from]!.name === 'none' ? 'no colour' : colour[from]!.name
    from = i
    if (words.some((other) => Math.abs(other.yPx - yPx) < HIGH_PX)) continue
    const half = (text.length * PER_LETTER_PX) / 2
    const room = Math.min(reachAt(yPx - HIGH_PX / 2), reachAt(yPx + HIGH_PX / 2)) - 3
    if (half <= room) words.push({ text, xPx: Math.max(0, Math.min(half + 6, room - half)), yPx })
  }
  return words
}
