import { square } from '#engine/arithmetic/square.ts'
import { type AskedPlace, cutAt, placesOf } from './asked-points.ts'
import { type BoundaryNodes, boundaryNodes, fittedLaw } from './boundary-nodes.ts'
import type { AxisymmetricMesh, MeshGrade } from './mesh.ts'
import { edgesOf, renumbered, surfaceOf, volumesOf } from './mesh-measures.ts'
import { insidePoints } from './mesh-points.ts'
import { nodeGraph, reverseCuthillMcKee } from './node-order.ts'
import type { Outline } from './outline-chain.ts'
import { distanceToBoundaryM } from './outline-distance.ts'
import { distanceM, pointOn, withoutSpecks } from './outline-pieces.ts'
import { SIZE_LAWS } from './size-law.ts'
import { triangulate } from './triangulation.ts'

/** What a mesh must hold besides the body: points that are nodes, and levels at which a fluid will stand for a while [m]. */
export interface MeshWishes {
  readonly points?: readonly { readonly xM: number; readonly rM: number }[]
  readonly waterlinesM?: readonly number[]
}

/** Rounds of mending before a boundary that is not made of edges counts as a failure. */
const MENDING_ROUNDS = 12

/**
 * Cuts the body of an outline into a mesh of `grade`.
 *
 * Nodes are numbered by reverse Cuthill-McKee over the edges. A wished point is a node at exactly its place; one within 10 micrometres of
 * the surface is the node on it, and one outside the body is moved to the nearest place on it. `askedNode` tells their nodes in order.
 *
 * - throws: Error saying where, when some boundary segment cannot be made an edge or the volume does not come out
 */
export function meshOf(outline: Outline, grade: MeshGrade, wanted: MeshWishes = {}): AxisymmetricMesh {
  const law = fittedLaw(outline.pieces, SIZE_LAWS[grade])
  const plain = { ...outline, pieces: withoutSpecks(outline.pieces, (law.leastShare * law.surfaceM) / 2) }
  const places = placesOf(plain, wanted.points ?? [])
  let nodes = boundaryNodes(cutAt(plain, places), law, wanted.waterlinesM ?? [])
  const asked = places.flatMap((place) => (place.kind === 'inside' ? [place.at] : []))
  const inside = insidePoints(nodes, law, asked)
  let xM = inside.xM
  let rM = inside.rM

  let { triangles, missing } = triangulate(xM, rM, nodes)
  for (let round = 0; missing.length > 0; round++) {
    if (round === MENDING_ROUNDS) {
      const at = missing[0]!
      throw new Error(
        `mesh: the surface near x = ${nodes.xM[at]} m, r = ${nodes.rM[at]} m could not be kept; is the metal there thinner than 0.1 mm?`,
      )
    }
    const mended = mend(nodes, xM, rM, missing, asked.length)
    nodes = mended.nodes
    xM = mended.xM
    rM = mended.rM
    ;({ triangles, missing } = triangulate(xM, rM, nodes))
  }
  return assembled(nodes, xM, rM, triangles, places)
}

/**
 * Clears points from within the half-circles over missing segments; a segment that only other surfaces or asked points crowd is halved.
 * The first points are the boundary nodes, the `asked` next ones stay.
 */
function mend(
  nodes: BoundaryNodes,
  xM: readonly number[],
  rM: readonly number[],
  missing: readonly number[],
  asked: number,
): { nodes: BoundaryNodes; xM: number[]; rM: number[] } {
  const count = nodes.xM.length
  const drop = new Set<number>()
  const halve = new Set<number>()
  for (const s of missing) {
    const middle = { xM: (nodes.xM[s]! + nodes.xM[s + 1]!) / 2, rM: (nodes.rM[s]! + nodes.rM[s + 1]!) / 2 }
    const reach = distanceM(middle, { xM: nodes.xM[s]!, rM: nodes.rM[s]! }) * 1.001
    let cleared = false
    for (let i = count + asked; i < xM.length; i++) {
      if (distanceM(middle, { xM: xM[i]!, rM: rM[i]! }) >= reach) continue
      drop.add(i)
      cleared = true
    }
    if (!cleared) halve.add(s)
  }
  const next: BoundaryNodes = { xM: [], rM: [], piece: [], shareFrom: [], shareTo: [], skinM: [], insideM: [] }
  for (let i = 0; i < count; i++) {
    next.xM.push(nodes.xM[i]!)
    next.rM.push(nodes.rM[i]!)
    if (i === count - 1) break
    const piece = nodes.piece[i]!
    const shares = halve.has(i)
      ? [nodes.shareFrom[i]!, (nodes.shareFrom[i]! + nodes.shareTo[i]!) / 2, nodes.shareTo[i]!]
      : [nodes.shareFrom[i]!, nodes.shareTo[i]!]
    for (let k = 0; k + 1 < shares.length; k++) {
      if (k > 0) {
        const p = pointOn(piece, shares[k]!)
        next.xM.push(p.xM)
        next.rM.push(p.rM)
      }
      next.piece.push(piece)
      next.shareFrom.push(shares[k]!)
      next.shareTo.push(shares[k + 1]!)
      next.skinM.push(nodes.skinM[i]!)
      next.insideM.push(nodes.insideM[i]!)
    }
  }
  const rest = (values: readonly number[]) => values.filter((_, i) => i >= count && !drop.has(i))
  return { nodes: next, xM: [...next.xM, ...rest(xM)], rM: [...next.rM, ...rest(rM)] }
}

/** Measures, numbers and checks the finished triangles. */
function assembled(
  nodes: BoundaryNodes,
  xAll: readonly number[],
  rAll: readonly number[],
  triangles: Uint32Array,
  places: readonly AskedPlace[],
): AxisymmetricMesh {
  const used = new Uint8Array(xAll.length)
  for (const i of triangles) used[i] = 1
  const lost = nodes.xM.findIndex((_, i) => used[i] === 0)
  if (lost >= 0) throw new Error(`mesh: the surface near x = ${nodes.xM[lost]} m, r = ${nodes.rM[lost]} m belongs to no triangle`)

  // Number the nodes in use, then renumber them so that neighbours have near numbers.
  const old: number[] = []
  for (let i = 0; i < xAll.length; i++) if (used[i] === 1) old.push(i)
  const compact = new Uint32Array(xAll.length)
  for (const [k, i] of old.entries()) compact[i] = k
  const edges = edgesOf(
    old.map((i) => xAll[i]!),
    old.map((i) => rAll[i]!),
    triangles.map((i) => compact[i]!),
  )
  const order = reverseCuthillMcKee(nodeGraph(old.length, edges.edgeFrom, edges.edgeTo))
  const number = new Uint32Array(xAll.length)
  for (const [k, j] of order.entries()) number[old[j]!] = k

  const xM = Float64Array.from(order, (j) => xAll[old[j]!]!)
  const rM = Float64Array.from(order, (j) => rAll[old[j]!]!)
  const numbered = triangles.map((i) => number[i]!)
  const boundaryNode = Uint32Array.from(nodes.xM, (_, i) => number[i]!)
  const volumeM3 = volumesOf(xM, rM, numbered)
  checkVolume(nodes, volumeM3)

  const depthM = new Float64Array(xM.length)
  for (let i = 0; i < xM.length; i++) depthM[i] = distanceToBoundaryM(nodes, xM[i]!, rM[i]!)
  for (const i of boundaryNode) depthM[i] = 0
  const askedNode = Uint32Array.from(places, ({ at }) => nearestNode(xM, rM, at.xM, at.rM))
  return {
    xM,
    rM,
    triangles: numbered,
    volumeM3,
    ...renumbered(edges, old.length, (j) => number[old[j]!]!),
    ...surfaceOf(xM, rM, boundaryNode),
    depthM,
    boundaryNode,
    askedNode,
  }
}

/** The triangles must fill the polygon of the boundary nodes, no more and no less. */
function checkVolume({ xM, rM }: BoundaryNodes, volumeM3: Float64Array): void {
  let exact = 0
  for (let i = 0; i + 1 < xM.length; i++)
    exact += (Math.PI / 3) * (xM[i + 1]! - xM[i]!) * (rM[i]! * rM[i]! + rM[i]! * rM[i + 1]! + rM[i + 1]! * rM[i + 1]!)
  const sum = volumeM3.reduce((total, v) => total + v, 0)
  if (!(Math.abs(sum - exact) < 1e-6 * exact))
    throw new Error(`mesh: its volume is ${sum} m3 where the body has ${exact} m3; parts of it overlap or are missing`)
  const empty = volumeM3.findIndex((v) => !(v > 0))
  if (empty >= 0) throw new Error(`mesh: node ${empty} has no volume`)
}

function nearestNode(xM: Float64Array, rM: Float64Array, x: number, r: number): number {
  let best = 0
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < xM.length; i++) {
    const distance2 = square(xM[i]! - x) + square(rM[i]! - r)
    if (distance2 < least) {
      least = distance2
      best = i
    }
  }
  return best
}
