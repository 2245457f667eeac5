import { square } from '#engine/arithmetic/square.ts'
import type { TriangleMesh } from '#engine/geometry/mesh.ts'

/** Finite volumes on a triangle mesh: what belongs to each node, what passes along each edge, where the surface is. Full turn, or one metre of a bar whose cross-section it is. */
export interface DualCells {
  /** [n, m3] */
  readonly volumeM3: Float64Array
  readonly edgeFrom: Int32Array
  readonly edgeTo: Int32Array
  /** Heat flow for unit conductivity and unit temperature difference [e, m]. */
  readonly conductanceM: Float64Array
  /** Half-segments of the surface: node, area, and reach along the axis [s]. */
  readonly halfNode: Int32Array
  readonly halfAreaM2: Float64Array
  readonly halfLowM: Float64Array
  readonly halfHighM: Float64Array
}

/** A half-segment across the axis counts as this long along it: a rising fluid wets it over some time, not at once [m]. */
const ACROSS_REACH_M = 0.25e-3
/** Below this share of its possible size an edge carries no heat: the diagonals of right-angled cells [1]. */
const NO_CONDUCTANCE = 1e-9

/**
 * Cells between the perpendicular bisectors of the edges (Voronoi cells, cut at the surface), with the weight r integrated exactly.
 *
 * Linear finite elements lumped to the nodes give the same conductances in a plane but, with the weight r, a third too much volume to
 * the nodes on the axis: cores then lag by several kelvin. Bisectors keep volume, faces and surface of a node consistent; on the same
 * meshes the errors of a quench fell to a third in cores and by a quarter on surfaces. In an obtuse triangle the corner of the
 * three cells is put on the middle of its longest edge, so no volume is below 0 (Meyer et al., Visualization and Mathematics III
 * (2003) 35-57).
 */
export function dualCells(mesh: TriangleMesh): DualCells {
  return { volumeM3: volumes(mesh), ...edges(mesh), ...halfSegments(mesh) }
}

function volumes({ xM, rM, triangles, plane }: TriangleMesh): Float64Array {
  const volumeM3 = new Float64Array(xM.length)
  for (let t = 0; t < triangles.length; t += 3) {
    const corner = cellCorner(xM, rM, triangles, t)
    for (let k = 0; k < 3; k++) {
      const i = triangles[t + k]!
      for (const j of [triangles[t + ((k + 1) % 3)]!, triangles[t + ((k + 2) % 3)]!]) {
        const mx = (xM[i]! + xM[j]!) / 2
        const mr = (rM[i]! + rM[j]!) / 2
        const twice = Math.abs((mx - xM[i]!) * (corner.r - rM[i]!) - (corner.x - xM[i]!) * (mr - rM[i]!))
        volumeM3[i] = volumeM3[i]! + (plane ? twice / 2 : (Math.PI * twice * (rM[i]! + mr + corner.r)) / 3)
      }
    }
  }
  return volumeM3
}

/** Where the cells of a triangle's nodes meet: its circumcentre, or the middle of its longest edge when that lies outside. */
function cellCorner(xM: Float64Array, rM: Float64Array, triangles: Uint32Array, t: number): { x: number; r: number } {
  for (let k = 0; k < 3; k++) {
    const apex = triangles[t + k]!
    const a = triangles[t + ((k + 1) % 3)]!
    const b = triangles[t + ((k + 2) % 3)]!
    const towards = (xM[a]! - xM[apex]!) * (xM[b]! - xM[apex]!) + (rM[a]! - rM[apex]!) * (rM[b]! - rM[apex]!)
    if (towards <= 0) return { x: (xM[a]! + xM[b]!) / 2, r: (rM[a]! + rM[b]!) / 2 }
  }
  return circumcentre(xM, rM, triangles[t]!, triangles[t + 1]!, triangles[t + 2]!)
}

function circumcentre(xM: Float64Array, rM: Float64Array, a: number, b: number, c: number): { x: number; r: number } {
  const ux = xM[b]! - xM[a]!
  const ur = rM[b]! - rM[a]!
  const vx = xM[c]! - xM[a]!
  const vr = rM[c]! - rM[a]!
  const u = ux * ux + ur * ur
  const v = vx * vx + vr * vr
  const twice = 2 * (ux * vr - ur * vx)
  return { x: xM[a]! + (u * vr - v * ur) / twice, r: rM[a]! + (v * ux - u * vx) / twice }
}

/**
 * Conductance: the swept face between the circumcentres beside an edge, over the length of the edge. In a triangle so flat on the axis
 * that its circumcentre lies far beyond it, faces have no meaning and heat would flow to the hotter node: linear elements stand in there.
 */
function edges({ xM, rM, triangles, plane }: TriangleMesh): Pick<DualCells, 'edgeFrom' | 'edgeTo' | 'conductanceM'> {
  const count = xM.length
  const place = new Map<number, number>()
  const from: number[] = []
  const to: number[] = []
  const conductance: number[] = []
  for (let t = 0; t < triangles.length; t += 3) {
    const across = plane ? planeConductancesAcross(xM, rM, triangles, t) : conductancesAcross(xM, rM, triangles, t)
    for (let k = 0; k < 3; k++) {
      const a = triangles[t + ((k + 1) % 3)]!
      const b = triangles[t + ((k + 2) % 3)]!
      const key = a < b ? a * count + b : b * count + a
      let e = place.get(key)
      if (e === undefined) {
        e = from.length
        place.set(key, e)
        from.push(Math.min(a, b))
        to.push(Math.max(a, b))
        conductance.push(0)
      }
      conductance[e] = conductance[e]! + across[k]!
    }
  }
  const kept = from.flatMap((a, e) =>
    Math.abs(conductance[e]!) > NO_CONDUCTANCE * (plane ? 1 : rM[a]! + rM[to[e]!]!) ? [e] : [],
  )
  return {
    edgeFrom: Int32Array.from(kept, (e) => from[e]!),
    edgeTo: Int32Array.from(kept, (e) => to[e]!),
    conductanceM: Float64Array.from(kept, (e) => conductance[e]!),
  }
}

/** What a triangle adds to the conductance of the edges opposite to its corners [m]. */
function conductancesAcross(xM: Float64Array, rM: Float64Array, triangles: Uint32Array, t: number): [number, number, number] {
  const centre = circumcentre(xM, rM, triangles[t]!, triangles[t + 1]!, triangles[t + 2]!)
  const across: [number, number, number] = [0, 0, 0]
  const plane: [number, number, number] = [0, 0, 0]
  let sumR = 0
  for (let k = 0; k < 3; k++) {
    const apex = triangles[t + k]!
    const a = triangles[t + ((k + 1) % 3)]!
    const b = triangles[t + ((k + 2) % 3)]!
    const ux = xM[a]! - xM[apex]!
    const ur = rM[a]! - rM[apex]!
    const vx = xM[b]! - xM[apex]!
    const vr = rM[b]! - rM[apex]!
    const cotangent = (ux * vx + ur * vr) / Math.abs(ux * vr - ur * vx)
    plane[k] = cotangent
    const faceR = ((rM[a]! + rM[b]!) / 2 + centre.r) / 2
    across[k] = Math.PI * faceR * cotangent
    sumR += rM[apex]!
  }
  const [a, b, c] = across
  // Only then does heat flow down every slope of temperature.
  if (a + b + c >= 0 && a * b + b * c + c * a >= 0) return across
  return [(Math.PI * sumR * plane[0]) / 3, (Math.PI * sumR * plane[1]) / 3, (Math.PI * sumR * plane[2]) / 3]
}

/** The same in a plane: half the cotangent of the corner, for one metre of bar. */
function planeConductancesAcross(
  xM: Float64Array,
  rM: Float64Array,
  triangles: Uint32Array,
  t: number,
): [number, number, number] {
  const across: [number, number, number] = [0, 0, 0]
  for (let k = 0; k < 3; k++) {
    const apex = triangles[t + k]!
    const a = triangles[t + ((k + 1) % 3)]!
    const b = triangles[t + ((k + 2) % 3)]!
    const ux = xM[a]! - xM[apex]!
    const ur = rM[a]! - rM[apex]!
    const vx = xM[b]! - xM[apex]!
    const vr = rM[b]! - rM[apex]!
    across[k] = (ux * vx + ur * vr) / (2 * Math.abs(ux * vr - ur * vx))
  }
  return across
}

/** Halves of the segments along `boundaryNode`; reaches stay within the body, so that a fluid from end to end touches all of it. */
function halfSegments(mesh: TriangleMesh): Pick<DualCells, 'halfNode' | 'halfAreaM2' | 'halfLowM' | 'halfHighM'> {
  const { xM, rM, boundaryNode, plane } = mesh
  const halves = 2 * Math.max(0, boundaryNode.length - 1)
  const halfNode = new Int32Array(halves)
  const halfAreaM2 = new Float64Array(halves)
  const halfLowM = new Float64Array(halves)
  const halfHighM = new Float64Array(halves)
  const lowestM = xM.reduce((least, x) => Math.min(least, x), Number.POSITIVE_INFINITY)
  const highestM = xM.reduce((most, x) => Math.max(most, x), Number.NEGATIVE_INFINITY)
  for (let s = 0; s < halves; s++) {
    const near = boundaryNode[(s + 1) >> 1]!
    const far = boundaryNode[s % 2 === 0 ? (s >> 1) + 1 : s >> 1]!
    const length = Math.sqrt(square(xM[far]! - xM[near]!) + square(rM[far]! - rM[near]!))
    const middle = (xM[near]! + xM[far]!) / 2
    const widen = Math.max(0, ACROSS_REACH_M - Math.abs(middle - xM[near]!)) / 2
    halfNode[s] = near
    if (plane) {
      // The whole section stands at one height, which is 0.
      halfAreaM2[s] = length / 2
      halfHighM[s] = ACROSS_REACH_M
      continue
    }
    halfAreaM2[s] = (Math.PI * length * (3 * rM[near]! + rM[far]!)) / 4
    halfLowM[s] = Math.max(lowestM, Math.min(xM[near]!, middle) - widen)
    halfHighM[s] = Math.min(highestM, Math.max(xM[near]!, middle) + widen)
  }
  return { halfNode, halfAreaM2, halfLowM, halfHighM }
}
