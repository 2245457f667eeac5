import { square } from '#engine/arithmetic/square.ts'
import type { Boundary } from './outline-distance.ts'

/**
 * Half of the thickness behind each segment [m], but never more than the outer radius of the body a radius further in: behind an end face
 * that is the radius of the section, though the metal goes on for its whole length.
 */
export function halfThicknesses(nodes: Boundary): number[] {
  const { xM, rM } = nodes
  const widest = Math.max(...Array.from(rM))
  const halves: number[] = []
  for (let i = 0; i + 1 < xM.length; i++) {
    const half = thicknessAtM(nodes, i) / 2
    const length = Math.sqrt(square(xM[i + 1]! - xM[i]!) + square(rM[i + 1]! - rM[i]!))
    const inM = ((rM[i + 1]! - rM[i]!) / length) * Math.min(half, widest)
    const x = (xM[i]! + xM[i + 1]!) / 2
    halves.push(Math.min(half, Math.max(rM[i]!, rM[i + 1]!, outerRadiusM(nodes, x), outerRadiusM(nodes, x + inM))))
  }
  return halves
}

/** Outer radius of the body at x [m]. */
function outerRadiusM({ xM, rM }: Boundary, x: number): number {
  let radius = 0
  for (let j = 0; j + 1 < xM.length; j++) {
    const a = xM[j]!
    const b = xM[j + 1]!
    if (a === b || x < Math.min(a, b) || x > Math.max(a, b)) continue
    radius = Math.max(radius, rM[j]! + ((x - a) / (b - a)) * (rM[j + 1]! - rM[j]!))
  }
  return radius
}

/** Thickness of metal met by a ray from segment i's middle straight inward [m]: to the opposite wall, or twice the way to the axis. */
function thicknessAtM({ xM, rM }: Boundary, i: number): number {
  const px = (xM[i]! + xM[i + 1]!) / 2
  const pr = (rM[i]! + rM[i + 1]!) / 2
  const dx = xM[i + 1]! - xM[i]!
  const dr = rM[i + 1]! - rM[i]!
  const length = Math.sqrt(dx * dx + dr * dr)
  const nx = dr / length
  const nr = -dx / length
  let way = nr < 0 ? (2 * pr) / -nr : Number.POSITIVE_INFINITY
  for (let j = 0; j + 1 < xM.length; j++) {
    if (j === i) continue
    const sx = xM[j + 1]! - xM[j]!
    const sr = rM[j + 1]! - rM[j]!
    const det = nx * sr - nr * sx
    if (det === 0) continue
    const ox = xM[j]! - px
    const or = rM[j]! - pr
    const along = (ox * sr - or * sx) / det
    const share = (ox * nr - or * nx) / det
    if (share >= 0 && share <= 1 && along > 1e-9 && along < way) way = along
  }
  return way
}
