import type { AxisymmetricMesh } from '#engine/geometry/mesh.ts'
import { edgesOf, surfaceOf, volumesOf } from '#engine/geometry/mesh-measures.ts'

/** Sides of a rectangle in (x, r) that are surface, walked from low x at the axis side. */
export type Side = 'low x' | 'outer' | 'high x'

/**
 * A rectangle cut into right-angled triangles with alternating diagonals: a cylinder when `rM` begins at 0, and with every r beyond
 * 1e5 m a plane to five digits. Node (i, j) at `xM[i]`, `rM[j]` is number `i * rM.length + j`. `sides` must follow one another.
 */
export function rectangleMesh(xM: readonly number[], rM: readonly number[], sides: readonly Side[]): AxisymmetricMesh {
  const across = rM.length
  const node = (i: number, j: number): number => i * across + j
  const triangles: number[] = []
  for (let i = 0; i + 1 < xM.length; i++) {
    for (let j = 0; j + 1 < across; j++) {
      const [a, b, c, d] = [node(i, j), node(i + 1, j), node(i + 1, j + 1), node(i, j + 1)]
      if ((i + j) % 2 === 0) triangles.push(a, b, c, a, c, d)
      else triangles.push(a, b, d, b, c, d)
    }
  }
  const walks: { readonly [side in Side]: number[] } = {
    'low x': rM.map((_, j) => node(0, j)),
    outer: xM.map((_, i) => node(i, across - 1)),
    'high x': rM.map((_, j) => node(xM.length - 1, across - 1 - j)),
  }
  const boundary = sides.flatMap((side, s) => (s === 0 ? walks[side] : walks[side].slice(1)))
  const x = Float64Array.from(xM.flatMap((each) => rM.map(() => each)))
  const r = Float64Array.from(xM.flatMap(() => rM))
  const corners = Uint32Array.from(triangles)
  return {
    xM: x,
    rM: r,
    triangles: corners,
    volumeM3: volumesOf(x, r, corners),
    ...edgesOf(x, r, corners),
    ...surfaceOf(x, r, boundary),
    depthM: new Float64Array(x.length),
    boundaryNode: Uint32Array.from(boundary),
    askedNode: new Uint32Array(0),
  }
}

/** `cells + 1` even places from `from` to `to`. */
export function evenly(from: number, to: number, cells: number): number[] {
  return Array.from({ length: cells + 1 }, (_, i) => from + ((to - from) * i) / cells)
}
