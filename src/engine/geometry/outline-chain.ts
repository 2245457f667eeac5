import {
  arcAbout,
  crossingsAt,
  distanceM,
  line,
  type OutlinePiece,
  type OutlinePoint,
  pieceLengthM,
  pointOn,
  sweptAreaM2,
  volumeUnderM3,
} from './outline-pieces.ts'

/** A fillet that did not fit: the joint it stands at (between sections `joint` and `joint + 1`), asked and used radius [m]. */
export interface ReducedFillet {
  readonly joint: number
  readonly askedM: number
  readonly usedM: number
}

/**
 * Half-section of a body of revolution: lines and arcs from the axis at its working end to the axis at its other end,
 * walked so that the metal lies to the right. The axis itself is not part of it.
 */
export interface Outline {
  readonly pieces: readonly OutlinePiece[]
  /** Greatest x of the body [m]. */
  readonly lengthM: number
  readonly reducedFillets: readonly ReducedFillet[]
}

/** An arc from the point before it: about `centre`, or of `radius` and bulging out of the metal (`out`) or into it (`in`). The short way round. */
export interface ArcItem {
  readonly arc:
    | { readonly to: readonly [x: number, r: number]; readonly centre: readonly [x: number, r: number] }
    | { readonly to: readonly [x: number, r: number]; readonly radius: number; readonly bulge: 'out' | 'in' }
}

export type OutlineItem = readonly [x: number, r: number] | ArcItem

/** Pieces shorter than this are left out [m]. */
export const SHORTEST_PIECE_M = 1e-8

/**
 * An outline given point by point, from the axis at the working end to the axis at the other end.
 *
 * - in: `items` in units of `unitM` metres (0.001 for millimetres); the first is a point; first and last lie on the axis, r = 0
 * - throws: RangeError naming the item, when a point lies below the axis, an arc cannot be drawn, or the line crosses itself
 */
export function outlineFrom(items: readonly OutlineItem[], unitM = 1): Outline {
  const pieces: OutlinePiece[] = []
  let here: OutlinePoint | undefined
  for (const [index, item] of items.entries()) {
    const name = `outline[${index}]`
    const at = 'arc' in item ? item.arc.to : item
    const next = { xM: at[0] * unitM, rM: at[1] * unitM }
    if (!Number.isFinite(next.xM) || !Number.isFinite(next.rM) || next.rM < 0)
      throw new RangeError(
        `${name}: [${at[0]}, ${at[1]}] is not a point on or above the axis; give two numbers, the second not below 0`,
      )
    if (here === undefined) {
      if ('arc' in item) throw new RangeError(`${name}: an arc needs a point before it; begin with a point on the axis`)
    } else if (distanceM(here, next) > SHORTEST_PIECE_M) {
      pieces.push('arc' in item ? arcOf(item, here, next, unitM, name) : line(here, next))
    }
    here = next
  }
  const first = pieces[0]?.from
  const last = pieces[pieces.length - 1]?.to
  if (first === undefined || last === undefined || first.rM > 0 || last.rM > 0)
    throw new RangeError('outline: begin and end it on the axis, at radius 0')
  return finished(pieces, [])
}

function arcOf(item: ArcItem, from: OutlinePoint, to: OutlinePoint, unitM: number, name: string): OutlinePiece {
  const chord = distanceM(from, to)
  let centre: OutlinePoint
  let side: 1 | -1 = -1
  if ('centre' in item.arc) {
    const given = { xM: item.arc.centre[0] * unitM, rM: item.arc.centre[1] * unitM }
    const [a, b] = [distanceM(given, from), distanceM(given, to)]
    if (Math.abs(a - b) > 0.01 * Math.max(a, b))
      throw new RangeError(
        `${name}: the ends of the arc lie ${a / unitM} and ${b / unitM} from its centre; the two must agree within 1 %`,
      )
    // The ends stand; the centre yields to the nearest place that is equally far from both.
    const tx = (to.xM - from.xM) / chord
    const tr = (to.rM - from.rM) / chord
    const off = (given.xM - (from.xM + to.xM) / 2) * tx + (given.rM - (from.rM + to.rM) / 2) * tr
    centre = { xM: given.xM - off * tx, rM: given.rM - off * tr }
  } else {
    const radius = item.arc.radius * unitM
    if (!(radius >= chord / 2))
      throw new RangeError(
        `${name}: radius ${item.arc.radius} does not span its ends, ${chord / unitM} apart; at least half of that is needed`,
      )
    // Walked with the metal on the right, an arc that bulges out of the metal turns right about a centre on the right.
    side = item.arc.bulge === 'out' ? -1 : 1
    const rise = Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4))
    centre = {
      xM: (from.xM + to.xM) / 2 - (side * rise * (to.rM - from.rM)) / chord,
      rM: (from.rM + to.rM) / 2 + (side * rise * (to.xM - from.xM)) / chord,
    }
  }
  return arcAbout(centre, from, to, side)
}

/** Checks that the chain neither dips below the axis nor meets itself, and encloses metal; then it is an outline. */
export function finished(pieces: readonly OutlinePiece[], reducedFillets: readonly ReducedFillet[]): Outline {
  let lengthM = 0
  for (const piece of pieces) lengthM = Math.max(lengthM, piece.from.xM, piece.to.xM)
  const outline = { pieces, lengthM, reducedFillets }
  const points = polylineOf(outline, lengthM / 50)
  for (const p of points) if (p.rM < -1e-9) throw new RangeError(`outline: it dips below the axis at x = ${millimetres(p.xM)} mm`)
  for (let i = 0; i + 1 < points.length; i++)
    for (let j = i + 2; j + 1 < points.length; j++)
      if (cross(points[i]!, points[i + 1]!, points[j]!, points[j + 1]!))
        throw new RangeError(
          `outline: it crosses itself near x = ${millimetres(points[i]!.xM)} mm, r = ${millimetres(points[i]!.rM)} mm; is a hollow, hole or fillet too big for the metal there?`,
        )
  if (!(volumeM3Of(outline) > 0))
    throw new RangeError('outline: it encloses no metal; walk it from the working end to the other end')
  return outline
}

/** Points along the outline, at most `chordM` apart; ends of all pieces are among them. */
export function polylineOf(outline: Outline, chordM: number): OutlinePoint[] {
  const points: OutlinePoint[] = []
  for (const piece of outline.pieces) {
    const byLength = Math.ceil(pieceLengthM(piece) / chordM)
    const parts = piece.kind === 'line' ? 1 : Math.max(byLength, Math.ceil(Math.abs(piece.sweepRad) / 0.3))
    const count = piece.kind === 'line' ? Math.max(1, byLength) : parts
    for (let k = 0; k < count; k++) points.push(pointOn(piece, k / count))
  }
  points.push(outline.pieces[outline.pieces.length - 1]!.to)
  return points
}

/** Outer radius of the body at `xM` [m]: at a step the larger one, outside the body 0. */
export function radiusAt(outline: Outline, xM: number): number {
  let radius = 0
  for (const piece of outline.pieces) for (const r of crossingsAt(piece, xM)) radius = Math.max(radius, r)
  return radius
}

/** Exact volume of the body of revolution [m3]. */
export function volumeM3Of(outline: Outline): number {
  return outline.pieces.reduce((sum, piece) => sum + volumeUnderM3(piece), 0)
}

/** Exact area of its surface [m2]. */
export function surfaceM2Of(outline: Outline): number {
  return outline.pieces.reduce((sum, piece) => sum + sweptAreaM2(piece), 0)
}

function cross(a: OutlinePoint, b: OutlinePoint, c: OutlinePoint, d: OutlinePoint): boolean {
  // Most pairs lie apart; that shows without a product.
  if (Math.max(a.xM, b.xM) < Math.min(c.xM, d.xM) || Math.max(c.xM, d.xM) < Math.min(a.xM, b.xM)) return false
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0
}

function side(p: OutlinePoint, q: OutlinePoint, s: OutlinePoint): number {
  return (q.xM - p.xM) * (s.rM - p.rM) - (q.rM - p.rM) * (s.xM - p.xM)
}

function millimetres(m: number): string {
  return String(Math.round(m * 1e4) / 10)
}
