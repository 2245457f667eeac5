import { thicknessAtM } from './outline-distance.ts'
import { crossingsAt, directionOn, type OutlinePiece, type OutlinePoint, pieceLengthM, pointOn } from './outline-pieces.ts'
import type { SizeLaw } from './size-law.ts'

/** Turns above this are corners, below it joints [rad]. */
const CORNER_RAD = 0.17

/** Nodes along the outline, from axis to axis, with what the mesh must know of each place. */
export interface BoundaryNodes {
  readonly xM: number[]
  readonly rM: number[]
  /** For segment i (node i to i + 1): its piece, cut at the points asked for, and the shares of that piece at its two nodes. */
  readonly piece: OutlinePiece[]
  readonly shareFrom: number[]
  readonly shareTo: number[]
  /** For segment i: cell size across the skin and largest cell size inside [m]. */
  readonly skinM: number[]
  readonly insideM: number[]
  /** Half of the thickness of metal behind segment i, at most the outer radius there [m]. */
  readonly halfM: number[]
}

/** What the size along the surface obeys: near `at` it is `sizeM`, and grows from there. */
interface SizeSource {
  readonly at: OutlinePoint
  readonly sizeM: number
}

/**
 * Cuts an outline into nodes by the law. Pieces must already be cut where a node is wanted.
 * Thickness is not known until there are nodes, so the nodes are placed three times, each time with the thickness that the last ones saw.
 */
export function boundaryNodes(pieces: readonly OutlinePiece[], law: SizeLaw, waterlinesM: readonly number[]): BoundaryNodes {
  const corners: SizeSource[] = []
  for (let i = 0; i <= pieces.length; i++) {
    const turn = turnBefore(pieces, i)
    if (Math.abs(turn) > CORNER_RAD) corners.push({ at: pieces[i]?.from ?? pieces[i - 1]!.to, sizeM: law.surfaceM })
  }
  const lines: SizeSource[] = []
  for (const piece of pieces)
    for (const xM of waterlinesM) for (const rM of crossingsAt(piece, xM)) lines.push({ at: { xM, rM }, sizeM: law.waterlineM })
  let nodes = place(pieces, law, () => 3 * law.surfaceM)
  for (let pass = 0; pass < 3; pass++) {
    const samples = halfThicknesses(nodes).map((half, i) => ({ at: middle(nodes, i), sizeM: alongM(law, half) }))
    const sources = [...corners, ...lines, ...samples]
    nodes = place(pieces, law, (p) => sizeFrom(sources, law.growth, p))
  }
  const halves = halfThicknesses(nodes)
  for (let i = 0; i < halves.length; i++) {
    let skin = skinM(law, halves[i]!)
    for (let j = 0; j < halves.length; j++) {
      const own = skinM(law, halves[j]!)
      if (own < skin) skin = Math.min(skin, own + law.growth * Math.max(0, apartM(nodes, i, j)))
    }
    nodes.skinM.push(skin)
    nodes.halfM.push(halves[i]!)
    nodes.insideM.push(Math.max(skin, halves[i]! / law.cellsDeep))
  }
  return nodes
}

/** Cell size across the skin where the metal is `half` thick on this side of its middle. */
function skinM(law: SizeLaw, half: number): number {
  const deep = half / law.cellsDeep
  if (deep >= law.surfaceM) return law.surfaceM
  return Math.max(law.leastShare * law.surfaceM, Math.min(law.surfaceM, half / law.cellsInHalfWall))
}

function alongM(law: SizeLaw, half: number): number {
  return Math.max(half / law.cellsAlong, 1.5 * skinM(law, half))
}

/** Half of the thickness behind each segment, but never more than the outer radius of the body there [m]. */
function halfThicknesses(nodes: BoundaryNodes): number[] {
  const halves: number[] = []
  const radii = outerRadii(nodes)
  for (let i = 0; i + 1 < nodes.xM.length; i++) halves.push(Math.min(thicknessAtM(nodes, i) / 2, radii[i]!))
  return halves
}

/** Outer radius of the body beside each segment [m]. */
function outerRadii({ xM, rM }: BoundaryNodes): number[] {
  const radii: number[] = []
  for (let i = 0; i + 1 < xM.length; i++) {
    const x = (xM[i]! + xM[i + 1]!) / 2
    let radius = Math.max(rM[i]!, rM[i + 1]!)
    for (let j = 0; j + 1 < xM.length; j++) {
      const [a, b] = [xM[j]!, xM[j + 1]!]
      if (x < Math.min(a, b) || x > Math.max(a, b)) continue
      radius = Math.max(radius, a === b ? Math.max(rM[j]!, rM[j + 1]!) : rM[j]! + ((x - a) / (b - a)) * (rM[j + 1]! - rM[j]!))
    }
    radii.push(radius)
  }
  return radii
}

function sizeFrom(sources: readonly SizeSource[], growth: number, p: OutlinePoint): number {
  let size = Number.POSITIVE_INFINITY
  for (const { at, sizeM } of sources) {
    if (sizeM >= size) continue
    const dx = at.xM - p.xM
    const dr = at.rM - p.rM
    const here = sizeM + growth * Math.sqrt(dx * dx + dr * dr)
    if (here < size) size = here
  }
  return size
}

/** Nodes so that each segment spans the same share of the integral of 1 / size along its piece. */
function place(pieces: readonly OutlinePiece[], law: SizeLaw, size: (p: OutlinePoint) => number): BoundaryNodes {
  const nodes: BoundaryNodes = { xM: [], rM: [], piece: [], shareFrom: [], shareTo: [], skinM: [], insideM: [], halfM: [] }
  const least = law.leastShare * law.surfaceM
  for (const piece of pieces) {
    const length = pieceLengthM(piece)
    const chord = piece.kind === 'arc' ? Math.max(least, law.chordRad * piece.radiusM) : Number.POSITIVE_INFINITY
    const parts = Math.max(4, Math.min(400, Math.ceil(length / law.surfaceM)))
    const count = [0]
    let before = 1 / Math.min(chord, size(piece.from))
    for (let k = 1; k <= parts; k++) {
      const here = 1 / Math.min(chord, size(pointOn(piece, k / parts)))
      count.push(count[k - 1]! + ((before + here) / 2) * (length / parts))
      before = here
    }
    const segments = Math.max(1, Math.ceil(count[parts]! - 0.1))
    let share = 0
    let k = 0
    for (let s = 1; s <= segments; s++) {
      const want = (s / segments) * count[parts]!
      while (k + 1 < parts && count[k + 1]! < want) k++
      const next = s === segments ? 1 : (k + (want - count[k]!) / (count[k + 1]! - count[k]!)) / parts
      const p = pointOn(piece, share)
      nodes.xM.push(p.xM)
      nodes.rM.push(p.rM)
      nodes.piece.push(piece)
      nodes.shareFrom.push(share)
      nodes.shareTo.push(next)
      share = next
    }
  }
  const end = pieces[pieces.length - 1]!.to
  nodes.xM.push(end.xM)
  nodes.rM.push(end.rM)
  return nodes
}

/**
 * Turn of the outline at the start of piece `index` [rad], left (into an inner corner) positive; index = count gives the one at the end.
 * On the axis it is the turn against the mirror image: a flat face turns by nothing, a point turns right, a conical hollow left.
 */
export function turnBefore(pieces: readonly OutlinePiece[], index: number): number {
  const before = index > 0 ? directionOn(pieces[index - 1]!, 1) : undefined
  const after = index < pieces.length ? directionOn(pieces[index]!, 0) : undefined
  if (before === undefined) return 2 * Math.atan2(-after!.xM, after!.rM)
  if (after === undefined) return 2 * Math.atan2(-before.xM, -before.rM)
  return Math.atan2(before.xM * after.rM - before.rM * after.xM, before.xM * after.xM + before.rM * after.rM)
}

function middle({ xM, rM }: BoundaryNodes, i: number): OutlinePoint {
  return { xM: (xM[i]! + xM[i + 1]!) / 2, rM: (rM[i]! + rM[i + 1]!) / 2 }
}

function apartM(nodes: BoundaryNodes, i: number, j: number): number {
  const a = middle(nodes, i)
  const b = middle(nodes, j)
  return Math.sqrt((a.xM - b.xM) ** 2 + (a.rM - b.rM) ** 2)
}
