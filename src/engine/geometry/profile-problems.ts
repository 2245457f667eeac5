import { cornerSetbackM, tipForm } from './end-shape.ts'
import { leastWallM, lipOf } from './hollows.ts'
import { conesOf, outlineOf, totalLengthM } from './outline.ts'
import type { Dish, Profile, Section, SectionSize } from './profile.ts'

/** A fault of a profile: the field as a job file writes it, what was read there, and what would do. */
export interface ProfileProblem {
  readonly field: string
  readonly says: string
}

/** Least thickness of a lip, over the square of the depth below the rim and its eighths [1]. */
const LEAST_LIP = 0.05

/** Least that can be worked out: a length, a wall beside a hole, a size that is no point [m]. */
const LEAST_LENGTH_M = 2e-4
const LEAST_WALL_M = 5e-4
const LEAST_SIZE_M = 1e-4

/**
 * What is wrong with the shape of a piece; empty when `outlineOf` and `meshOf` can take it. A fillet that only must be smaller than asked
 * is no fault: the outline says in `reducedFillets` what it used.
 */
export function profileProblems(profile: Profile): ProfileProblem[] {
  const { sections } = profile
  if (sections.length === 0) return [{ field: 'profile', says: 'it has no sections; list at least one, from the working end on' }]
  const problems = sections.flatMap((section, i) => [
    ...sizeProblems(section, i, sections.length),
    ...filletProblems(section, i, sections[i - 1]),
    ...placeProblems(section, i, sections.length),
  ])
  // Hollows and ends are judged against sizes, so these must be sound first.
  if (problems.length > 0) return problems
  const last = sections.length - 1
  problems.push(...endProblems(profile, 0, true))
  if (last > 0) problems.push(...endProblems(profile, last, false))
  if (problems.length > 0) return problems
  try {
    outlineOf(profile)
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    return [{ field: 'profile', says: error.message }]
  }
  return []
}

function sizeProblems(section: Section, i: number, count: number): ProfileProblem[] {
  const found: ProfileProblem[] = []
  if (!(section.lengthM >= LEAST_LENGTH_M && Number.isFinite(section.lengthM)))
    found.push({
      field: field(i, 'length'),
      says: `${mm(section.lengthM)} is too short to work out; give at least ${mm(LEAST_LENGTH_M)}`,
    })
  for (const end of ['from', 'to'] as const) {
    const size = section[end]
    const mayBePoint = (end === 'from' && i === 0) || (end === 'to' && i === count - 1)
    found.push(...oneSizeProblems(section, size, field(i, end), mayBePoint))
  }
  if (found.length === 0 && section.from.acrossM === 0 && section.to.acrossM === 0)
    found.push({ field: field(i, 'to'), says: 'both ends are 0; give one of them a size' })
  return found
}

function oneSizeProblems({ shape }: Section, size: SectionSize, at: string, mayBePoint: boolean): ProfileProblem[] {
  const { acrossM, widthM } = size
  if (!Number.isFinite(acrossM) || acrossM < 0)
    return [{ field: at, says: `${mm(acrossM)} is no size; give more than 0, as 22 mm` }]
  if (acrossM === 0 && !mayBePoint)
    return [{ field: at, says: '0 mm within the piece leaves no metal; only its very ends may run out to a point or an edge' }]
  if (acrossM > 0 && acrossM < LEAST_SIZE_M)
    return [
      {
        field: at,
        says: `${mm(acrossM)} is finer than can be worked out; write 0 for a point or an edge, or at least ${mm(LEAST_SIZE_M)}`,
      },
    ]
  if (shape !== 'flat')
    return widthM === undefined ? [] : [{ field: at, says: `a ${shape} has one size; leave out the width, or write shape: flat` }]
  if (widthM === undefined) return [{ field: at, says: 'a flat has a thickness and a width; write 5 x 12 mm' }]
  if (!(widthM >= acrossM && widthM > 0 && Number.isFinite(widthM)))
    return [
      { field: at, says: `${mm(acrossM)} x ${mm(widthM)}: the thickness comes first and is the lesser; turn the two about` },
    ]
  return []
}

function filletProblems({ filletM, lengthM, from }: Section, i: number, before: Section | undefined): ProfileProblem[] {
  if (filletM === undefined || filletM === 0) return []
  const at = field(i, 'fillet')
  if (!Number.isFinite(filletM) || filletM < 0)
    return [{ field: at, says: `${mm(filletM)} is no radius; give more than 0, or leave it out for a sharp corner` }]
  if (before === undefined)
    return [{ field: at, says: 'no section lies before the first one; give the fillet to the section after the joint' }]
  const most = Math.max(lengthM, before.lengthM, from.acrossM, before.to.acrossM)
  if (filletM > most)
    return [{ field: at, says: `${mm(filletM)} is larger than the sections that it joins; at most ${mm(most)} has room` }]
  return []
}

function placeProblems(section: Section, i: number, count: number): ProfileProblem[] {
  if (i === 0 || i === count - 1) return []
  return (['dish', 'bore', 'tip'] as const).flatMap((key) =>
    section[key] === undefined
      ? []
      : [{ field: field(i, key), says: `a ${key} is in an end face: on the first or the last section only` }],
  )
}

/** Dish, bore and tip of one end of the piece. */
function endProblems(profile: Profile, i: number, isFront: boolean): ProfileProblem[] {
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
  const slopeRad = Math.atan2(farM - endM, cone.lengthM)
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
  return radiusM - Math.sqrt(Math.max(0, radiusM * radiusM - Math.min(rimM, radiusM) ** 2))
}

function field(i: number, key: string): string {
  return `profile[${i}].${key}`
}

function mm(m: number): string {
  return Number.isFinite(m) ? `${Math.round(m * 1e5) / 100} mm` : String(m)
}
