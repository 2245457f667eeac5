/** A value at each node of a net of triangles. */
export interface Field {
  readonly x: readonly number[]
  readonly y: readonly number[]
  readonly triangles: readonly number[]
  readonly value: readonly number[]
}

export interface Region {
  /** Closed boundaries of the part where the value is at least the level. */
  readonly loops: readonly (readonly [number, number])[][]
  /** The lines inside the net on which the value is the level. */
  readonly lines: readonly (readonly [number, number])[][]
}

interface Corner {
  readonly key: string
  readonly at: readonly [number, number]
  /** On the level, between two nodes. */
  readonly cut: boolean
}

/**
 * The part of the net where the value is at least `level`. Each triangle is clipped at the level; sides that two clipped
 * triangles share cancel, what is left is the boundary, and of it the sides between two cut points are the contour.
 */
export function regionAbove(field: Field, level: number): Region {
  const sides = new Map<string, { from: Corner; to: Corner }>()
  for (let t = 0; t + 2 < field.triangles.length; t += 3) {
    const clipped = clippedTriangle(field, field.triangles.slice(t, t + 3), level)
    for (const [i, from] of clipped.entries()) {
      const to = clipped[(i + 1) % clipped.length] as Corner
      if (from.key === to.key) continue
      if (!sides.delete(`${to.key} ${from.key}`)) sides.set(`${from.key} ${to.key}`, { from, to })
    }
  }
  const left = [...sides.values()]
  return { loops: chains(left), lines: chains(left.filter(({ from, to }) => from.cut && to.cut)) }
}

function clippedTriangle({ x, y, value }: Field, nodes: readonly number[], level: number): Corner[] {
  const [a = 0, b = 0, c = 0] = nodes
  const X = (i: number) => x[i] ?? 0
  const Y = (i: number) => y[i] ?? 0
  const V = (i: number) => value[i] ?? 0
  const turn = (X(b) - X(a)) * (Y(c) - Y(a)) - (X(c) - X(a)) * (Y(b) - Y(a))
  const round = turn >= 0 ? [a, b, c] : [a, c, b]
  return round.flatMap((i, k) => {
    const j = round[(k + 1) % 3] ?? 0
    const corners: Corner[] = V(i) >= level ? [{ key: `n${i}`, at: [X(i), Y(i)], cut: false }] : []
    if (V(i) >= level === V(j) >= level) return corners
    const share = (level - V(i)) / (V(j) - V(i))
    const key = i < j ? `c${i}-${j}` : `c${j}-${i}`
    return [...corners, { key, at: [X(i) + share * (X(j) - X(i)), Y(i) + share * (Y(j) - Y(i))], cut: true }]
  })
}

function chains(sides: readonly { from: Corner; to: Corner }[]): (readonly [number, number])[][] {
  const following = new Map<string, { from: Corner; to: Corner }[]>()
  for (const side of sides) following.set(side.from.key, [...(following.get(side.from.key) ?? []), side])
  const entered = new Set(sides.map(({ to }) => to.key))
  const starts = [...sides.filter(({ from }) => !entered.has(from.key)), ...sides]
  const found: (readonly [number, number])[][] = []
  for (const start of starts) {
    const chain = [start.from.at]
    for (let key = start.from.key; ; ) {
      const next = following.get(key)?.pop()
      if (next === undefined) break
      chain.push(next.to.at)
      key = next.to.key
    }
    if (chain.length > 1) found.push(chain)
  }
  return found
}

/** Few round levels between the least and the greatest value: at most `most`, none where the values hardly differ. */
export function roundLevels(low: number, high: number, most = 5): number[] {
  const step = [1, 2, 5, 10, 20].find((each) => Math.floor(high / each) - Math.ceil(low / each) + 1 <= most) ?? 20
  const levels: number[] = []
  for (let level = Math.ceil(low / step) * step; level <= high; level += step) if (level > low && level < high) levels.push(level)
  return levels
}
