import Delaunator from 'delaunator'
import { square } from '#engine/arithmetic/square.ts'
import { type Boundary, isInside } from './outline-distance.ts'

/** Triangles [3 t], counter-clockwise, and the boundary segments that are no edge of any of them. */
export interface Triangulation {
  readonly triangles: Uint32Array
  readonly missing: number[]
}

/**
 * Delaunay triangles inside a boundary. The boundary nodes are the first points, in order; segment i joins points i and i + 1.
 * Triangles outside the body and slivers of no area on its straight sides are left out.
 */
export function triangulate(xM: readonly number[], rM: readonly number[], boundary: Boundary): Triangulation {
  const flat = new Float64Array(2 * xM.length)
  for (let i = 0; i < xM.length; i++) {
    flat[2 * i] = xM[i]!
    flat[2 * i + 1] = rM[i]!
  }
  const all = new Delaunator(flat).triangles
  const segments = boundary.xM.length - 1
  const isEdge = new Uint8Array(segments)
  const kept: number[] = []
  for (let t = 0; t < all.length; t += 3) {
    // Delaunator turns the other way round in its own picture, whose second axis points down.
    const a = all[t]!
    const b = all[t + 1]!
    const c = all[t + 2]!
    const doubleArea = (xM[b]! - xM[a]!) * (rM[c]! - rM[a]!) - (xM[c]! - xM[a]!) * (rM[b]! - rM[a]!)
    const longest = Math.max(lengthSquared(xM, rM, a, b), lengthSquared(xM, rM, b, c), lengthSquared(xM, rM, c, a))
    if (Math.abs(doubleArea) < 1e-7 * longest) continue
    if (!isInside(boundary, (xM[a]! + xM[b]! + xM[c]!) / 3, (rM[a]! + rM[b]! + rM[c]!) / 3)) continue
    if (doubleArea > 0) kept.push(a, b, c)
    else kept.push(a, c, b)
    markEdge(isEdge, segments, a, b)
    markEdge(isEdge, segments, b, c)
    markEdge(isEdge, segments, c, a)
  }
  const missing: number[] = []
  for (let i = 0; i < segments; i++) if (isEdge[i] === 0) missing.push(i)
  return { triangles: Uint32Array.from(kept), missing }
}

function markEdge(isEdge: Uint8Array, segments: number, a: number, b: number): void {
  const low = Math.min(a, b)
  if (Math.abs(a - b) === 1 && low < segments) isEdge[low] = 1
}

function lengthSquared(xM: readonly number[], rM: readonly number[], a: number, b: number): number {
  return square(xM[a]! - xM[b]!) + square(rM[a]! - rM[b]!)
}
