import { endProblems } from './end-problems.ts'
import { outlineOf } from './outline.ts'
import { field, mm, type ProfileProblem } from './problem-words.ts'
import type { Profile, Section, SectionSize } from './profile.ts'

export type { ProfileProblem }

/** Least that can be worked out: a length, and a size that is no point [m]. */
const LEAST_LENGTH_M = 2e-4
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
