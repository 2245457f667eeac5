import { atan2 } from '#engine/arithmetic/angles.ts'
import { square } from '#engine/arithmetic/square.ts'
import { cornerSetbackM, tipForm } from './end-shape.ts'
import { leastWallM, lipOf } from './hollows.ts'
import { conesOf, totalLengthM } from './outline.ts'
import { field, mm, type ProfileProblem } from './problem-words.ts'
import type { Dish, Profile } from './profile.ts'

/** Least that can be worked out: a wall beside a hole, its width, and what it is deeper than a dish [m]. */
const LEAST_WALL_M = 5e-4
const LEAST_SIZE_M = 1e-4
const LEAST_LENGTH_M = 2e-4

/** Least thickness of a lip, over the square of the depth below the rim and its eighths [1]. */
const LEAST_LIP = 0.05

/** Dish, bore and tip of one end of the piece. */
export function endProblems(profile: Profile, i: number, isFront: boolean): ProfileProblem[] {
  const section = profile.sections[i]!
  const { dish, bore, tip, lengthM } = section
  const end = isFront ? section.from : section.to
  const found: ProfileProblem[] = []
  if (dish !== undefined) {
    const { acrossM, depthM } = dish
    if (!(acrossM > 0 && Number.isFinite(acrossM)))
      found.push({ field: field(i, 'dish.across'), says: `${mm(acrossM)} is no width; give more than 0` })
    else if (acrossM > end.acrossM * (1 + 1e-9))
      found.push({
        field: field(i, 'dish.across'),
        says: `${mm(acrossM)} is wider than the end, which is ${mm(end.acrossM)}; make it no wider`,
      })
    if (!(depthM > 0 && Number.isFinite(depthM)))
      found.push({ field: field(i, 'dish.depth'), says: `${mm(depthM)} is no depth; give more than 0` })
    else if (depthM > (acrossM / 2) * (1 + 1e-9))
      found.push({
        field: field(i, 'dish.depth'),
        says: `${mm(depthM)} is more than half of its width; a part of a ball is at most ${mm(acrossM / 2)} deep here`,
      })
    else if (depthM >= lengthM)
      found.push({
        field: field(i, 'dish.depth'),
        says: `${mm(depthM)} goes through its section, which is ${mm(lengthM)} long; make it shallower`,
      })
  }
  if (dish !== undefined && found.length === 0) found.push(...lipProblems(profile, i, isFront, dish))
  if (bore !== undefined) found.push(...boreProblems(profile, i, isFront))
  if (tip !== undefined && found.length === 0) found.push(...tipProblems(profile, i, isFront))
  return found
}

/** Where the side leans in behind the rim, the hollow may come out through it. */
function lipProblems(profile: Profile, i: number, isFront: boolean, dish: Dish): ProfileProblem[] {
  const cone = conesOf(profile)[i]!
  const [endM, farM] = isFront ? [cone.fromM, cone.toM] : [cone.toM, cone.fromM]
  const slopeRad = atan2(farM - endM, cone.lengthM)
  for (let k = 1; k < 8; k++) {
    const atM = (k / 8) * dish.depthM
    const { thicknessM } = lipOf(dish, endM, slopeRad, atM)
    // A half ball as wide as a straight end, the thinnest lip that holds, has 0.06 of this at the first place and 0.13 at the second.
    if (thicknessM >= LEAST_LIP * k * atM) continue
    return [
      {
        field: field(i, 'dish.across'),
        says: `${mm(dish.acrossM)} leaves no metal between hollow and side, ${mm(atM)} below the rim; make it narrower or shallower`,
      },
    ]
  }
  return []
}

function boreProblems(profile: Profile, i: number, isFront: boolean): ProfileProblem[] {
  const { dish, bore } = profile.sections[i]!
  const { acrossM, depthM } = bore!
  if (!(acrossM >= LEAST_SIZE_M && Number.isFinite(acrossM)))
    return [{ field: field(i, 'bore.across'), says: `${mm(acrossM)} is no hole; give at least ${mm(LEAST_SIZE_M)}` }]
  if (!(depthM > 0 && Number.isFinite(depthM)))
    return [{ field: field(i, 'bore.depth'), says: `${mm(depthM)} is no depth; give more than 0` }]
  const lengthM = totalLengthM(profile)
  const other = isFront ? profile.sections[profile.sections.length - 1]! : profile.sections[0]!
  const taken = profile.sections.length > 1 ? Math.max(other.bore?.depthM ?? 0, other.dish?.depthM ?? 0) : 0
  if (depthM > lengthM - taken - LEAST_WALL_M)
    return [
      {
        field: field(i, 'bore.depth'),
        says: `${mm(depthM)} goes through; only holes with a bottom can be worked out, here at most ${mm(Math.max(0, lengthM - taken - LEAST_WALL_M))} deep`,
      },
    ]
  const wall = leastWallM(profile, isFront, depthM, acrossM)
  if (wall < LEAST_WALL_M)
    return [
      {
        field: field(i, 'bore.across'),
        says: `${mm(acrossM)} leaves ${mm(Math.max(0, wall))} of wall; at least ${mm(LEAST_WALL_M)} can be worked out`,
      },
    ]
  if (dish !== undefined && acrossM >= 0.98 * dish.acrossM)
    return [
      {
        field: field(i, 'bore.across'),
        says: `${mm(acrossM)} swallows the dish, ${mm(dish.acrossM)} wide; leave out one of them`,
      },
    ]
  if (dish !== undefined && depthM <= dish.depthM + LEAST_LENGTH_M)
    return [
      {
        field: field(i, 'bore.depth'),
        says: `${mm(depthM)} from the face ends within the dish, ${mm(dish.depthM)} deep; make it deeper or leave it out`,
      },
    ]
  return []
}

function tipProblems(profile: Profile, i: number, isFront: boolean): ProfileProblem[] {
  const { dish, bore, tip, lengthM } = profile.sections[i]!
  const cone = conesOf(profile)[i]!
  const [endM, farM] = isFront ? [cone.fromM, cone.toM] : [cone.toM, cone.fromM]
  const tipM = tip!.radiusM
  const at = field(i, 'tip.radius')
  if (!(tipM > 0 && Number.isFinite(tipM))) return [{ field: at, says: `${mm(tipM)} is no radius; give more than 0` }]
  const rimM = Math.max(dish?.acrossM ?? 0, bore?.acrossM ?? 0) / 2
  switch (tipForm(endM, farM, lengthM, tipM)) {
    case 'corner': {
      const setback = cornerSetbackM(endM, farM, lengthM, tipM)
      if (setback > endM - rimM)
        return [
          {
            field: at,
            says: `${mm(tipM)} would round the rim of the hollow away; the face beside it is ${mm(endM - rimM)} wide`,
          },
        ]
      if (setback > lengthM)
        return [{ field: at, says: `${mm(tipM)} is more than its section, ${mm(lengthM)} long, can be rounded by` }]
      return []
    }
    case 'dome': {
      if (rimM > 0)
        return [{ field: at, says: `${mm(tipM)} makes a dome of the end, which has a hollow already; leave out one of them` }]
      const height = sphereHeightM(tipM, endM)
      if (height > 0.9 * lengthM)
        return [
          {
            field: at,
            says: `${mm(tipM)} makes a dome longer than its section, ${mm(lengthM)}; make the radius larger or the section longer`,
          },
        ]
      return []
    }
    case 'ball': {
      const most = Math.min(0.8 * farM, 0.45 * lengthM)
      return tipM > most
        ? [{ field: at, says: `${mm(tipM)} is too blunt for this point; at most ${mm(most)}, or give the end a size` }]
        : []
    }
  }
}

function sphereHeightM(radiusM: number, rimM: number): number {
  return radiusM - Math.sqrt(Math.max(0, radiusM * radiusM - square(Math.min(rimM, radiusM))))
}
