import type { Picture } from '#contract/picture-fields.ts'
import type { Field } from '#web/bench/bench.ts'
import type { Heights } from '#web/drawing/heights.ts'
import type { Carry } from './carry-over.ts'
import type { FieldValues } from './field-values.ts'
import { type PlacedMesh, paintSkin, paintValues, reachOf, type ValueImage, valueImage } from './raster.ts'
import { lookOf } from './structure-look.ts'

/** A cut half placed on pixels, x from the axis; `ratio` device pixels to one of the page. */
export interface PlacedCut {
  readonly mesh: PlacedMesh
  readonly width: number
  readonly height: number
  readonly ratio: number
}

export function placedCut(picture: Picture, carry: Carry, heights: Heights, ratio: number): PlacedCut {
  const n = picture.xMm.length
  const xPx = new Float32Array(n)
  const yPx = new Float32Array(n)
  let widest = 0
  for (let i = 0; i < n; i++) {
    const [xMm, rMm] = carry(picture.xMm[i]!, picture.rMm[i]!)
    xPx[i] = rMm * heights.pxPerMm * ratio
    yPx[i] = heights.yOf(xMm) * ratio
    widest = Math.max(widest, xPx[i]!)
  }
  return {
    mesh: { xPx, yPx, triangles: picture.triangles },
    width: Math.ceil(widest) + 2,
    height: Math.ceil(heights.heightPx * ratio),
    ratio,
  }
}

/** Pixels of the cut half and of the outside, and how far the metal reaches in every row. */
export interface CutPixels {
  readonly cut: ImageData
  readonly skin?: ImageData
  readonly reach: Int32Array
  readonly image: ValueImage
}

/** Colours a field that has figures; a heat is seen from outside too. */
export function figurePixels(cut: PlacedCut, { values, scale }: FieldValues, field: Field): CutPixels {
  const image = valueImage(cut.mesh, values, cut)
  const reach = reachOf(image)
  const inside = new ImageData(cut.width, cut.height)
  paintValues(image, scale, new Uint32Array(inside.data.buffer))
  if (field === 'band') dot(image, inside, cut.ratio)
  if (field !== 'heat') return { cut: inside, reach, image }
  const skin = new ImageData(cut.width, cut.height)
  paintSkin(image, reach, scale, new Uint32Array(skin.data.buffer))
  return { cut: inside, skin, reach, image }
}

const DOT_EVERY_PX = 7
const DOT = 0xff_5a_3a_4a

/** Fine dots tell a band from a hardness where there is no colour. */
function dot({ width, height, values }: ValueImage, { data }: ImageData, ratio: number): void {
  const pixels = new Uint32Array(data.buffer)
  const every = Math.round(DOT_EVERY_PX * ratio)
  const wide = Math.max(1, Math.round(ratio))
  for (let y = 0; y < height; y++) {
    const row = Math.floor(y / every)
    if (y % every >= wide) continue
    for (let x = 0; x < width; x++) {
      if ((x + (row % 2) * (every >> 1)) % every < wide && !Number.isNaN(values[y * width + x]!)) pixels[y * width + x] = DOT
    }
  }
}

/** Draws what the metal has become: greys and hatching. */
export function structurePixels(cut: PlacedCut, structure: Uint8Array): CutPixels {
  const image = valueImage(cut.mesh, structure, cut, 'nearest')
  const inside = new ImageData(cut.width, cut.height)
  const pixels = new Uint32Array(inside.data.buffer)
  const looks = [0, 1, 2, 3, 4].map((each) => ({
    look: lookOf(each),
    ground: pixelOf(lookOf(each).ground),
    line: pixelOf(lookOf(each).line),
  }))
  for (let y = 0; y < cut.height; y++) {
    for (let x = 0; x < cut.width; x++) {
      const at = y * cut.width + x
      const value = image.values[at]!
      if (Number.isNaN(value)) continue
      const { look, ground, line } = looks[value]!
      pixels[at] = look.onLine(x / cut.ratio, y / cut.ratio) ? line : ground
    }
  }
  return { cut: inside, reach: reachOf(image), image }
}

/** Draws the outside in the temper colours that it shows at the end. */
export function colourPixels(cut: PlacedCut, { skin, temperedHrc }: Picture, heights: Heights, carry: Carry): CutPixels {
  const image = valueImage(cut.mesh, temperedHrc, cut)
  const reach = reachOf(image)
  const outside = new ImageData(cut.width, cut.height)
  const pixels = new Uint32Array(outside.data.buffer)
  const yPx = Array.from(skin.xMm, (xMm) => heights.yOf(carry(xMm, 0)[0]) * cut.ratio)
  const shades = skin.colour.map(({ srgb }) => pixelOf(srgb))
  let nearest = yPx.length - 1
  for (let y = 0; y < cut.height; y++) {
    // Heights rise along the skin, so rows from the top run it backward.
    while (nearest > 0 && Math.abs(yPx[nearest - 1]! - y) <= Math.abs(yPx[nearest]! - y)) nearest--
    if (reach[y]! >= 0) pixels.fill(shades[nearest]!, y * cut.width, y * cut.width + reach[y]! + 1)
  }
  return { cut: new ImageData(cut.width, cut.height), skin: outside, reach, image }
}

function pixelOf(colour: string): number {
  const part = (from: number): number => Number.parseInt(colour.slice(from, from + 2), 16)
  return (0xff_00_00_00 | (part(5) << 16) | (part(3) << 8) | part(1)) >>> 0
}
