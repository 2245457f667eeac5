import { atan2 } from '#engine/arithmetic/angles.ts'
import { leastWallM, lipOf } from './hollows.ts'
import { conesOf, totalLengthM } from './outline.ts'
import type { Profile, Section } from './profile.ts'

export { profileProblems } from './profile-problems.ts'

/** A re-entrant corner of the side. Sizes are those of the equivalent rounds beside it; `filletM` is what was asked for, 0 is sharp [m]. */
export interface InnerCorner {
  readonly xM: number
  readonly filletM: number
  readonly smallerAcrossM: number
  readonly largerAcrossM: number
}

/** A change of thickness: `ratio` of the larger to the smaller side, made within `overM` of length; 0 is a step [m]. */
export interface SectionJump {
  readonly xM: number
  readonly ratio: number
  readonly overM: number
}

/** A thin place near a part at least two and a half times as thick: no further from it than that part is thick. A wall counts as its equivalent round [m]. */
export interface ThinBesideThick {
  readonly xM: number
  readonly thinM: number
  readonly thickM: number
}

/** The lip about a dish: width of flat face left, its thickness 1 mm below the rim and the angle between hollow and side [m, deg]. */
export interface DishLip {
  readonly xM: number
  readonly landM: number
  readonly lipThicknessM: number
  readonly angleDeg: number
}

/** A hole from an end face, with the least wall beside it in the true shape [m]. */
export interface Hole {
  readonly xM: number
  readonly bottomXM: number
  readonly acrossM: number
  readonly wallM: number
}

export interface ShapeFeatures {
  readonly innerCorners: readonly InnerCorner[]
  readonly sectionJumps: readonly SectionJump[]
  readonly thinBesideThick: readonly ThinBesideThick[]
  readonly dishLips: readonly DishLip[]
  readonly holes: readonly Hole[]
}

/** Steps below this share are no feature; where the shape changes too, the doubt of the equivalent rounds comes on top. */
const LEAST_STEP = 0.05
const LEAST_STEP_ACROSS_SHAPES = 0.1
/** A side that turns inward by less than this makes no corner [rad]. */
const LEAST_TURN_RAD = 0.175
const THIN_RATIO = 2.5
/** A wall that cools from both sides goes as a round of 1.5 times its thickness (hardenability tables, plates; memory). */
const ROUND_OF_WALL = 1.5
/** Points and edges are measured this far behind their end [m]. */
const BEHIND_END_M = 1e-3

const features = new WeakMap<Profile, ShapeFeatures>()

/**
 * The places of a profile that fire and quench find out: inner corners, jumps, thin parts, lips and holes. For a sound profile; made
 * once for each profile object.
 */
export function shapeFeatures(profile: Profile): ShapeFeatures {
  const before = features.get(profile)
  if (before !== undefined) return before
  const made = newFeatures(profile)
  features.set(profile, made)
  return made
}

function newFeatures(profile: Profile): ShapeFeatures {
  return {
    innerCorners: innerCornersOf(profile),
    sectionJumps: sectionJumpsOf(profile),
    thinBesideThick: thinBesideThickOf(profile),
    dishLips: endsOf(profile).flatMap(({ section, xM, endM, slopeRad }) => {
      if (section.dish === undefined) return []
      const { thicknessM, angleRad } = lipOf(section.dish, endM, slopeRad, BEHIND_END_M)
      return [{ xM, landM: endM - section.dish.acrossM / 2, lipThicknessM: thicknessM, angleDeg: (angleRad * 180) / Math.PI }]
    }),
    holes: endsOf(profile).flatMap(({ section, xM, isFront }) => {
      if (section.bore === undefined) return []
      const { acrossM, depthM } = section.bore
      return [{ xM, bottomXM: isFront ? depthM : xM - depthM, acrossM, wallM: leastWallM(profile, isFront, depthM, acrossM) }]
    }),
  }
}

function innerCornersOf(profile: Profile): InnerCorner[] {
  const cones = conesOf(profile)
  return cones.slice(1).flatMap((after, k) => {
    const before = cones[k]!
    const section = profile.sections[k + 1]!
    const isStep = before.toM !== after.fromM
    const turn = atan2(after.toM - after.fromM, after.lengthM) - atan2(before.toM - before.fromM, before.lengthM)
    if (!isStep && turn < LEAST_TURN_RAD) return []
    const smaller = Math.min(before.toM, after.fromM)
    // A corner without a step is as deep as the metal rises within one thickness of it.
    const rise = (inM: number, outM: number, lengthM: number) => inM + (outM - inM) * Math.min(1, (2 * inM) / lengthM)
    const larger = isStep
      ? Math.max(before.toM, after.fromM)
      : Math.max(rise(before.toM, before.fromM, before.lengthM), rise(after.fromM, after.toM, after.lengthM))
    if (larger < smaller * (1 + leastStep(profile.sections[k]!, section))) return []
    return [{ xM: after.startM, filletM: section.filletM ?? 0, smallerAcrossM: 2 * smaller, largerAcrossM: 2 * larger }]
  })
}

function sectionJumpsOf(profile: Profile): SectionJump[] {
  const cones = conesOf(profile)
  const steps = cones.slice(1).flatMap((after, k) => {
    const [a, b] = [cones[k]!.toM, after.fromM]
    const ratio = Math.max(a, b) / Math.min(a, b)
    return ratio > 1 + leastStep(profile.sections[k]!, profile.sections[k + 1]!) ? [{ xM: after.startM, ratio, overM: 0 }] : []
  })
  // A taper shorter than it is thick works as a step; one that ends the piece is a point or a chamfer.
  const tapers = cones.slice(1, -1).flatMap(({ startM, lengthM, fromM, toM }) => {
    const ratio = Math.max(fromM, toM) / Math.min(fromM, toM)
    return ratio > 1 + LEAST_STEP && lengthM < 2 * Math.max(fromM, toM)
      ? [{ xM: startM + lengthM / 2, ratio, overM: lengthM }]
      : []
  })
  return [...steps, ...tapers].sort((a, b) => a.xM - b.xM)
}

/** Thickness along the piece, in steps of at most a millimetre: across its flats, the wall of a hollow as a round, or the length of a disc. */
function thinBesideThickOf(profile: Profile): ThinBesideThick[] {
  const lengthM = totalLengthM(profile)
  const stations: Station[] = []
  let startM = 0
  for (const [i, section] of profile.sections.entries()) {
    const { from, to } = section
    const count = Math.max(2, Math.ceil(section.lengthM / 1e-3))
    for (let k = 0; k <= count; k++) {
      const xM = Math.min(lengthM - BEHIND_END_M, Math.max(BEHIND_END_M, startM + (k / count) * section.lengthM))
      const across = from.acrossM + ((xM - startM) / section.lengthM) * (to.acrossM - from.acrossM)
      stations.push({ xM, thickM: Math.min(across, discM(profile, i), ROUND_OF_WALL * wallAtM(profile, xM, across)) })
    }
    startM += section.lengthM
  }
  const found: ThinBesideThick[] = []
  let best: (ThinBesideThick & { awayM: number }) | undefined
  for (const { xM, thickM: thinM } of [...stations, { xM: lengthM, thickM: 0 }]) {
    const thick = thickestNear(stations, xM)
    const isThin = thinM > 0 && thick !== undefined && thick.thickM >= THIN_RATIO * thinM
    // One finding for each thin stretch: its thinnest place, or of several the one nearest to the thick part.
    if (isThin) {
      const awayM = Math.abs(thick.xM - xM)
      if (best === undefined || thinM < best.thinM * (1 - 1e-9) || (thinM < best.thinM * (1 + 1e-9) && awayM < best.awayM))
        best = { xM, thinM, thickM: thick.thickM, awayM }
    } else if (best !== undefined) {
      found.push({ xM: best.xM, thinM: best.thinM, thickM: best.thickM })
      best = undefined
    }
  }
  return found
}

interface Station {
  readonly xM: number
  readonly thickM: number
}

/** The thickest station no further from `xM` than it is thick; of equals the nearest. */
function thickestNear(stations: readonly Station[], xM: number): Station | undefined {
  let most: Station | undefined
  let mostM = 0
  for (const station of stations) {
    const { thickM } = station
    if (thickM < mostM) continue
    const awayM = Math.abs(station.xM - xM)
    if (awayM > thickM) continue
    if (most !== undefined && thickM === mostM && awayM >= Math.abs(most.xM - xM)) continue
    most = station
    mostM = thickM
  }
  return most
}

/** Length of a section that stands out from its neighbours like a disc, else without limit [m]. */
function discM({ sections }: Profile, i: number): number {
  const own = Math.max(sections[i]!.from.acrossM, sections[i]!.to.acrossM)
  const neighbours = [sections[i - 1]?.to.acrossM, sections[i + 1]?.from.acrossM].filter((across) => across !== undefined)
  if (neighbours.length === 0 || neighbours.some((across) => across > 0.7 * own)) return Number.POSITIVE_INFINITY
  return sections[i]!.lengthM
}

/** Metal beside a dish or a hole at x, else without limit [m]. */
function wallAtM(profile: Profile, xM: number, acrossM: number): number {
  let wall = Number.POSITIVE_INFINITY
  for (const { section, xM: endXM } of endsOf(profile)) {
    const depth = Math.abs(xM - endXM)
    if (section.bore !== undefined && depth <= section.bore.depthM) wall = Math.min(wall, (acrossM - section.bore.acrossM) / 2)
    if (section.dish !== undefined && depth < section.dish.depthM)
      wall = Math.min(wall, lipOf(section.dish, acrossM / 2, 0, depth).thicknessM)
  }
  return wall
}

interface EndOfPiece {
  readonly section: Section
  readonly isFront: boolean
  readonly xM: number
  readonly endM: number
  /** How far the side leans outward, going in from the end [rad]. */
  readonly slopeRad: number
}

/** Both ends of the piece, half across and lean in the true shape; a piece of one section gives its dish and bore to its working end. */
function endsOf(profile: Profile): EndOfPiece[] {
  const { sections } = profile
  const first = sections[0]!
  const last = sections[sections.length - 1]!
  const lean = (end: number, far: number, lengthM: number) => atan2((far - end) / 2, lengthM)
  const front = {
    section: first,
    isFront: true,
    xM: 0,
    endM: first.from.acrossM / 2,
    slopeRad: lean(first.from.acrossM, first.to.acrossM, first.lengthM),
  }
  if (sections.length === 1) return [front]
  const rear = {
    section: last,
    isFront: false,
    xM: totalLengthM(profile),
    endM: last.to.acrossM / 2,
    slopeRad: lean(last.to.acrossM, last.from.acrossM, last.lengthM),
  }
  return [front, rear]
}

function leastStep(before: Section, after: Section): number {
  return before.shape === after.shape ? LEAST_STEP : LEAST_STEP_ACROSS_SHAPES
}
