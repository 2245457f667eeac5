import type { AxisymmetricMesh } from '#engine/geometry/mesh.ts'

/** A mesh laid out for stepping, made once for each mesh: edges grouped by their first node, surface gathered by node. */
export interface MeshPlan {
  readonly nodes: number
  readonly inverseVolume: Float64Array
  /** Edges that start at node i are `edgeStart[i]` to `edgeStart[i + 1] - 1` [n + 1]; every edge is listed once. */
  readonly edgeStart: Int32Array
  readonly edgeTo: Int32Array
  /** Half the conductance, so that it multiplies the sum of the two conductivities [e]. */
  readonly halfConductance: Float64Array
  /** Nodes on the surface [m] and all the area of each [m2]. */
  readonly surfaceNode: Int32Array
  readonly surfaceArea: Float64Array
  /** Half-segments by surface node: those of its k-th are `partStart[k]` to `partStart[k + 1] - 1`; area, lower end and reach. */
  readonly partStart: Int32Array
  readonly partArea: Float64Array
  readonly partLowM: Float64Array
  readonly partReachM: Float64Array
}

/** No half-segment reaches less far along the axis than this, so that a rising fluid wets it within some time, not at once [m]. */
const SHORTEST_REACH_M = 0.05e-3

const plans = new WeakMap<AxisymmetricMesh, MeshPlan>()

/** Throws RangeError when the arrays of the mesh don't fit together or a node has no volume. */
export function meshPlan(mesh: AxisymmetricMesh): MeshPlan {
  const before = plans.get(mesh)
  if (before !== undefined) return before
  const n = mesh.xM.length
  if (mesh.volumeM3.length !== n) throw new RangeError(`mesh: ${mesh.volumeM3.length} volumes for ${n} nodes`)
  const weak = mesh.volumeM3.findIndex((volume) => !(volume > 0))
  if (weak >= 0) throw new RangeError(`mesh: node ${weak} at x ${mesh.xM[weak]} m, r ${mesh.rM[weak]} m has no volume`)
  const edges = groupedBy(mesh.edgeFrom, mesh.edgeTo, n)
  const parts = groupedBy(mesh.surfaceNode, mesh.surfaceNode, n)
  const onSurface: number[] = []
  for (let i = 0; i < n; i++) if (parts.start[i + 1]! > parts.start[i]!) onSurface.push(i)
  const partArea = Float64Array.from(parts.order, (s) => mesh.surfaceAreaM2[s]!)
  // Within the body, so that a fluid from its one end to its other touches all of it.
  const lowestM = mesh.xM.reduce((least, x) => Math.min(least, x), Number.POSITIVE_INFINITY)
  const highestM = mesh.xM.reduce((most, x) => Math.max(most, x), Number.NEGATIVE_INFINITY)
  const lowOf = (s: number): number => Math.min(Math.max(mesh.surfaceLowM[s]!, lowestM), highestM - SHORTEST_REACH_M)
  const partStart = Int32Array.from([...onSurface.map((i) => parts.start[i]!), parts.order.length])
  const plan: MeshPlan = {
    nodes: n,
    inverseVolume: mesh.volumeM3.map((volume) => 1 / volume),
    edgeStart: edges.start,
    edgeTo: Int32Array.from(edges.order, (e) => (mesh.edgeFrom[e]! < mesh.edgeTo[e]! ? mesh.edgeTo[e]! : mesh.edgeFrom[e]!)),
    halfConductance: Float64Array.from(edges.order, (e) => 0.5 * mesh.edgeConductanceM[e]!),
    surfaceNode: Int32Array.from(onSurface),
    surfaceArea: Float64Array.from(onSurface, (_, k) => sum(partArea, partStart[k]!, partStart[k + 1]!)),
    partStart,
    partArea,
    partLowM: Float64Array.from(parts.order, lowOf),
    partReachM: Float64Array.from(parts.order, (s) =>
      Math.max(SHORTEST_REACH_M, Math.min(mesh.surfaceHighM[s]!, highestM) - lowOf(s)),
    ),
  }
  plans.set(mesh, plan)
  return plan
}

/** Counting sort of items by the lower of their two nodes. */
function groupedBy(a: Uint32Array, b: Uint32Array, n: number): { start: Int32Array; order: Int32Array } {
  const start = new Int32Array(n + 1)
  for (let e = 0; e < a.length; e++) {
    const low = Math.min(a[e]!, b[e]!)
    if (!(Math.max(a[e]!, b[e]!) < n))
      throw new RangeError(`mesh: an edge or half-segment names node ${Math.max(a[e]!, b[e]!)} of ${n}`)
    start[low + 1] = start[low + 1]! + 1
  }
  for (let i = 0; i < n; i++) start[i + 1] = start[i + 1]! + start[i]!
  const fill = start.slice()
  const order = new Int32Array(a.length)
  for (let e = 0; e < a.length; e++) {
    const low = Math.min(a[e]!, b[e]!)
    order[fill[low]!] = e
    fill[low] = fill[low]! + 1
  }
  return { start, order }
}

function sum(values: Float64Array, from: number, to: number): number {
  let total = 0
  for (let i = from; i < to; i++) total += values[i]!
  return total
}
