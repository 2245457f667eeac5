import { radiusAt } from '#engine/geometry/outline.ts'
import type { Body, Spot } from '#engine/simulation/body.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { Zone } from '#engine/simulation/process.ts'

/** A zone is judged down to this depth under its skin, or to half the radius where that is less [m]: what is worn and dressed away before
 * a tool is hardened again (common practice, no source). */
export const WORKING_DEPTH_M = 0.003
const STATIONS_IN_ZONE = 9
const STATIONS_ALONG = 33

/** Every place at which hardness is worked out, and which answer each belongs to (indices into `spots`). */
export interface SpotPlan {
  readonly spots: readonly Spot[]
  readonly zones: readonly { readonly zone: Zone; readonly at: readonly number[] }[]
  readonly probes: readonly number[]
  readonly along: readonly { readonly xM: number; readonly skin: number; readonly centre: number }[]
  /** Spots that stand for a face or a corner of the true section: the logarithm of their cooling time over that of the skin where they lie. */
  readonly edges: readonly { readonly spot: number; readonly lnCooling: number }[]
  /** For a picture of the band. */
  readonly ladder?: Ladder
}

/** Places across the metal at one height, from the inside (the axis, or the wall of a hollow) to the skin. */
export interface Rung {
  readonly xM: number
  /** Index in the plan's spots for each of the ladder's shares. */
  readonly at: readonly number[]
}

/** A coarse net of places over the cut piece, from which the width of the band is spread to every node. */
export interface Ladder {
  /** How far out each place of a rung lies, rising: 0 inside, 1 at the skin. */
  readonly shares: readonly number[]
  /** By height, rising. */
  readonly rungs: readonly Rung[]
  /** Spots of the plan from here on serve the ladder alone. */
  readonly from: number
}

/** `edgesAt`: what faces and corners of the true section differ from the skin at a height by, where zones are judged by them too. */
export function spotPlan(job: Job, body: Body, edgesAt: (xM: number) => readonly number[] = () => []): SpotPlan {
  const spots: Spot[] = []
  const add = (spot: Spot): number => spots.push(spot) - 1
  const edges: { spot: number; lnCooling: number }[] = []
  const zones = job.zones.map((zone) => {
    const at = zoneSpots(zone, body).map(add)
    // Every other height: faces and corners are much alike from one to the next.
    for (const xM of zoneHeights(zone).filter((_, k) => k % 2 === 0))
      for (const lnCooling of edgesAt(xM)) {
        const spot = add({ xM, rM: skinAndCentre(body, xM)[0] })
        edges.push({ spot, lnCooling })
        at.push(spot)
      }
    return { zone, at }
  })
  const probes = job.probes.map(({ xM, rM }) => add({ xM, rM }))
  const along = stations(0, body.lengthM, STATIONS_ALONG, 0.004 * body.lengthM).map((xM) => {
    const [skinR, centreR] = skinAndCentre(body, xM)
    return { xM, skin: add({ xM, rM: skinR }), centre: add({ xM, rM: centreR }) }
  })
  return { spots, zones, probes, along, edges }
}

/** Skin, half way and at the working depth, at stations from end to end; the middle too where the aim is an upper bound only. */
function zoneSpots(zone: Zone, body: Body): Spot[] {
  return zoneHeights(zone).flatMap((xM) => {
    const [skinR, centreR] = skinAndCentre(body, xM)
    const depth = Math.min(WORKING_DEPTH_M, 0.5 * (skinR - centreR))
    const radii = [skinR, skinR - 0.5 * depth, skinR - depth]
    if (zone.aim.lowHrc === undefined) radii.push(centreR)
    return radii.map((rM) => ({ xM, rM }))
  })
}

function zoneHeights({ fromM, toM }: Zone): number[] {
  return stations(fromM, toM, STATIONS_IN_ZONE, Math.min(0.04 * (toM - fromM), 0.0005))
}

function stations(fromM: number, toM: number, count: number, insetM: number): number[] {
  const low = fromM + insetM
  const high = toM - insetM
  return Array.from({ length: count }, (_, k) => low + ((high - low) * k) / (count - 1))
}

/** Radius of the outer skin at a height and of the innermost metal there: the axis, or the wall of a dish or bore [m]. */
function skinAndCentre(body: Body, xM: number): readonly [number, number] {
  const skinR = radiusAt(body.outline, xM)
  return [skinR, Math.min(innerRadiusM(body, xM), skinR)]
}

/** Radius of the innermost metal at a height: 0, or the wall of a dish or bore [m]. */
export function innerRadiusM({ lengthM, profile }: Pick<Body, 'lengthM' | 'profile'>, xM: number): number {
  const last = profile.sections.length - 1
  let innerR = 0
  for (const [index, fromEnd] of [
    [0, xM],
    [last, lengthM - xM],
  ] as const) {
    const section = profile.sections[index]!
    if (index === last && last === 0 && fromEnd !== xM) continue
    if (section.bore !== undefined && fromEnd < section.bore.depthM) innerR = Math.max(innerR, section.bore.acrossM / 2)
    if (section.dish !== undefined && fromEnd < section.dish.depthM) {
      const { acrossM, depthM } = section.dish
      const sphereM = (acrossM * acrossM) / (8 * depthM) + depthM / 2
      const offset = sphereM - depthM + fromEnd
      innerR = Math.max(innerR, Math.sqrt(Math.max(0, sphereM * sphereM - offset * offset)))
    }
  }
  return innerR
}
