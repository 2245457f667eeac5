/** A graph in rows: the neighbours of node i are `neighbour[start[i]]` up to `neighbour[start[i + 1]]`. */
export interface NodeGraph {
  readonly start: Uint32Array
  readonly neighbour: Uint32Array
}

export function nodeGraph(count: number, edgeFrom: ArrayLike<number>, edgeTo: ArrayLike<number>): NodeGraph {
  const start = new Uint32Array(count + 1)
  for (let e = 0; e < edgeFrom.length; e++) {
    start[edgeFrom[e]! + 1]!++
    start[edgeTo[e]! + 1]!++
  }
  for (let i = 0; i < count; i++) start[i + 1]! += start[i]!
  const neighbour = new Uint32Array(start[count]!)
  const next = start.slice(0, count)
  for (let e = 0; e < edgeFrom.length; e++) {
    neighbour[next[edgeFrom[e]!]!++] = edgeTo[e]!
    neighbour[next[edgeTo[e]!]!++] = edgeFrom[e]!
  }
  return { start, neighbour }
}

/**
 * Reverse Cuthill-McKee order: `order[k]` is the old number of the node that becomes k. Rows of a matrix in this order reach few
 * columns back, so that an envelope factorisation stays small. (Cuthill & McKee, Proc. 24th ACM Nat. Conf. 1969; George 1971, reversed)
 */
export function reverseCuthillMcKee({ start, neighbour }: NodeGraph): Uint32Array {
  const count = start.length - 1
  const degree = (i: number) => start[i + 1]! - start[i]!
  const seen = new Uint8Array(count)
  const order = new Uint32Array(count)
  let filled = 0

  /** Breadth first from `root`, neighbours of small degree first; writes to `order` from `at` on and returns where it ended. */
  const spread = (root: number, at: number): number => {
    let end = at
    order[end++] = root
    seen[root] = 1
    for (let k = at; k < end; k++) {
      const i = order[k]!
      const first = end
      for (let e = start[i]!; e < start[i + 1]!; e++) {
        const j = neighbour[e]!
        if (seen[j] === 1) continue
        seen[j] = 1
        order[end++] = j
      }
      order.subarray(first, end).sort((a, b) => degree(a) - degree(b) || a - b)
    }
    return end
  }

  for (let seed = 0; seed < count; seed++) {
    if (seen[seed] === 1) continue
    // The last node reached is far from the seed; from there, once more, lies a long way to go.
    let root = seed
    for (let tries = 0; tries < 2; tries++) {
      const end = spread(root, filled)
      root = order[end - 1]!
      for (let k = filled; k < end; k++) seen[order[k]!] = 0
    }
    filled = spread(root, filled)
  }
  return order.reverse()
}

/** Entries from the first neighbour of each row up to its diagonal, summed: what an envelope factorisation stores. */
export function envelopeSize(count: number, edgeFrom: ArrayLike<number>, edgeTo: ArrayLike<number>): number {
  const first = new Uint32Array(count)
  for (let i = 0; i < count; i++) first[i] = i
  for (let e = 0; e < edgeFrom.length; e++) {
    const [low, high] = edgeFrom[e]! < edgeTo[e]! ? [edgeFrom[e]!, edgeTo[e]!] : [edgeTo[e]!, edgeFrom[e]!]
    if (low < first[high]!) first[high] = low
  }
  let sum = 0
  for (let i = 0; i < count; i++) sum += i - first[i]! + 1
  return sum
}
