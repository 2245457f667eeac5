import { RAMP_SIZE } from './ramps.ts'
import type { Scale } from './scales.ts'

/** Triangles whose corners have a place on a canvas [px]; x grows to the right from the axis, y downward. */
export interface PlacedMesh {
  readonly xPx: Float32Array
  readonly yPx: Float32Array
  /** Three corners each. */
  readonly triangles: Uint32Array
}

/** Values over the pixels of a picture, row by row; NaN where there is no metal. */
export interface ValueImage {
  readonly width: number
  readonly height: number
  readonly values: Float32Array
}

/** Values at the corners, drawn linearly between them. Corners of unlike kind: the nearest counts (`nearest`). */
export function valueImage(
  mesh: PlacedMesh,
  values: ArrayLike<number>,
  size: { readonly width: number; readonly height: number },
  between: 'linear' | 'nearest' = 'linear',
): ValueImage {
  const image = { ...size, values: new Float32Array(size.width * size.height).fill(Number.NaN) }
  for (let t = 0; t < mesh.triangles.length; t += 3) fillTriangle(image, mesh, values, t, between === 'linear')
  return image
}

/** Pixels a hair outside a triangle are drawn too, so that no seam stays open. */
const SEAM = -0.02

function fillTriangle(image: ValueImage, mesh: PlacedMesh, values: ArrayLike<number>, t: number, linear: boolean): void {
  const { xPx, yPx, triangles } = mesh
  const a = triangles[t]!
  const b = triangles[t + 1]!
  const c = triangles[t + 2]!
  const ax = xPx[a]!
  const ay = yPx[a]!
  const bx = xPx[b]!
  const by = yPx[b]!
  const cx = xPx[c]!
  const cy = yPx[c]!
  const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay)
  if (area === 0) return
  const fromX = Math.max(0, Math.floor(Math.min(ax, bx, cx) - 0.5))
  const toX = Math.min(image.width - 1, Math.ceil(Math.max(ax, bx, cx) - 0.5))
  const fromY = Math.max(0, Math.floor(Math.min(ay, by, cy) - 0.5))
  const toY = Math.min(image.height - 1, Math.ceil(Math.max(ay, by, cy) - 0.5))
  const va = values[a]!
  const vb = values[b]!
  const vc = values[c]!
  // Weights of b and c are linear over the plane; that of a is what is left.
  const bDx = (cy - ay) / area
  const bDy = (ax - cx) / area
  const cDx = (ay - by) / area
  const cDy = (bx - ax) / area
  for (let y = fromY; y <= toY; y++) {
    const downPx = y + 0.5 - ay
    const acrossPx = fromX + 0.5 - ax
    let ofB = acrossPx * bDx + downPx * bDy
    let ofC = acrossPx * cDx + downPx * cDy
    let at = y * image.width + fromX
    for (let x = fromX; x <= toX; x++, at++, ofB += bDx, ofC += cDx) {
      const ofA = 1 - ofB - ofC
      if (ofA < SEAM || ofB < SEAM || ofC < SEAM) continue
      image.values[at] = linear ? ofA * va + ofB * vb + ofC * vc : ofA >= ofB && ofA >= ofC ? va : ofB >= ofC ? vb : vc
    }
  }
}

/** How far from the axis each row of pixels reaches; -1 where there is no metal. */
export function reachOf({ width, height, values }: ValueImage): Int32Array {
  const reach = new Int32Array(height).fill(-1)
  for (let y = 0; y < height; y++) {
    for (let x = width - 1; x >= 0; x--) {
      if (Number.isNaN(values[y * width + x]!)) continue
      reach[y] = x
      break
    }
  }
  return reach
}

/** Colours the pixels by their values. */
export function paintValues({ values }: ValueImage, { low, high, ramp }: Scale, pixels: Uint32Array): void {
  const perUnit = (RAMP_SIZE - 1) / (high - low)
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!
    if (Number.isNaN(value)) continue
    const at = (value - low) * perUnit
    pixels[i] = ramp[at <= 0 ? 0 : at >= RAMP_SIZE - 1 ? RAMP_SIZE - 1 : at | 0]!
  }
}

/** Colours whole rows, as far as they reach, by the value of the skin there: the piece as seen from outside. */
export function paintSkin(image: ValueImage, reach: Int32Array, { low, high, ramp }: Scale, pixels: Uint32Array): void {
  const { width, height, values } = image
  const perUnit = (RAMP_SIZE - 1) / (high - low)
  for (let y = 0; y < height; y++) {
    const last = reach[y]!
    if (last < 0) continue
    const at = Math.round((values[y * width + last]! - low) * perUnit)
    pixels.fill(ramp[Math.min(RAMP_SIZE - 1, Math.max(0, at))]!, y * width, y * width + last + 1)
  }
}
