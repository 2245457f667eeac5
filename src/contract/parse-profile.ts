import type { Profile, Section } from '#engine/geometry/profile.ts'
import { profileProblems } from '#engine/geometry/profile-problems.ts'
import { shown } from '#units/reading.ts'
import { sectionSchema, type TypedSection } from './piece-schema.ts'
import { fieldPath, type Problem } from './problems.ts'
import { taken } from './schema-problems.ts'

export interface ProfileTaken {
  readonly profile: Profile
  readonly typed: readonly TypedSection[]
}

const MOST_SECTIONS = 40
/** Nothing that is held in tongs is longer or thicker [m]. */
const LONGEST_M = 3
const THICKEST_M = 0.5

/** The shape of the piece, or undefined with its problems added. */
export function takeProfile(input: unknown, problems: Problem[]): ProfileTaken | undefined {
  const before = problems.length
  if (input === undefined || input === null) {
    problems.push({
      field: 'profile',
      says: 'missing: list the sections from the working end, as - { shape: round, across: 22 mm, length: 110 mm }',
    })
    return undefined
  }
  if (!Array.isArray(input) || input.length === 0 || input.length > MOST_SECTIONS) {
    problems.push({
      field: 'profile',
      says: `${shown(input)}: a list of 1 to ${MOST_SECTIONS} sections belongs here, from the working end on`,
    })
    return undefined
  }
  const typed = input.map((each, i) => taken(sectionSchema, each, `profile[${i}]`, problems))
  const sections = typed.map((each, i) => (each === undefined ? undefined : sectionOf(each, i, input.length, problems)))
  const whole = sections.filter((each) => each !== undefined)
  const lengthM = whole.reduce((sum, each) => sum + each.lengthM, 0)
  if (lengthM > LONGEST_M)
    problems.push({
      field: 'profile',
      says: `the sections add up to ${lengthM.toFixed(2)} m; a piece of up to ${LONGEST_M} m can be worked out`,
    })
  if (problems.length > before || whole.length !== input.length) return undefined
  const profile: Profile = { sections: whole }
  problems.push(...shapeProblems(profile, typed))
  if (problems.length > before) return undefined
  return { profile, typed: typed.filter((each) => each !== undefined) }
}

/** What the engine cannot take, under the field as it was typed: an even section has `across` for both its ends. */
function shapeProblems(profile: Profile, typed: readonly (TypedSection | undefined)[]): Problem[] {
  const found = profileProblems(profile).map(({ field, says }) => {
    const place = /^profile\[(\d+)\]\.(?:from|to)$/u.exec(field)
    const even = place !== null && typed[Number(place[1])]?.across !== undefined
    return { field: even ? `profile[${place[1]}].across` : field, says }
  })
  return found.filter(({ field, says }, i) => found.findIndex((each) => each.field === field && each.says === says) === i)
}

function sectionOf(typed: TypedSection, index: number, count: number, problems: Problem[]): Section | undefined {
  const before = problems.length
  const at = (...path: PropertyKey[]): string => fieldPath('profile', [index, ...path])
  const { shape, across, from, to, length, fillet, dish, bore, tip } = typed
  if (across !== undefined && (from !== undefined || to !== undefined))
    problems.push({
      field: at('across'),
      says: 'across beside from and to; write across for an even section, from and to for a taper',
    })
  else if (across === undefined && (from === undefined || to === undefined)) {
    const missing = from === undefined && to === undefined ? 'across' : from === undefined ? 'from' : 'to'
    problems.push({
      field: at(missing),
      says: 'missing: write across: 22 mm for an even section, or from: 22 mm and to: 16 mm for a taper',
    })
  }
  for (const [key, size] of Object.entries({ across, from, to })) {
    if (size === undefined) continue
    const quoted = shown(size.typed)
    if (shape === 'flat' && size.widthM === undefined)
      problems.push({ field: at(key), says: `${quoted}: a flat has a thickness and a width; write 5 x 12 mm` })
    else if (shape !== 'flat' && size.widthM !== undefined)
      problems.push({ field: at(key), says: `${quoted}: a ${shape} has one size; write 22 mm, or shape: flat` })
    else if (size.widthM !== undefined && size.widthM < size.acrossM)
      problems.push({ field: at(key), says: `${quoted}: the thickness comes first and is the lesser; turn the two about` })
    if ((size.widthM ?? size.acrossM) > THICKEST_M)
      problems.push({ field: at(key), says: `${quoted}: thicker than the ${THICKEST_M * 1000} mm that can be worked out` })
  }
  if (fillet !== undefined && fillet.lengthM > 0 && index === 0)
    problems.push({
      field: at('fillet'),
      says: 'a fillet lies where a section meets the one before it, and this is the first; give it to the next',
    })
  for (const key of ['dish', 'bore', 'tip'] as const)
    if (typed[key] !== undefined && index !== 0 && index !== count - 1)
      problems.push({ field: at(key), says: `a ${key} is in an end face: on the first or the last section only` })
  const first = across ?? from
  const last = across ?? to
  if (problems.length > before || first === undefined || last === undefined) return undefined
  return {
    shape,
    from: sizeOf(first),
    to: sizeOf(last),
    lengthM: length.lengthM,
    ...(fillet === undefined ? {} : { filletM: fillet.lengthM }),
    ...(dish === undefined ? {} : { dish: { acrossM: dish.across.lengthM, depthM: dish.depth.lengthM } }),
    ...(bore === undefined ? {} : { bore: { acrossM: bore.across.lengthM, depthM: bore.depth.lengthM } }),
    ...(tip === undefined ? {} : { tip: { radiusM: tip.radius.lengthM } }),
  }
}

function sizeOf({ acrossM, widthM }: { readonly acrossM: number; readonly widthM?: number }): Section['from'] {
  return widthM === undefined ? { acrossM } : { acrossM, widthM }
}
