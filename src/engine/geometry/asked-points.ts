import { atan2 } from '#engine/arithmetic/angles.ts'
import { type Outline, polylineOf } from './outline-chain.ts'
import { isInside } from './outline-distance.ts'
import { distanceM, type OutlinePiece, type OutlinePoint, pieceLengthM, pointOn } from './outline-pieces.ts'

/** Where an asked point stands: inside the metal, or on the surface at a share of a piece. */
export type AskedPlace =
  | { readonly kind: 'inside'; readonly at: OutlinePoint }
  | { readonly kind: 'surface'; readonly at: OutlinePoint; readonly piece: number; readonly share: number }

/** A point this near the surface is on it [m]. */
const ON_SURFACE_M = 1e-5
/** Points this near each other, or this near the axis, are one, or on it [m]. */
const SAME_M = 1e-6

/** The place of each asked point. One outside the body goes to the nearest place on its surface. */
export function placesOf(outline: Outline, points: readonly OutlinePoint[]): AskedPlace[] {
  const fine = polylineOf(outline, 2e-4)
  const boundary = { xM: fine.map((p) => p.xM), rM: fine.map((p) => p.rM) }
  const places: AskedPlace[] = []
  for (const point of points) {
    const at = { xM: point.xM, rM: Math.abs(point.rM) < SAME_M ? 0 : Math.abs(point.rM) }
    if (!Number.isFinite(at.xM) || !Number.isFinite(at.rM)) throw new RangeError(`mesh: (${point.xM}, ${point.rM}) is no point`)
    const same = places.find((place) => distanceM(place.at, at) < SAME_M)
    const near = nearestOnOutline(outline, at)
    if (same !== undefined) places.push(same)
    // Straight above a point on the axis the count of crossings is the same as a hair above it.
    else if (near.distanceM > ON_SURFACE_M && isInside(boundary, at.xM, at.rM)) places.push({ kind: 'inside', at })
    else places.push({ kind: 'surface', at: near.at, piece: near.piece, share: near.share })
  }
  return places
}

/** The outline's pieces, cut where asked points stand on them, so that a node falls on each. */
export function cutAt(outline: Outline, places: readonly AskedPlace[]): OutlinePiece[] {
  return outline.pieces.flatMap((piece, index) => {
    const shares = places.flatMap((place) => (place.kind === 'surface' && place.piece === index ? [place.share] : []))
    const least = SAME_M / pieceLengthM(piece)
    const cuts = [...new Set(shares)].sort((a, b) => a - b).filter((share) => share > least && share < 1 - least)
    const ends = [0, ...cuts.filter((share, i) => i === 0 || share - cuts[i - 1]! > least), 1]
    return ends.slice(1).map((end, i) => part(piece, ends[i]!, end))
  })
}

/** The place on the outline nearest to a point. */
function nearestOnOutline(
  outline: Outline,
  p: OutlinePoint,
): { piece: number; share: number; at: OutlinePoint; distanceM: number } {
  let best = { piece: 0, share: 0, at: p, distanceM: Number.POSITIVE_INFINITY }
  for (const [index, piece] of outline.pieces.entries()) {
    let share = Math.min(1, Math.max(0, shareNearest(piece, p)))
    // Within a hair of an end it is that end, so that a corner keeps its exact place.
    const hair = SAME_M / pieceLengthM(piece)
    if (share < hair) share = 0
    if (share > 1 - hair) share = 1
    const at = pointOn(piece, share)
    const d = distanceM(at, p)
    if (d < best.distanceM) best = { piece: index, share, at, distanceM: d }
  }
  return best
}

function shareNearest(piece: OutlinePiece, p: OutlinePoint): number {
  if (piece.kind === 'line') {
    const dx = piece.to.xM - piece.from.xM
    const dr = piece.to.rM - piece.from.rM
    return ((p.xM - piece.from.xM) * dx + (p.rM - piece.from.rM) * dr) / (dx * dx + dr * dr)
  }
  const turn = (2 * Math.PI) / Math.abs(piece.sweepRad)
  let share = (atan2(p.rM - piece.centre.rM, p.xM - piece.centre.xM) - piece.startRad) / piece.sweepRad
  share -= turn * Math.floor(share / turn)
  // Off the arc the nearer end is nearest.
  return share <= 1 ? share : share < (1 + turn) / 2 ? 1 : 0
}

function part(piece: OutlinePiece, start: number, end: number): OutlinePiece {
  if (start === 0 && end === 1) return piece
  const ends = { from: pointOn(piece, start), to: pointOn(piece, end) }
  if (piece.kind === 'line') return { ...piece, ...ends }
  return { ...piece, ...ends, startRad: piece.startRad + start * piece.sweepRad, sweepRad: (end - start) * piece.sweepRad }
}
