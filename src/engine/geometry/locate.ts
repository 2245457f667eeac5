import { square } from '#engine/arithmetic/square.ts'
import type { AxisymmetricMesh } from './mesh.ts'

/** A place as three nodes and their weights: 0 or more, summing to 1. */
export interface MeshPlace {
  readonly nodes: readonly [number, number, number]
  readonly weights: readonly [number, number, number]
}

/** What of a mesh is needed to find a place in it; any unit of length will do, the same throughout. */
type Located = Pick<AxisymmetricMesh, 'xM' | 'rM' | 'triangles' | 'boundaryNode'>

/** Weights this little below 0 still count as inside: the rounding of a point on an edge. */
const ROUNDING = -1e-9

/**
 * The triangle that holds a point of the half-section [m], with linear weights of its nodes. A point outside the body is read at the
 * nearest place on its surface; a point below the axis at its mirror image.
 */
export function locateIn(mesh: Located, xM: number, rM: number): MeshPlace {
  const r = Math.abs(rM)
  const { xM: nodeX, rM: nodeR, triangles } = mesh
  for (let t = 0; t < triangles.length; t += 3) {
    const a = triangles[t]!
    const b = triangles[t + 1]!
    const c = triangles[t + 2]!
    const ux = nodeX[b]! - nodeX[a]!
    const ur = nodeR[b]! - nodeR[a]!
    const vx = nodeX[c]! - nodeX[a]!
    const vr = nodeR[c]! - nodeR[a]!
    const px = xM - nodeX[a]!
    const pr = r - nodeR[a]!
    const double = ux * vr - ur * vx
    const wb = (px * vr - pr * vx) / double
    const wc = (ux * pr - ur * px) / double
    const wa = 1 - wb - wc
    if (!(wa >= ROUNDING && wb >= ROUNDING && wc >= ROUNDING)) continue
    const [pa, pb, pc] = [Math.max(0, wa), Math.max(0, wb), Math.max(0, wc)]
    const sum = pa + pb + pc
    return { nodes: [a, b, c], weights: [pa / sum, pb / sum, pc / sum] }
  }
  return onSurface(mesh, xM, r)
}

function onSurface({ xM: nodeX, rM: nodeR, boundaryNode }: Located, x: number, r: number): MeshPlace {
  let best: MeshPlace | undefined
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i + 1 < boundaryNode.length; i++) {
    const a = boundaryNode[i]!
    const b = boundaryNode[i + 1]!
    const dx = nodeX[b]! - nodeX[a]!
    const dr = nodeR[b]! - nodeR[a]!
    const share = Math.min(1, Math.max(0, ((x - nodeX[a]!) * dx + (r - nodeR[a]!) * dr) / (dx * dx + dr * dr)))
    const distance2 = square(nodeX[a]! + share * dx - x) + square(nodeR[a]! + share * dr - r)
    if (!(distance2 < least)) continue
    least = distance2
    best = { nodes: [a, b, b], weights: [1 - share, share, 0] }
  }
  if (best === undefined) throw new RangeError(`locateIn: (${x}, ${r}) is no point`)
  return best
}
