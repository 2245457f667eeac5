import type { MeshPlan } from './mesh-plan.ts'

/**
 * Where the lower triangle of a symmetric matrix on the mesh is kept: row p holds columns `first[p]` to p - 1 without gaps
 * (its envelope), the diagonal stands apart. Rows are in reverse Cuthill-McKee order, which keeps the envelope narrow.
 */
export interface Envelope {
  /** Node of each row, and row of each node [n]. */
  readonly nodeOfRow: Int32Array
  readonly rowOfNode: Int32Array
  /** Row p is `rowStart[p]` to `rowStart[p + 1] - 1` of the values [n + 1]; its first column is p minus its length. */
  readonly rowStart: Int32Array
  /** Place of each edge of the plan among the values [e]. */
  readonly placeOfEdge: Int32Array
  /** Multiplications of one factorisation, about. */
  readonly work: number
}

const envelopes = new WeakMap<MeshPlan, Envelope>()

export function envelopeOf(plan: MeshPlan): Envelope {
  const before = envelopes.get(plan)
  if (before !== undefined) return before
  const n = plan.nodes
  const nodeOfRow = reverseCuthillMcKee(plan)
  const rowOfNode = new Int32Array(n)
  for (let p = 0; p < n; p++) rowOfNode[nodeOfRow[p]!] = p

  const first = Int32Array.from({ length: n }, (_, p) => p)
  forEachEdge(plan, (a, b) => {
    const p = Math.max(rowOfNode[a]!, rowOfNode[b]!)
    first[p] = Math.min(first[p]!, rowOfNode[a]!, rowOfNode[b]!)
  })
  const rowStart = new Int32Array(n + 1)
  let work = 0
  for (let p = 0; p < n; p++) {
    const length = p - first[p]!
    rowStart[p + 1] = rowStart[p]! + length
    work += 0.5 * length * length
  }
  const placeOfEdge = new Int32Array(plan.edgeTo.length)
  forEachEdge(plan, (a, b, edge) => {
    const p = Math.max(rowOfNode[a]!, rowOfNode[b]!)
    placeOfEdge[edge] = rowStart[p]! + Math.min(rowOfNode[a]!, rowOfNode[b]!) - first[p]!
  })
  const envelope = { nodeOfRow, rowOfNode, rowStart, placeOfEdge, work }
  envelopes.set(plan, envelope)
  return envelope
}

function forEachEdge(plan: MeshPlan, visit: (a: number, b: number, edge: number) => void): void {
  for (let i = 0; i < plan.nodes; i++) {
    for (let edge = plan.edgeStart[i]!; edge < plan.edgeStart[i + 1]!; edge++) visit(i, plan.edgeTo[edge]!, edge)
  }
}

/** Breadth first from an end of the body, neighbours of few neighbours first, then turned round (George & Liu 1981, chapter 4). */
function reverseCuthillMcKee(plan: MeshPlan): Int32Array {
  const n = plan.nodes
  const neighbours: number[][] = Array.from({ length: n }, () => [])
  forEachEdge(plan, (a, b) => {
    neighbours[a]!.push(b)
    neighbours[b]!.push(a)
  })
  for (const list of neighbours) list.sort((a, b) => neighbours[a]!.length - neighbours[b]!.length || a - b)
  const order: number[] = []
  const placed = new Uint8Array(n)
  for (let seed = 0; seed < n; seed++) {
    if (placed[seed]) continue
    const from = farEnd(neighbours, seed)
    const begin = order.length
    order.push(from)
    placed[from] = 1
    for (let at = begin; at < order.length; at++) {
      for (const j of neighbours[order[at]!]!) {
        if (placed[j]) continue
        placed[j] = 1
        order.push(j)
      }
    }
  }
  return Int32Array.from(order.reverse())
}

/** A node as far as can be from the others of its part: walk to the furthest node until that gets no further. */
function farEnd(neighbours: readonly number[][], seed: number): number {
  let from = seed
  let depth = -1
  for (;;) {
    const level = new Map([[from, 0]])
    const queue = [from]
    for (const i of queue) {
      for (const j of neighbours[i]!) {
        if (level.has(j)) continue
        level.set(j, level.get(i)! + 1)
        queue.push(j)
      }
    }
    const furthest = queue[queue.length - 1]!
    const reached = level.get(furthest)!
    if (reached <= depth) return from
    depth = reached
    from = furthest
  }
}
