import type { TriangleMesh } from '#engine/geometry/mesh.ts'
import { dualCells } from './dual-cells.ts'

/** A mesh laid out for stepping, made once for each mesh: edges grouped by their first node, surface gathered by node. */
export interface MeshPlan {
  readonly nodes: number
  readonly volume: Float64Array
  readonly inverseVolume: Float64Array
  /** Edges that start at node i are `edgeStart[i]` to `edgeStart[i + 1] - 1` [n + 1]; every edge is listed once, from its lower node. */
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

const plans = new WeakMap<TriangleMesh, MeshPlan>()

/** Throws RangeError when a triangle or the surface names a node that isn't there, or a node has no volume. */
export function meshPlan(mesh: TriangleMesh): MeshPlan {
  const before = plans.get(mesh)
  if (before !== undefined) return before
  const n = mesh.xM.length
  for (const i of mesh.triangles) if (i >= n) throw new RangeError(`mesh: a triangle names node ${i} of ${n}`)
  for (const i of mesh.boundaryNode) if (i >= n) throw new RangeError(`mesh: its surface names node ${i} of ${n}`)
  const cells = dualCells(mesh)
  const weak = cells.volumeM3.findIndex((volume) => !(volume > 0))
  if (weak >= 0) throw new RangeError(`mesh: node ${weak} at x ${mesh.xM[weak]} m, r ${mesh.rM[weak]} m has no volume`)
  const edges = groupedBy(cells.edgeFrom, n)
  const parts = groupedBy(cells.halfNode, n)
  const onSurface: number[] = []
  for (let i = 0; i < n; i++) if (parts.start[i + 1]! > parts.start[i]!) onSurface.push(i)
  const partArea = Float64Array.from(parts.order, (s) => cells.halfAreaM2[s]!)
  const partStart = Int32Array.from([...onSurface.map((i) => parts.start[i]!), parts.order.length])
  const plan: MeshPlan = {
    nodes: n,
    volume: cells.volumeM3,
    inverseVolume: cells.volumeM3.map((volume) => 1 / volume),
    edgeStart: edges.start,
    edgeTo: Int32Array.from(edges.order, (e) => cells.edgeTo[e]!),
    halfConductance: Float64Array.from(edges.order, (e) => 0.5 * cells.conductanceM[e]!),
    surfaceNode: Int32Array.from(onSurface),
    surfaceArea: Float64Array.from(onSurface, (_, k) => sum(partArea, partStart[k]!, partStart[k + 1]!)),
    partStart,
    partArea,
    partLowM: Float64Array.from(parts.order, (s) => cells.halfLowM[s]!),
    partReachM: Float64Array.from(parts.order, (s) => cells.halfHighM[s]! - cells.halfLowM[s]!),
  }
  plans.set(mesh, plan)
  return plan
}

/** Counting sort of items by the node they name. */
function groupedBy(node: Int32Array, n: number): { start: Int32Array; order: Int32Array } {
  const start = new Int32Array(n + 1)
  for (const i of node) start[i + 1] = start[i + 1]! + 1
  for (let i = 0; i < n; i++) start[i + 1] = start[i + 1]! + start[i]!
  const fill = start.slice()
  const order = new Int32Array(node.length)
  for (let item = 0; item < node.length; item++) {
    const i = node[item]!
    order[fill[i]!] = item
    fill[i] = fill[i]! + 1
  }
  return { start, order }
}

function sum(values: Float64Array, from: number, to: number): number {
  let total = 0
  for (let i = from; i < to; i++) total += values[i]!
  return total
}
