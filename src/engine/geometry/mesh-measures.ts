import { square } from '#engine/arithmetic/square.ts'

/** Widened reach of a boundary half-segment along the axis [m]: a fluid that rises past a flat face covers it over this way, not in no time. */
const LEAST_REACH_M = 0.25e-3

/** Below this share of its possible size an edge carries no heat: the diagonals of right-angled cells [1]. */
const NO_CONDUCTANCE = 1e-9

/** Volume that belongs to each node [n, m3]: with the weight r, a third of each triangle leans to its outer nodes. */
export function volumesOf(xM: ArrayLike<number>, rM: ArrayLike<number>, triangles: Uint32Array): Float64Array {
  const volumeM3 = new Float64Array(xM.length)
  for (let t = 0; t < triangles.length; t += 3) {
    const a = triangles[t]!
    const b = triangles[t + 1]!
    const c = triangles[t + 2]!
    const area = ((xM[b]! - xM[a]!) * (rM[c]! - rM[a]!) - (xM[c]! - xM[a]!) * (rM[b]! - rM[a]!)) / 2
    const sum = rM[a]! + rM[b]! + rM[c]!
    const share = (2 * Math.PI * area) / 12
    volumeM3[a]! += share * (sum + rM[a]!)
    volumeM3[b]! += share * (sum + rM[b]!)
    volumeM3[c]! += share * (sum + rM[c]!)
  }
  return volumeM3
}

export interface MeshEdges {
  readonly edgeFrom: Uint32Array
  readonly edgeTo: Uint32Array
  readonly edgeConductanceM: Float64Array
}

/**
 * Edges with their conductance [e, m]: 2 pi sum over the triangles beside the edge of (mean r) cot(opposite angle) / 2, which is linear
 * finite elements with the weight r. Edges that carry nothing are left out.
 */
export function edgesOf(xM: ArrayLike<number>, rM: ArrayLike<number>, triangles: Uint32Array): MeshEdges {
  const count = xM.length
  const index = new Map<number, number>()
  const from: number[] = []
  const to: number[] = []
  const conductance: number[] = []
  for (let t = 0; t < triangles.length; t += 3) {
    const mean = (rM[triangles[t]!]! + rM[triangles[t + 1]!]! + rM[triangles[t + 2]!]!) / 3
    for (let k = 0; k < 3; k++) {
      const apex = triangles[t + k]!
      const a = triangles[t + ((k + 1) % 3)]!
      const b = triangles[t + ((k + 2) % 3)]!
      const ux = xM[a]! - xM[apex]!
      const ur = rM[a]! - rM[apex]!
      const vx = xM[b]! - xM[apex]!
      const vr = rM[b]! - rM[apex]!
      const cotangent = (ux * vx + ur * vr) / (ux * vr - ur * vx)
      const key = a < b ? a * count + b : b * count + a
      let e = index.get(key)
      if (e === undefined) {
        e = from.length
        index.set(key, e)
        from.push(Math.min(a, b))
        to.push(Math.max(a, b))
        conductance.push(0)
      }
      conductance[e]! += Math.PI * mean * cotangent
    }
  }
  const kept = from.flatMap((a, e) => (Math.abs(conductance[e]!) > NO_CONDUCTANCE * Math.PI * (rM[a]! + rM[to[e]!]!) ? [e] : []))
  return {
    edgeFrom: Uint32Array.from(kept, (e) => from[e]!),
    edgeTo: Uint32Array.from(kept, (e) => to[e]!),
    edgeConductanceM: Float64Array.from(kept, (e) => conductance[e]!),
  }
}

/** The same edges with new node numbers below `count`, each from its lower node to its higher one, and in the order of these. */
export function renumbered(edges: MeshEdges, count: number, number: (old: number) => number): MeshEdges {
  const key = Float64Array.from(edges.edgeFrom, (from, e) => {
    const a = number(from)
    const b = number(edges.edgeTo[e]!)
    return Math.min(a, b) * count + Math.max(a, b)
  })
  const order = Uint32Array.from(key.keys()).sort((p, q) => key[p]! - key[q]!)
  return {
    edgeFrom: Uint32Array.from(order, (e) => Math.floor(key[e]! / count)),
    edgeTo: Uint32Array.from(order, (e) => key[e]! % count),
    edgeConductanceM: Float64Array.from(order, (e) => edges.edgeConductanceM[e]!),
  }
}

export interface MeshSurface {
  readonly surfaceNode: Uint32Array
  readonly surfaceAreaM2: Float64Array
  readonly surfaceLowM: Float64Array
  readonly surfaceHighM: Float64Array
}

/** Boundary half-segments along `boundaryNode`, the nodes on the surface in order from axis to axis. */
export function surfaceOf(xM: ArrayLike<number>, rM: ArrayLike<number>, boundaryNode: ArrayLike<number>): MeshSurface {
  const halves = 2 * (boundaryNode.length - 1)
  const surface = {
    surfaceNode: new Uint32Array(halves),
    surfaceAreaM2: new Float64Array(halves),
    surfaceLowM: new Float64Array(halves),
    surfaceHighM: new Float64Array(halves),
  }
  for (let s = 0; s < halves; s++) {
    const near = boundaryNode[(s + 1) >> 1]!
    const far = boundaryNode[s % 2 === 0 ? (s >> 1) + 1 : s >> 1]!
    const length = Math.sqrt(square(xM[far]! - xM[near]!) + square(rM[far]! - rM[near]!))
    const middle = (xM[near]! + xM[far]!) / 2
    const short = Math.max(0, LEAST_REACH_M - Math.abs(middle - xM[near]!)) / 2
    surface.surfaceNode[s] = near
    surface.surfaceAreaM2[s] = (Math.PI * length * (2 * rM[near]! + rM[far]!)) / 3
    surface.surfaceLowM[s] = Math.min(xM[near]!, middle) - short
    surface.surfaceHighM[s] = Math.max(xM[near]!, middle) + short
  }
  return surface
}
