import { atan2, tan } from '#engine/arithmetic/angles.ts'
import { type EndSpec, endPieces } from './end-shape.ts'
import { finished, type Outline, type ReducedFillet, SHORTEST_PIECE_M } from './outline-chain.ts'
import { arcAbout, distanceM, line, mirrored, type OutlinePiece, type OutlinePoint, pieceLengthM } from './outline-pieces.ts'
import type { Profile, Section } from './profile.ts'
import { equivalentRoundM } from './section-shapes.ts'

export {
  type Outline,
  outlineFrom,
  polylineOf,
  radiusAt,
  surfaceM2Of,
  volumeM3Of,
} from './outline-chain.ts'

/** Steps below this share of the larger radius are evened out: they are within the doubt of any equivalent round. */
const EVEN_STEP = 0.02

/** A section as a cone of equivalent rounds: where it begins, its length and radii [m]. */
export interface ConeLength {
  readonly startM: number
  readonly lengthM: number
  fromM: number
  toM: number
}

const outlines = new WeakMap<Profile, Outline>()

/**
 * The body of revolution of a profile: each section as its equivalent round at both ends, joined at plane shoulders,
 * with fillets tangent in the inner corners. Steps of less than 2 % in radius are evened out at half way.
 *
 * - throws: RangeError when a dish, a bore or a tip leaves no metal; `profileProblems` says such things of the input beforehand
 *
 * Made once for each profile object.
 */
export function outlineOf(profile: Profile): Outline {
  const before = outlines.get(profile)
  if (before !== undefined) return before
  const outline = newOutline(profile)
  outlines.set(profile, outline)
  return outline
}

function newOutline(profile: Profile): Outline {
  const { sections } = profile
  const first = sections[0]
  const last = sections[sections.length - 1]
  if (first === undefined || last === undefined) throw new RangeError('profile: it has no sections')
  const cones = conesOf(profile)
  const lengthM = totalLengthM(profile)

  const single = sections.length === 1
  const front = endPieces(endSpec(first, cones[0]!.fromM, cones[0]!.toM))
  const rearCone = cones[cones.length - 1]!
  // The only section has one dish, bore or tip to give, and gives it to its working end.
  const rear = endPieces(
    single ? { endM: rearCone.toM, farM: rearCone.fromM, lengthM } : endSpec(last, rearCone.toM, rearCone.fromM),
  )
    .map((piece) => mirrored(piece, lengthM))
    .reverse()

  const corners: Corner[] = [{ at: front[front.length - 1]?.to ?? { xM: 0, rM: 0 } }]
  for (let joint = 0; joint + 1 < sections.length; joint++) {
    const xM = cones[joint + 1]!.startM
    const before = cones[joint]!.toM
    const after = cones[joint + 1]!.fromM
    const askedM = sections[joint + 1]!.filletM ?? 0
    if (before === after) corners.push({ at: { xM, rM: before }, joint, askedM })
    else {
      const inner = { at: { xM, rM: Math.min(before, after) }, joint, askedM }
      const outer = { at: { xM, rM: Math.max(before, after) } }
      corners.push(...(before < after ? [inner, outer] : [outer, inner]))
    }
  }
  corners.push({ at: rear[0]?.from ?? { xM: lengthM, rM: 0 } })

  const { pieces, reduced } = joined(corners)
  const all = [...front, ...pieces, ...rear].filter((piece) => pieceLengthM(piece) > SHORTEST_PIECE_M)
  return finished(all, reduced)
}

/** The sections as cones of equivalent rounds, small steps evened out. */
export function conesOf(profile: Profile): ConeLength[] {
  let startM = 0
  const cones = profile.sections.map(({ shape, from, to, lengthM }) => {
    const cone = { startM, lengthM, fromM: equivalentRoundM(shape, from) / 2, toM: equivalentRoundM(shape, to) / 2 }
    startM += lengthM
    return cone
  })
  for (let i = 0; i + 1 < cones.length; i++) {
    const a = cones[i]!
    const b = cones[i + 1]!
    if (Math.abs(a.toM - b.fromM) <= EVEN_STEP * Math.max(a.toM, b.fromM)) {
      a.toM = (a.toM + b.fromM) / 2
      b.fromM = a.toM
    }
  }
  return cones
}

export function totalLengthM(profile: Profile): number {
  return profile.sections.reduce((sum, section) => sum + section.lengthM, 0)
}

function endSpec(section: Section, endM: number, farM: number): EndSpec {
  return {
    endM,
    farM,
    lengthM: section.lengthM,
    ...(section.dish ? { dish: section.dish } : {}),
    ...(section.bore ? { bore: section.bore } : {}),
    ...(section.tip ? { tipM: section.tip.radiusM } : {}),
  }
}

/** A corner of the side; `joint` and `askedM` when a fillet may stand there. */
interface Corner {
  readonly at: OutlinePoint
  readonly joint?: number
  readonly askedM?: number
}

/** The side as lines through the corners, inner corners rounded; where two fillets want the same line, both shrink alike. */
function joined(corners: readonly Corner[]): { pieces: OutlinePiece[]; reduced: ReducedFillet[] } {
  const count = corners.length
  const turns = corners.map((corner, i) =>
    i > 0 && i + 1 < count ? turnAt(corners[i - 1]!.at, corner.at, corners[i + 1]!.at) : 0,
  )
  const setbacks = corners.map(({ askedM = 0 }, i) => (turns[i]! > 0 ? askedM * tan(turns[i]! / 2) : 0))
  const shrink = corners.map(() => 1)
  for (let i = 0; i + 1 < count; i++) {
    const wanted = setbacks[i]! + setbacks[i + 1]!
    const room = distanceM(corners[i]!.at, corners[i + 1]!.at)
    if (wanted <= room) continue
    shrink[i] = Math.min(shrink[i]!, room / wanted)
    shrink[i + 1] = Math.min(shrink[i + 1]!, room / wanted)
  }

  const pieces: OutlinePiece[] = []
  const reduced: ReducedFillet[] = []
  let here = corners[0]!.at
  for (let i = 1; i < count; i++) {
    const { at, joint, askedM = 0 } = corners[i]!
    const usedM = turns[i]! > 0 ? askedM * shrink[i]! : 0
    if (joint !== undefined && askedM > 0 && usedM < askedM * (1 - 1e-9)) reduced.push({ joint, askedM, usedM })
    const setback = setbacks[i]! * shrink[i]!
    if (!(setback > 0)) {
      pieces.push(line(here, at))
      here = at
      continue
    }
    const start = toward(at, corners[i - 1]!.at, setback)
    const end = toward(at, corners[i + 1]!.at, setback)
    // The centre stands off the metal, to the left of the way in.
    const wayM = distanceM(corners[i - 1]!.at, at)
    const [ux, ur] = [(at.xM - corners[i - 1]!.at.xM) / wayM, (at.rM - corners[i - 1]!.at.rM) / wayM]
    const centre = { xM: start.xM - ur * usedM, rM: start.rM + ux * usedM }
    pieces.push(line(here, start), arcAbout(centre, start, end, 1))
    here = end
  }
  return { pieces, reduced }
}

/** Turn of the way at `at` [rad], left (toward an inner corner) positive. */
function turnAt(before: OutlinePoint, at: OutlinePoint, after: OutlinePoint): number {
  const [ux, ur] = [at.xM - before.xM, at.rM - before.rM]
  const [vx, vr] = [after.xM - at.xM, after.rM - at.rM]
  return atan2(ux * vr - ur * vx, ux * vx + ur * vr)
}

function toward(from: OutlinePoint, to: OutlinePoint, lengthM: number): OutlinePoint {
  const share = lengthM / distanceM(from, to)
  return { xM: from.xM + share * (to.xM - from.xM), rM: from.rM + share * (to.rM - from.rM) }
}
