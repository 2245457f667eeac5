/** Bodies whose heat flows along one coordinate: a plate cooled alike on both faces, a long cylinder, a sphere. */
export type RadialShape = 'plate' | 'cylinder' | 'sphere'

/**
 * Nodes from the mid-plane, axis or centre (0) to the surface (n - 1), closer together toward the surface.
 * Volumes and areas are for one square metre of half a plate, for one metre and one radian of a cylinder, for one steradian of a sphere.
 */
export interface RadialGrid {
  /** [n, m] */
  readonly radiusM: Float64Array
  /** [n] */
  readonly volume: Float64Array
  /** Heat flow to the next node for unit conductivity and unit temperature difference [n - 1]. */
  readonly conductance: Float64Array
  readonly surfaceArea: number
}

/** The innermost cell is this many times as wide as the outermost. */
const GRADING = 5
/** Swept area at a radius, and its integral from 0, by shape; products only, so that every runtime gives the same bits. */
const AREA: { readonly [shape in RadialShape]: (r: number) => number } = {
  plate: () => 1,
  cylinder: (r) => r,
  sphere: (r) => r * r,
}
const VOLUME: { readonly [shape in RadialShape]: (r: number) => number } = {
  plate: (r) => r,
  cylinder: (r) => (r * r) / 2,
  sphere: (r) => (r * r * r) / 3,
}

/** Throws RangeError when the radius is not positive or there are fewer than 4 cells. `radiusM` of a plate is half its thickness. */
export function radialGrid(shape: RadialShape, radiusM: number, cells: number): RadialGrid {
  if (!(radiusM > 0)) throw new RangeError(`radial grid: radius ${radiusM} m must be above 0`)
  if (!(Number.isInteger(cells) && cells >= 4)) throw new RangeError(`radial grid: ${cells} cells; at least 4 are needed`)
  const area = AREA[shape]
  const within = VOLUME[shape]
  // Widths fall linearly from the axis to the surface: a smooth map, so the scheme keeps its second order.
  const narrow = 2 / (1 + GRADING)
  const r = new Float64Array(cells + 1)
  for (let i = 0; i <= cells; i++) {
    const u = i / cells
    r[i] = radiusM * u * (narrow * GRADING + 0.5 * (narrow - narrow * GRADING) * u)
  }
  r[cells] = radiusM

  const volume = new Float64Array(cells + 1)
  const conductance = new Float64Array(cells)
  let inner = 0
  for (let i = 0; i <= cells; i++) {
    const face = i < cells ? 0.5 * (r[i]! + r[i + 1]!) : radiusM
    volume[i] = within(face) - within(inner)
    if (i < cells) conductance[i] = area(face) / (r[i + 1]! - r[i]!)
    inner = face
  }
  return { radiusM: r, volume, conductance, surfaceArea: area(radiusM) }
}
