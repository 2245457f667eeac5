import type { PlacedMesh } from './raster.ts'

/** A square of `cells` x `cells` squares of 10 px, each cut in two. */
export function squareMesh(cells: number): PlacedMesh {
  const side = cells + 1
  const xPx = new Float32Array(side * side)
  const yPx = new Float32Array(side * side)
  const triangles: number[] = []
  for (let row = 0; row < side; row++) {
    for (let column = 0; column < side; column++) {
      const at = row * side + column
      xPx[at] = 10 * column
      yPx[at] = 10 * row
      if (row < cells && column < cells) triangles.push(at, at + 1, at + side, at + 1, at + side + 1, at + side)
    }
  }
  return { xPx, yPx, triangles: Uint32Array.from(triangles) }
}
