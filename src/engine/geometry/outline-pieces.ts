import { atan2, cos, sin } from '#engine/arithmetic/angles.ts'
import { square } from '#engine/arithmetic/square.ts'
/** A point of the half-section [m]: along the axis from the working end, and out from the axis. */
export interface OutlinePoint {
  readonly xM: number
  readonly rM: number
}

export interface OutlineLine {
  readonly kind: 'line'
  readonly from: OutlinePoint
  readonly to: OutlinePoint
}

/** Part of a circle: angles [rad] from the x axis toward r; `sweepRad` is signed and its size is at most pi. */
export interface OutlineArc {
  readonly kind: 'arc'
  readonly from: OutlinePoint
  readonly to: OutlinePoint
  readonly centre: OutlinePoint
  readonly radiusM: number
  readonly startRad: number
  readonly sweepRad: number
}

export type OutlinePiece = OutlineLine | OutlineArc

export function line(from: OutlinePoint, to: OutlinePoint): OutlineLine {
  return { kind: 'line', from, to }
}

/** The arc about `centre` from one point to the other, the short way round; of two half circles the one given by `side` (1 turns left). */
export function arcAbout(centre: OutlinePoint, from: OutlinePoint, to: OutlinePoint, side: 1 | -1 = -1): OutlineArc {
  const startRad = atan2(from.rM - centre.rM, from.xM - centre.xM)
  const endRad = atan2(to.rM - centre.rM, to.xM - centre.xM)
  let sweepRad = endRad - startRad
  if (sweepRad > Math.PI) sweepRad -= 2 * Math.PI
  if (sweepRad < -Math.PI) sweepRad += 2 * Math.PI
  if (Math.PI - Math.abs(sweepRad) < 1e-9) sweepRad = side * Math.PI
  const radiusM = Math.sqrt(square(from.xM - centre.xM) + square(from.rM - centre.rM))
  return { kind: 'arc', from, to, centre, radiusM, startRad, sweepRad }
}

export function pieceLengthM(piece: OutlinePiece): number {
  return piece.kind === 'arc' ? piece.radiusM * Math.abs(piece.sweepRad) : distanceM(piece.from, piece.to)
}

/** The point at `share` (0..1) of the piece's length; its ends come out exactly. */
export function pointOn(piece: OutlinePiece, share: number): OutlinePoint {
  if (share <= 0) return piece.from
  if (share >= 1) return piece.to
  if (piece.kind === 'line')
    return {
      xM: piece.from.xM + share * (piece.to.xM - piece.from.xM),
      rM: piece.from.rM + share * (piece.to.rM - piece.from.rM),
    }
  const angle = piece.startRad + share * piece.sweepRad
  return { xM: piece.centre.xM + piece.radiusM * cos(angle), rM: piece.centre.rM + piece.radiusM * sin(angle) }
}

/** Direction of travel at `share` of the piece, of length 1. The metal lies to its right. */
export function directionOn(piece: OutlinePiece, share: number): OutlinePoint {
  if (piece.kind === 'line') {
    const length = distanceM(piece.from, piece.to)
    return { xM: (piece.to.xM - piece.from.xM) / length, rM: (piece.to.rM - piece.from.rM) / length }
  }
  const angle = piece.startRad + share * piece.sweepRad
  const turn = Math.sign(piece.sweepRad)
  return { xM: -turn * sin(angle), rM: turn * cos(angle) }
}

/** The same piece walked the other way. */
function reversed(piece: OutlinePiece): OutlinePiece {
  if (piece.kind === 'line') return line(piece.to, piece.from)
  return { ...piece, from: piece.to, to: piece.from, startRad: piece.startRad + piece.sweepRad, sweepRad: -piece.sweepRad }
}

/** The piece seen from the other end of a body `lengthM` long: x becomes lengthM - x, and it is walked the other way. */
export function mirrored(piece: OutlinePiece, lengthM: number): OutlinePiece {
  const flip = (p: OutlinePoint): OutlinePoint => ({ xM: lengthM - p.xM, rM: p.rM })
  const back = reversed(piece)
  if (back.kind === 'line') return line(flip(back.from), flip(back.to))
  return {
    ...back,
    from: flip(back.from),
    to: flip(back.to),
    centre: flip(back.centre),
    startRad: Math.PI - back.startRad,
    sweepRad: -back.sweepRad,
  }
}

/** Integral of pi r2 dx along the piece [m3]: what it adds to the volume of the body of revolution. */
export function volumeUnderM3(piece: OutlinePiece): number {
  if (piece.kind === 'line') {
    const { from, to } = piece
    return (Math.PI * (to.xM - from.xM) * (from.rM * from.rM + from.rM * to.rM + to.rM * to.rM)) / 3
  }
  const { centre, radiusM: rho, startRad: a, sweepRad } = piece
  const c = centre.rM
  const b = a + sweepRad
  // r = c + rho sin t and dx = -rho sin t dt, term by term.
  const sine = cos(a) - cos(b)
  const sine2 = (sweepRad - (sin(2 * b) - sin(2 * a)) / 2) / 2
  const sine3 = sine + (cube(cos(b)) - cube(cos(a))) / 3
  return -Math.PI * rho * (c * c * sine + 2 * c * rho * sine2 + rho * rho * sine3)
}

/** Area that the piece sweeps in a full turn [m2], by Pappus. */
export function sweptAreaM2(piece: OutlinePiece): number {
  if (piece.kind === 'line') return Math.PI * (piece.from.rM + piece.to.rM) * distanceM(piece.from, piece.to)
  const { centre, radiusM: rho, startRad: a, sweepRad } = piece
  const firstMoment = centre.rM * sweepRad + rho * (cos(a) - cos(a + sweepRad))
  return 2 * Math.PI * rho * Math.abs(firstMoment)
}

/** Radii at which the piece crosses the plane x [m]: none, one or two; a piece that lies in the plane gives both its ends. */
export function crossingsAt(piece: OutlinePiece, xM: number): number[] {
  const { from, to } = piece
  if (piece.kind === 'line') {
    if (xM < Math.min(from.xM, to.xM) || xM > Math.max(from.xM, to.xM)) return []
    if (from.xM === to.xM) return [from.rM, to.rM]
    return [from.rM + ((xM - from.xM) / (to.xM - from.xM)) * (to.rM - from.rM)]
  }
  const found: number[] = []
  const off = xM - piece.centre.xM
  const square = piece.radiusM * piece.radiusM - off * off
  for (const end of [from, to]) if (Math.abs(end.xM - xM) < 1e-12) found.push(end.rM)
  if (square < 0) return found
  for (const half of [Math.sqrt(square), -Math.sqrt(square)]) {
    let along = (atan2(half, off) - piece.startRad) / piece.sweepRad
    const turn = (2 * Math.PI) / Math.abs(piece.sweepRad)
    along -= turn * Math.floor(along / turn)
    if (along <= 1) found.push(piece.centre.rM + half)
  }
  return found
}

/** The chain without pieces shorter than `speckM`: the straight piece beside one reaches over it. Between two arcs they stay. */
export function withoutSpecks(pieces: readonly OutlinePiece[], speckM: number): OutlinePiece[] {
  const rest = [...pieces]
  const kept: OutlinePiece[] = []
  for (let i = 0; i < rest.length; i++) {
    const piece = rest[i]!
    const before = kept[kept.length - 1]
    const after = rest[i + 1]
    // Of two straight neighbours the shorter one gives way: a long one would carry a tilt far.
    const giveAfter = after?.kind === 'line' && (before?.kind !== 'line' || pieceLengthM(after) <= pieceLengthM(before))
    if (pieceLengthM(piece) >= speckM) kept.push(piece)
    else if (giveAfter) rest[i + 1] = line(piece.from, after.to)
    else if (before?.kind === 'line') kept[kept.length - 1] = line(before.from, piece.to)
    else kept.push(piece)
  }
  return kept
}

export function distanceM(a: OutlinePoint, b: OutlinePoint): number {
  return Math.sqrt(square(a.xM - b.xM) + square(a.rM - b.rM))
}

function cube(x: number): number {
  return x * x * x
}
