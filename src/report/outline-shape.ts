import type { Forecast } from '#contract/answers.ts'
import { radiusAt } from './height-scale.ts'

type Outline = Forecast['outline_mm']

/** A straight stretch of the outside: heights and radii at its ends. */
export interface Run {
  readonly fromMm: number
  readonly toMm: number
  readonly fromRadiusMm: number
  readonly toRadiusMm: number
}

/** Chords of an arc are at most this long in the answer; anything longer is a straight side. */
const LONGEST_CHORD_MM = 0.6
const SAME_WAY_RAD = 0.004
const CORNER_RAD = 0.02
const SHARP_RAD = 0.35

/** The outline without the points that lie on a straight side. */
export function straightened(outline: Outline): Outline {
  const kept: [number, number][] = []
  for (const point of outline) {
    const [before, last] = kept.slice(-2)
    if (before !== undefined && last !== undefined && turn(before, last, point) < SAME_WAY_RAD) kept.pop()
    kept.push(point)
  }
  return kept
}

/** Corners of the outside, sharp ones and those between two straight sides, from the working end up; arcs have none. */
export function cornersOf(outline: Outline): [number, number][] {
  const points = straightened(outline)
  return points.filter(([x, r], i) => {
    const before = points[i - 1]
    const after = points[i + 1]
    if (before === undefined || after === undefined || r < radiusAt(outline, x) - 1e-6) return false
    const angle = turn(before, [x, r], after)
    const betweenStraights = distance(before, [x, r]) > LONGEST_CHORD_MM && distance([x, r], after) > LONGEST_CHORD_MM
    return angle > SHARP_RAD || (betweenStraights && angle > CORNER_RAD)
  })
}

/** Straight stretches of the outside, from the working end. */
export function runsOf(outline: Outline): Run[] {
  const points = straightened(outline)
  return points.flatMap(([toMm, toRadiusMm], i) => {
    const [fromMm, fromRadiusMm] = points[i - 1] ?? [toMm, 0]
    return toMm - fromMm > LONGEST_CHORD_MM ? [{ fromMm, toMm, fromRadiusMm, toRadiusMm }] : []
  })
}

/** The hollow in the working end, if there is one: the part of the outline that comes back down to the rim. */
export function hollowsOf(outline: Outline): Outline[] {
  const points = [...outline]
  const low = points.slice(0, points.findIndex(([, r], i) => i > 0 && r >= widest(points, 0) - 1e-6) + 1)
  const rim = low.findIndex(([x]) => x <= 1e-6)
  const high = points.length - 1 - [...points].reverse().findIndex(([x]) => x >= greatest(points) - 1e-6)
  return [
    ...(rim > 0 ? [points.slice(0, rim + 1)] : []),
    ...(high < points.length - 1 && (points.at(-1)?.[0] ?? 0) < greatest(points) - 1e-6 ? [points.slice(high)] : []),
  ]
}

function widest(points: Outline, from: number): number {
  return points.slice(from).reduce((most, [, r]) => Math.max(most, r), 0)
}

function greatest(points: Outline): number {
  return points.reduce((most, [x]) => Math.max(most, x), 0)
}

function turn(
  [x0, r0]: readonly [number, number],
  [x1, r1]: readonly [number, number],
  [x2, r2]: readonly [number, number],
): number {
  const angle = Math.abs(Math.atan2(r2 - r1, x2 - x1) - Math.atan2(r1 - r0, x1 - x0))
  return Math.min(angle, 2 * Math.PI - angle)
}

function distance([x0, r0]: readonly [number, number], [x1, r1]: readonly [number, number]): number {
  return Math.hypot(x1 - x0, r1 - r0)
}
