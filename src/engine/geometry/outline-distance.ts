/** A polyline from the axis to the axis with the metal on its right: node positions [n, m]; segment i runs from node i to i + 1. */
export interface Boundary {
  readonly xM: ArrayLike<number>
  readonly rM: ArrayLike<number>
}

/** Distance of a point to segment i [m]. */
export function distanceToSegmentM({ xM, rM }: Boundary, i: number, x: number, r: number): number {
  const ax = xM[i]!
  const ar = rM[i]!
  const dx = xM[i + 1]! - ax
  const dr = rM[i + 1]! - ar
  const share = ((x - ax) * dx + (r - ar) * dr) / (dx * dx + dr * dr)
  const t = Math.min(1, Math.max(0, share))
  const ox = x - ax - t * dx
  const or = r - ar - t * dr
  return Math.sqrt(ox * ox + or * or)
}

/** Distance of a point to the nearest segment [m]. */
export function distanceToBoundaryM(boundary: Boundary, x: number, r: number): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i + 1 < boundary.xM.length; i++) least = Math.min(least, distanceToSegmentM(boundary, i, x, r))
  return least
}

/** Whether a point lies in the metal: a line from it straight outward crosses the boundary an odd number of times. */
export function isInside({ xM, rM }: Boundary, x: number, r: number): boolean {
  let inside = false
  for (let i = 0; i + 1 < xM.length; i++) {
    const ax = xM[i]!
    const bx = xM[i + 1]!
    if (ax <= x === bx <= x) continue
    const at = rM[i]! + ((x - ax) / (bx - ax)) * (rM[i + 1]! - rM[i]!)
    if (at > r) inside = !inside
  }
  return inside
}
