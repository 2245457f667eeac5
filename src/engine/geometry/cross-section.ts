import type { TriangleMesh } from './mesh.ts'
import type { SectionShape, SectionSize } from './profile.ts'
import { columnDepthsM } from './size-law.ts'

/**
 * The smallest part of a cross-section that tells all of it, as a mesh: cut along its lines of symmetry, through which no heat flows.
 * Sharp corners; one metre of the bar for volumes and areas.
 */
export interface CrossSection {
  readonly mesh: TriangleMesh
  /** The middle of the section. */
  readonly centreNode: number
  /** On the skin nearest to the middle: the middle of a (broad) face. */
  readonly faceNode: number
  /** On the skin farthest from it; of a round the same as `faceNode`. */
  readonly cornerNode: number
  /** How many such parts make the whole section; of a round, how many make one metre of it. */
  readonly parts: number
}

/** How finely a section is cut: cells at the surface [m], how they grow inward, and the fewest across half of it. */
export interface SectionLaw {
  readonly surfaceM: number
  readonly growth: number
  readonly cellsDeep: number
}

/** Cooling times from 800 to 500 degC within 2 % of those on cells a quarter as large. */
export const SECTION_LAW: SectionLaw = { surfaceM: 0.45e-3, growth: 0.3, cellsDeep: 7 }

/** Length of the slice of a long round that is meshed [m]. */
const SLICE_M = 0.25e-3

/**
 * The cross-section of a long bar of this shape and size: half a face and the metal behind it of a regular shape, a quarter of a
 * flat, a thin slice of a round.
 *
 * - throws: RangeError unless the size is above 0
 */
export function crossSectionOf(shape: SectionShape, size: SectionSize, law: SectionLaw = SECTION_LAW): CrossSection {
  const halfM = size.acrossM / 2
  if (!(halfM > 0)) throw new RangeError(`cross-section: ${size.acrossM} m across; it must be above 0`)
  switch (shape) {
    case 'round':
      return slice(halfM, law)
    case 'square':
      return sector(halfM, 4, law)
    case 'hexagon':
      return sector(halfM, 6, law)
    case 'octagon':
      return sector(halfM, 8, law)
    case 'flat':
      return quarter(halfM, (size.widthM ?? size.acrossM) / 2, law)
  }
}

/** From the middle (0) to the surface, cells growing inward from it [m]. */
function gridLines(halfM: number, { surfaceM, growth, cellsDeep }: SectionLaw): Float64Array {
  const largest = halfM / cellsDeep
  const first = Math.min(surfaceM, 0.75 * largest)
  const depths = columnDepthsM(first, growth, 1.3 * largest, halfM)
  const scale = halfM / depths[depths.length - 1]!
  return Float64Array.from([...depths.reverse(), 0], (depth) => halfM - scale * depth).fill(0, 0, 1)
}

/** Half a face of a regular shape, seen from the middle: a right-angled triangle with the corner at its sharp end. */
function sector(halfM: number, faces: 4 | 6 | 8, law: SectionLaw): CrossSection {
  const slope = TANGENT[faces]
  const y = gridLines(halfM, law)
  const n = y.length
  const at = (i: number, j: number): number => (i * (i + 1)) / 2 + j
  const xM = new Float64Array((n * (n + 1)) / 2)
  const rM = new Float64Array(xM.length)
  const triangles: number[] = []
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      xM[at(i, j)] = y[i]!
      rM[at(i, j)] = slope * y[j]!
      if (i + 1 === n) continue
      // Right angles only: heat flows along grid lines, and so never uphill.
      triangles.push(at(i, j), at(i + 1, j), at(i + 1, j + 1))
      if (j < i) triangles.push(at(i, j), at(i + 1, j + 1), at(i, j + 1))
    }
  return {
    mesh: plane(
      xM,
      rM,
      triangles,
      Array.from({ length: n }, (_, j) => at(n - 1, j)),
    ),
    centreNode: 0,
    faceNode: at(n - 1, 0),
    cornerNode: at(n - 1, n - 1),
    parts: 2 * faces,
  }
}

/** tan(180 deg / faces), written out so that every runtime has the same bits. */
const TANGENT = { 4: 1, 6: 1 / Math.sqrt(3), 8: Math.SQRT2 - 1 } as const

/** A quarter of a flat: x across its thickness, r across its width. */
function quarter(halfThickM: number, halfWideM: number, law: SectionLaw): CrossSection {
  const y = gridLines(halfThickM, law)
  const z = gridLines(halfWideM, law)
  const across = y.length
  const at = (i: number, j: number): number => j * across + i
  const xM = new Float64Array(across * z.length)
  const rM = new Float64Array(xM.length)
  const triangles: number[] = []
  for (let j = 0; j < z.length; j++)
    for (let i = 0; i < across; i++) {
      xM[at(i, j)] = y[i]!
      rM[at(i, j)] = z[j]!
      if (i + 1 === across || j + 1 === z.length) continue
      triangles.push(at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j), at(i + 1, j + 1), at(i, j + 1))
    }
  const broad = Array.from(z, (_, j) => at(across - 1, j))
  const narrow = Array.from(y, (_, k) => at(across - 1 - k, z.length - 1))
  return {
    mesh: plane(xM, rM, triangles, [...broad, ...narrow.slice(1)]),
    centreNode: 0,
    faceNode: at(across - 1, 0),
    cornerNode: at(across - 1, z.length - 1),
    parts: 4,
  }
}

/** A thin slice of a long round, as a body of revolution whose end faces are cuts of symmetry. */
function slice(radiusM: number, law: SectionLaw): CrossSection {
  const r = gridLines(radiusM, law)
  const n = r.length
  const xM = Float64Array.from({ length: 2 * n }, (_, k) => (k % 2) * SLICE_M)
  const rM = Float64Array.from({ length: 2 * n }, (_, k) => r[k >> 1]!)
  const triangles: number[] = []
  for (let k = 0; k + 3 < 2 * n; k += 2) triangles.push(k, k + 1, k + 3, k, k + 3, k + 2)
  const skin = 2 * n - 2
  return {
    mesh: { xM, rM, triangles: Uint32Array.from(triangles), boundaryNode: Uint32Array.of(skin, skin + 1) },
    centreNode: 0,
    faceNode: skin,
    cornerNode: skin,
    parts: 1 / SLICE_M,
  }
}

function plane(xM: Float64Array, rM: Float64Array, triangles: readonly number[], surface: readonly number[]): TriangleMesh {
  return { xM, rM, triangles: Uint32Array.from(triangles), boundaryNode: Uint32Array.from(surface), plane: true }
}
