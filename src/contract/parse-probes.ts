import { sphereOf } from '#engine/geometry/hollows.ts'
import { outlineOf, radiusAt } from '#engine/geometry/outline.ts'
import type { Profile } from '#engine/geometry/profile.ts'
import type { Probe } from '#engine/simulation/process.ts'
import { shown } from '#units/reading.ts'
import { outsidePiece } from './parse-zones.ts'
import { probeSchema, type TypedProbe } from './piece-schema.ts'
import type { Problem } from './problems.ts'
import { taken } from './schema-problems.ts'

const MOST_PROBES = 200

/** Points to report: inside the piece, and no farther from the axis than its skin (a flat's or a square's skin as its equivalent round). */
export function takeProbes(
  input: unknown,
  piece: { readonly profile: Profile; readonly lengthM: number } | undefined,
  problems: Problem[],
): { readonly probes: readonly Probe[]; readonly typed: readonly TypedProbe[] } {
  if (input === undefined || input === null) return { probes: [], typed: [] }
  if (!Array.isArray(input) || input.length > MOST_PROBES) {
    problems.push({ field: 'probes', says: `${shown(input)}: a list of up to ${MOST_PROBES} points belongs here` })
    return { probes: [], typed: [] }
  }
  const outline = piece === undefined ? undefined : outlineOf(piece.profile)
  const typed: TypedProbe[] = []
  const probes: Probe[] = []
  input.forEach((each, i) => {
    const probe = taken(probeSchema, each, `probes[${i}]`, problems)
    if (probe === undefined) return
    const xM = probe.x.lengthM
    const rM = probe.r?.lengthM ?? 0
    const name = probe.name ?? `point ${i + 1}`
    if (probes.some((earlier) => earlier.name === name))
      problems.push({ field: `probes[${i}].name`, says: `"${name}" stands twice; give each point its own name` })
    const before = problems.length
    outsidePiece(probe.x, `probes[${i}].x`, piece?.lengthM, problems)
    let skinM = rM
    if (piece !== undefined && outline !== undefined && problems.length === before) {
      skinM = radiusAt(outline, Math.min(xM, piece.lengthM))
      const mostM = Math.max(skinM, reachAt(piece.profile, xM))
      if (rM > mostM * (1 + 1e-6)) {
        const mm = Number((mostM * 1000).toFixed(2))
        problems.push({
          field: `probes[${i}].r`,
          says: `${shown(probe.r?.typed)} from the axis is outside the metal there; write ${mm} mm or less`,
        })
      }
    }
    if (piece !== undefined && problems.length === before) {
      const hollowM = hollowRadiusAt(piece.profile, piece.lengthM, xM)
      if (rM < hollowM * (1 - 1e-6)) {
        const mm = Number((hollowM * 1000).toFixed(2))
        problems.push({
          field: `probes[${i}].r`,
          says: `${shown(probe.r?.typed ?? '0 mm')} from the axis is in the hollow of the end; write ${mm} mm or more`,
        })
      }
    }
    typed.push(probe)
    probes.push({ name, xM: Math.min(xM, piece?.lengthM ?? xM), rM: Math.min(rM, skinM) })
  })
  return { probes, typed }
}

/** Half the greatest size of the sections that touch `xM`: a point on the skin of a square or a flat may lie beyond the equivalent round. */
function reachAt(profile: Profile, xM: number): number {
  let startM = 0
  let mostM = 0
  for (const { from, to, lengthM } of profile.sections) {
    if (xM >= startM - 1e-9 && xM <= startM + lengthM + 1e-9)
      mostM = Math.max(mostM, (from.widthM ?? from.acrossM) / 2, (to.widthM ?? to.acrossM) / 2)
    startM += lengthM
  }
  return mostM
}

/** Radius of the dish or bore at a height; 0 where the metal is whole [m]. */
function hollowRadiusAt({ sections }: Profile, lengthM: number, xM: number): number {
  const last = sections.length - 1
  let radiusM = 0
  sections.forEach(({ dish, bore }, i) => {
    // A single section has its hollow in the working end.
    const fromEndM = i === 0 ? xM : i === last ? lengthM - xM : Number.POSITIVE_INFINITY
    if (bore !== undefined && fromEndM < bore.depthM) radiusM = Math.max(radiusM, bore.acrossM / 2)
    if (dish !== undefined && fromEndM < dish.depthM) {
      const sphere = sphereOf(dish)
      const off = fromEndM - sphere.centreXM
      radiusM = Math.max(radiusM, Math.sqrt(Math.max(0, sphere.radiusM * sphere.radiusM - off * off)))
    }
  })
  return radiusM
}
