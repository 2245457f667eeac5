import { meshOf } from '#engine/geometry/axisymmetric-mesh.ts'
import { volumeM3 } from '#engine/geometry/equivalent-round.ts'
import { locateIn, type MeshPlace } from '#engine/geometry/locate.ts'
import type { AxisymmetricMesh, MeshGrade } from '#engine/geometry/mesh.ts'
import { type Outline, outlineOf, radiusAt } from '#engine/geometry/outline.ts'
import type { Profile } from '#engine/geometry/profile.ts'
import type { Job } from './job.ts'

/** Steel at room temperature [kg/m3]: 7850 after EN 1993-1-2. */
export const STEEL_DENSITY_KG_PER_M3 = 7850

/** A place in the piece: x from the working end, r from the axis [m]. */
export interface Spot {
  readonly xM: number
  readonly rM: number
}

/** The piece as the solver sees it: a body of revolution with its mesh and a few measures of the true shape. */
export interface Body {
  readonly profile: Profile
  readonly outline: Outline
  readonly mesh: AxisymmetricMesh
  readonly lengthM: number
  /** Of the true shape, not of its equivalent round. */
  readonly massKg: number
  /** Radius of the (equivalent) body at each node's height [n, m]. */
  readonly localRadiusM: Float64Array
}

const bodies = new WeakMap<Profile, Map<string, Body>>()

/**
 * Mesh and measures of a job's piece; probes are nodes and held waterlines are finely cut. Made once for each profile with its probes
 * and waterlines: other treatments of the piece find it ready.
 */
export function bodyOf(job: Job, grade: MeshGrade): Body {
  const waterlinesM = job.process.flatMap((step) =>
    (step.do === 'quench' || step.do === 'run-colours') && step.depthM !== undefined ? [step.depthM] : [],
  )
  const key = JSON.stringify([grade, waterlinesM, job.probes.map(({ xM, rM }) => [xM, rM])])
  let ofProfile = bodies.get(job.profile)
  if (ofProfile === undefined) {
    ofProfile = new Map()
    bodies.set(job.profile, ofProfile)
  }
  let body = ofProfile.get(key)
  if (body === undefined) {
    body = newBody(job, grade, waterlinesM)
    ofProfile.set(key, body)
  }
  return body
}

function newBody(job: Job, grade: MeshGrade, waterlinesM: readonly number[]): Body {
  const outline = outlineOf(job.profile)
  const mesh = meshOf(outline, grade, { points: job.probes, waterlinesM })
  const lengthM = job.profile.sections.reduce((sum, section) => sum + section.lengthM, 0)
  return {
    profile: job.profile,
    outline,
    mesh,
    lengthM,
    massKg: STEEL_DENSITY_KG_PER_M3 * volumeM3(job.profile),
    localRadiusM: mesh.xM.map((xM) => radiusAt(outline, xM)),
  }
}

/** Mean diameter of the metal between two heights, weighted by volume [m]: what a bath or a fire "sees" as the section. */
export function typicalAcrossM(body: Body, fromM: number, toM: number): number {
  let volume = 0
  let moment = 0
  const { xM, volumeM3: nodeVolume } = body.mesh
  for (let i = 0; i < xM.length; i++) {
    if (xM[i]! < fromM || xM[i]! > toM) continue
    volume += nodeVolume[i]!
    moment += nodeVolume[i]! * 2 * body.localRadiusM[i]!
  }
  return volume > 0 ? moment / volume : 2 * Math.max(...body.localRadiusM)
}

/** Nodes of the outer skin from end to end, by height, one at each; the walls of hollows, and the faces of ends and shoulders, are left out. */
export function outsideNodes({ mesh, localRadiusM }: Body): number[] {
  const { xM, rM, boundaryNode } = mesh
  return Array.from(boundaryNode)
    .filter((node) => rM[node]! > 0.999 * localRadiusM[node]! - 1e-6)
    .sort((a, b) => xM[a]! - xM[b]! || rM[b]! - rM[a]!)
    .filter((node, k, all) => k === 0 || xM[node]! > xM[all[k - 1]!]! + 1e-6)
}

/** Mass of the metal between two heights [kg], by the share of the meshed volume. */
export function massBetweenKg(body: Body, fromM: number, toM: number): number {
  let inside = 0
  let whole = 0
  const { xM, volumeM3: nodeVolume } = body.mesh
  for (let i = 0; i < xM.length; i++) {
    whole += nodeVolume[i]!
    if (xM[i]! >= fromM && xM[i]! <= toM) inside += nodeVolume[i]!
  }
  return (body.massKg * inside) / whole
}

/** Metal of the true shape for each part of the equivalent body that is meshed; 1 for rounds, 2 and more for broad flats. */
export function trueToMesh({ massKg, mesh }: Body): number {
  return massKg / (STEEL_DENSITY_KG_PER_M3 * mesh.volumeM3.reduce((sum, each) => sum + each, 0))
}

/** Where a bath stands that has the whole piece under: past its end [m]. */
export function allUnderM({ lengthM }: Pick<Body, 'lengthM'>): number {
  return lengthM + 0.01
}

const placed = new WeakMap<readonly Spot[], WeakMap<AxisymmetricMesh, readonly MeshPlace[]>>()

/** Value of a nodal field at each spot, linear within the triangle that holds it [spots]. A list of spots is looked up once on each mesh. */
export function readAt({ mesh }: Pick<Body, 'mesh'>, field: ArrayLike<number>, spots: readonly Spot[]): Float64Array {
  let onMeshes = placed.get(spots)
  if (onMeshes === undefined) {
    onMeshes = new WeakMap()
    placed.set(spots, onMeshes)
  }
  let places = onMeshes.get(mesh)
  if (places === undefined) {
    places = spots.map(({ xM, rM }) => locateIn(mesh, xM, rM))
    onMeshes.set(mesh, places)
  }
  const values = new Float64Array(spots.length)
  for (let i = 0; i < values.length; i++) {
    const { nodes, weights } = places[i]!
    values[i] = weights[0] * field[nodes[0]]! + weights[1] * field[nodes[1]]! + weights[2] * field[nodes[2]]!
  }
  return values
}
