import { atan2 } from '#engine/arithmetic/angles.ts'
import { square } from '#engine/arithmetic/square.ts'
import { halfThicknesses } from './half-thickness.ts'
import {
  crossingsAt,
  directionOn,
  distanceM,
  type OutlinePiece,
  type OutlinePoint,
  pieceLengthM,
  pointOn,
} from './outline-pieces.ts'
import { columnDepthsM, type SizeLaw } from './size-law.ts'

/** Turns above this are corners, below it joints [rad]. */
const CORNER_RAD = 0.17
/** Corners that turn by more than this are sharp edges: less than 70 degrees of metal [rad]. */
const SHARP_RAD = 1.92

/** Ends nearer than this meet [m]. */
const SAME_M = 1e-7

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
}

/** What the size along the surface obeys: near `at` it is `sizeM`, and grows from there. */
interface SizeSource {
  readonly at: OutlinePoint
  readonly sizeM: number
}

/** A sharp edge or point: within `untilM` of it the metal is thinner than two of the least cells, and one segment spans that way. */
interface SharpEdge {
  readonly at: OutlinePoint
  readonly untilM: number
}

/**
 * The law of a grade fitted to a body: finer on slender ones, and with cells enlarged inside and along the surface until about as many
 * nodes will do as the grade allows.
 */
export function fittedLaw(pieces: readonly OutlinePiece[], grade: SizeLaw): SizeLaw {
  const widest = Math.max(...pieces.map((piece) => Math.max(piece.from.rM, piece.to.rM)))
  let law = { ...grade, surfaceM: Math.min(grade.surfaceM, (2 * widest) / grade.cellsDeep) }
  const nodes = place(pieces, law, [], () => 3 * law.surfaceM)
  const halves = halfThicknesses(nodes)
  for (let round = 0; round < 8; round++) {
    const sources = flattened([...cornersOf(pieces, law), ...samplesOf(nodes, halves, law)])
    let expected = 0
    for (let i = 0; i < halves.length; i++) {
      const rows = columnDepthsM(skinM(law, halves[i]!), law.growth, insideM(law, halves[i]!), halves[i]!).length
      const lengthM = Math.sqrt(square(nodes.xM[i + 1]! - nodes.xM[i]!) + square(nodes.rM[i + 1]! - nodes.rM[i]!))
      expected += (rows * lengthM) / sizeFrom(sources, law.growth, middle(nodes, i))
    }
    const over = expected / law.nodes
    if (over < 1.05) break
    const shrink = Math.max(0.5, Math.sqrt(1 / over))
    law = { ...law, cellsDeep: Math.max(LEAST_CELLS_DEEP, law.cellsDeep * shrink), cellsAlong: law.cellsAlong * shrink }
  }
  return law
}

/** However many nodes it costs, half a thickness gets this many cells. */
const LEAST_CELLS_DEEP = 4

/**
 * Cuts an outline into nodes by the law. Pieces must already be cut where a node is wanted.
 * Thickness is not known until there are nodes, so the nodes are placed three times, each time with the thickness that the last ones saw.
 */
export function boundaryNodes(pieces: readonly OutlinePiece[], law: SizeLaw, waterlinesM: readonly number[]): BoundaryNodes {
  const corners = cornersOf(pieces, law)
  const edges = sharpEdges(pieces, law)
  const lines: SizeSource[] = []
  for (const piece of pieces)
    for (const xM of waterlinesM) for (const rM of crossingsAt(piece, xM)) lines.push({ at: { xM, rM }, sizeM: law.waterlineM })
  let nodes = place(pieces, law, edges, () => 3 * law.surfaceM)
  for (let pass = 0; pass < 3; pass++) {
    const sources = flattened([...corners, ...lines, ...samplesOf(nodes, halfThicknesses(nodes), law)])
    nodes = place(pieces, law, edges, (p) => sizeFrom(sources, law.growth, p))
  }
  const halves = halfThicknesses(nodes)
  const skins = flattened(halves.map((half, i) => ({ at: middle(nodes, i), sizeM: skinM(law, half) })))
  for (let i = 0; i < halves.length; i++) {
    const skin = sizeFrom(skins, law.growth, middle(nodes, i))
    nodes.skinM.push(skin)
    nodes.insideM.push(Math.max(skin, insideM(law, halves[i]!)))
  }
  return nodes
}

function cornersOf(pieces: readonly OutlinePiece[], law: SizeLaw): SizeSource[] {
  const corners: SizeSource[] = []
  for (let i = 0; i <= pieces.length; i++)
    if (Math.abs(turnBefore(pieces, i)) > CORNER_RAD)
      corners.push({ at: pieces[i]?.from ?? pieces[i - 1]!.to, sizeM: law.surfaceM })
  return corners
}

function samplesOf(nodes: BoundaryNodes, halves: readonly number[], law: SizeLaw): SizeSource[] {
  return halves.map((half, i) => ({ at: middle(nodes, i), sizeM: alongM(law, half) }))
}

function insideM(law: SizeLaw, half: number): number {
  return Math.max(skinM(law, half), half / law.cellsDeep)
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

/** Least size that the sources allow at a point; `flat` holds x, r and size of each, smallest sizes first. */
function sizeFrom(flat: Float64Array, growth: number, p: OutlinePoint): number {
  let size = Number.POSITIVE_INFINITY
  for (let k = 0; k < flat.length; k += 3) {
    const own = flat[k + 2]!
    if (own >= size) break
    const dx = flat[k]! - p.xM
    const dr = flat[k + 1]! - p.rM
    const here = own + growth * Math.sqrt(dx * dx + dr * dr)
    if (here < size) size = here
  }
  return size
}

function flattened(sources: SizeSource[]): Float64Array {
  const flat = new Float64Array(3 * sources.length)
  sources.sort((a, b) => a.sizeM - b.sizeM)
  for (const [k, { at, sizeM }] of sources.entries()) flat.set([at.xM, at.rM, sizeM], 3 * k)
  return flat
}

/** Nodes so that each segment spans the same share of the integral of 1 / size along its piece. */
function place(
  pieces: readonly OutlinePiece[],
  law: SizeLaw,
  edges: readonly SharpEdge[],
  wanted: (p: OutlinePoint) => number,
): BoundaryNodes {
  const nodes: BoundaryNodes = { xM: [], rM: [], piece: [], shareFrom: [], shareTo: [], skinM: [], insideM: [] }
  const least = law.leastShare * law.surfaceM
  for (const piece of pieces) {
    const length = pieceLengthM(piece)
    const near = edges.filter(({ at }) => distanceM(at, piece.from) < SAME_M || distanceM(at, piece.to) < SAME_M)
    const size = (p: OutlinePoint): number => {
      for (const { at, untilM } of near) if (distanceM(at, p) < untilM) return 1.02 * untilM
      return Math.min(chord, wanted(p))
    }
    const chord = piece.kind === 'arc' ? Math.max(least, law.chordRad * piece.radiusM) : Number.POSITIVE_INFINITY
    const parts = Math.max(4, Math.min(400, Math.ceil(length / law.surfaceM)))
    const count = [0]
    let before = 1 / size(piece.from)
    for (let k = 1; k <= parts; k++) {
      const here = 1 / size(pointOn(piece, k / parts))
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

/** Edges and points so sharp that the metal behind them stays thinner than two of the least cells for a good way. */
function sharpEdges(pieces: readonly OutlinePiece[], law: SizeLaw): SharpEdge[] {
  const least = law.leastShare * law.surfaceM
  const edges: SharpEdge[] = []
  for (let i = 0; i <= pieces.length; i++) {
    if (turnBefore(pieces, i) > -SHARP_RAD) continue
    const before = pieces[i - 1]
    const after = pieces[i]
    const room = Math.min(before ? pieceLengthM(before) : Infinity, after ? pieceLengthM(after) : Infinity)
    const thickness = (u: number): number => {
      const p = before && pointOn(before, 1 - u / pieceLengthM(before))
      const q = after && pointOn(after, u / pieceLengthM(after))
      return p && q ? distanceM(p, q) : 2 * (p ?? q!).rM
    }
    let untilM = least
    while (untilM < room && thickness(untilM) < 2 * least) untilM += least / 2
    edges.push({ at: after?.from ?? before!.to, untilM: Math.min(untilM, room) })
  }
  return edges
}

/**
 * Turn of the outline at the start of piece `index` [rad], left (into an inner corner) positive; index = count gives the one at the end.
 * On the axis it is the turn against the mirror image: a flat face turns by nothing, a point turns right, a conical hollow left.
 */
export function turnBefore(pieces: readonly OutlinePiece[], index: number): number {
  const before = index > 0 ? directionOn(pieces[index - 1]!, 1) : undefined
  const after = index < pieces.length ? directionOn(pieces[index]!, 0) : undefined
  if (before === undefined) return 2 * atan2(-after!.xM, after!.rM)
  if (after === undefined) return 2 * atan2(-before.xM, -before.rM)
  return atan2(before.xM * after.rM - before.rM * after.xM, before.xM * after.xM + before.rM * after.rM)
}

function middle({ xM, rM }: BoundaryNodes, i: number): OutlinePoint {
  return { xM: (xM[i]! + xM[i + 1]!) / 2, rM: (rM[i]! + rM[i + 1]!) / 2 }
}
