import type { PlacedMesh } from './raster.ts'

/** A line of equal value over the drawing: corners after each other as x, y [px]. */
export interface ContourLine {
  readonly level: number
  readonly points: Float32Array
  readonly lengthPx: number
}

/** Lines of equal value over triangles between whose corners the value is linear. */
export function contourLines(mesh: PlacedMesh, values: ArrayLike<number>, levels: readonly number[]): ContourLine[] {
  return levels.flatMap((level) => linesAt(mesh, values, level))
}

/** An edge of the mesh as one number. */
function edgeKey(from: number, to: number, nodes: number): number {
  return from < to ? from * nodes + to : to * nodes + from
}

function linesAt({ xPx, yPx, triangles }: PlacedMesh, values: ArrayLike<number>, level: number): ContourLine[] {
  const nodes = xPx.length
  // From each crossed edge to the one or two that the line goes on to.
  const onward = new Map<number, number[]>()
  const link = (from: number, to: number): void => {
    const known = onward.get(from)
    if (known === undefined) onward.set(from, [to])
    else known.push(to)
  }
  for (let t = 0; t < triangles.length; t += 3) {
    const a = triangles[t]!
    const b = triangles[t + 1]!
    const c = triangles[t + 2]!
    const aOver = values[a]! >= level
    const bOver = values[b]! >= level
    const cOver = values[c]! >= level
    if (aOver === bOver && bOver === cOver) continue
    const lone = aOver === bOver ? c : aOver === cOver ? b : a
    const one = lone === a ? b : a
    const other = lone === c ? b : c
    const first = edgeKey(lone, one, nodes)
    const second = edgeKey(lone, other, nodes)
    link(first, second)
    link(second, first)
  }

  const place = (key: number): [number, number] => {
    const from = Math.floor(key / nodes)
    const to = key % nodes
    const share = (level - values[from]!) / (values[to]! - values[from]!)
    return [xPx[from]! + share * (xPx[to]! - xPx[from]!), yPx[from]! + share * (yPx[to]! - yPx[from]!)]
  }
  const seen = new Set<number>()
  const follow = (start: number): ContourLine => {
    const points: number[] = []
    let lengthPx = 0
    let at: number | undefined = start
    while (at !== undefined) {
      seen.add(at)
      const [x, y] = place(at)
      const n = points.length
      if (n > 0) lengthPx += Math.hypot(x - points[n - 2]!, y - points[n - 1]!)
      points.push(x, y)
      at = onward.get(at)?.find((next) => !seen.has(next))
    }
    const last = points.length - 2
    // A ring closes on where it began.
    if (last >= 4 && onward.get(start)!.length === 2) points.push(points[0]!, points[1]!)
    return { level, points: Float32Array.from(points), lengthPx }
  }
  const open = [...onward].filter(([, to]) => to.length === 1).map(([key]) => key)
  const lines: ContourLine[] = []
  for (const start of [...open, ...onward.keys()]) if (!seen.has(start)) lines.push(follow(start))
  return lines
}

/** Round figures between two values, `most` of them at most and none at the ends themselves. */
export function roundLevels(low: number, high: number, most: number, steps: readonly number[]): number[] {
  const step = steps.find((each) => (high - low) / each <= most)
  if (step === undefined || !(high > low)) return []
  const levels: number[] = []
  for (let level = Math.ceil(low / step) * step; level < high; level += step) if (level > low) levels.push(level)
  return levels
}
