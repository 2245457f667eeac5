import type { Profile, Section, SectionSize } from '#engine/geometry/profile.ts'
import { type ProfileProblem, profileProblems } from '#engine/geometry/profile-problems.ts'
import { parseLength } from '#units/length.ts'
import { parseSectionSize } from '#units/section-size.ts'
import type { HollowText, SectionText } from './job-text.ts'

/** Limits that a job file keeps to besides those of the shape itself [m]. */
const LONGEST_M = 3
const THICKEST_M = 0.5
export const MOST_SECTIONS = 40

const sections = new WeakMap<SectionText, Section | undefined>()
const profiles = new WeakMap<readonly SectionText[], Profile | undefined>()
const problems = new WeakMap<readonly SectionText[], readonly ProfileProblem[]>()

/** A section as the engine takes it, or undefined where something in it cannot be read. Read once for each object. */
export function sectionOf(text: SectionText): Section | undefined {
  if (!sections.has(text)) sections.set(text, readSection(text))
  return sections.get(text)
}

/** The whole shape, or undefined where a section cannot be read. Read once for each list. */
export function profileOf(texts: readonly SectionText[]): Profile | undefined {
  if (!profiles.has(texts)) {
    const all = texts.map(sectionOf).filter((each) => each !== undefined)
    profiles.set(texts, all.length === texts.length ? { sections: all } : undefined)
  }
  return profiles.get(texts)
}

/** What is wrong with a shape; empty when it can be worked out. */
export function shapeFaults(texts: readonly SectionText[]): readonly ProfileProblem[] {
  const known = problems.get(texts)
  if (known !== undefined) return known
  const found = faultsOf(texts)
  problems.set(texts, found)
  return found
}

function faultsOf(texts: readonly SectionText[]): readonly ProfileProblem[] {
  const profile = profileOf(texts)
  if (profile === undefined) {
    const unread = texts.findIndex((each) => sectionOf(each) === undefined)
    return [{ field: `profile[${unread}]`, says: 'it cannot be read' }]
  }
  if (texts.length > MOST_SECTIONS) return [{ field: 'profile', says: `at most ${MOST_SECTIONS} sections can be worked out` }]
  let lengthM = 0
  for (const [i, { from, to, lengthM: each }] of profile.sections.entries()) {
    lengthM += each
    if (Math.max(from.widthM ?? from.acrossM, to.widthM ?? to.acrossM) > THICKEST_M)
      return [{ field: `profile[${i}]`, says: `at most ${THICKEST_M * 1000} mm thick can be worked out` }]
  }
  if (lengthM > LONGEST_M) return [{ field: 'profile', says: `a piece of up to ${LONGEST_M} m can be worked out` }]
  return profileProblems(profile)
}

function readSection(text: SectionText): Section | undefined {
  const { shape, across, from, to, length, fillet, dish, bore, tip } = text
  if (across !== undefined && (from !== undefined || to !== undefined)) return undefined
  const sizes = [across ?? from, across ?? to].map((each) => sizeOf(each, shape === 'flat'))
  const [first, last] = sizes
  const lengthM = metres(length)
  const filletM = fillet === undefined ? undefined : metres(fillet)
  const hollows = [dish, bore].map((each) => (each === undefined ? undefined : hollowOf(each)))
  const tipM = tip === undefined ? undefined : metres(tip.radius)
  if (first === undefined || last === undefined || lengthM === undefined) return undefined
  if ((fillet !== undefined && filletM === undefined) || (tip !== undefined && tipM === undefined)) return undefined
  const [dished, bored] = hollows
  if ((dish !== undefined && dished === undefined) || (bore !== undefined && bored === undefined)) return undefined
  return {
    shape,
    from: first,
    to: last,
    lengthM,
    ...(filletM === undefined ? {} : { filletM }),
    ...(dished === undefined ? {} : { dish: dished }),
    ...(bored === undefined ? {} : { bore: bored }),
    ...(tipM === undefined ? {} : { tip: { radiusM: tipM } }),
  }
}

function sizeOf(typed: string | undefined, flat: boolean): SectionSize | undefined {
  const size = typed === undefined ? undefined : parseSectionSize(typed, { zero: true })
  if (size?.ok !== true || (size.value.widthM !== undefined) !== flat) return undefined
  const { acrossM, widthM } = size.value
  return widthM === undefined ? { acrossM } : { acrossM, widthM }
}

function hollowOf({ across, depth }: HollowText): { acrossM: number; depthM: number } | undefined {
  const [acrossM, depthM] = [metres(across), metres(depth)]
  return acrossM === undefined || depthM === undefined ? undefined : { acrossM, depthM }
}

/** A length as typed, in metres; undefined where it cannot be read. Nothing at all counts as a length. */
export function metres(typed: unknown): number | undefined {
  const length = parseLength(typed, { zero: true })
  return length.ok ? length.value.lengthM : undefined
}
