import { lengthText, type System } from '#units/length.ts'
import { followed, systemOf } from './following.ts'
import type { HollowText, JobText, SectionText, ShapeText } from './job-text.ts'
import { sized, withSection } from './measure.ts'
import { MOST_SECTIONS, metres, sectionOf, shapeFaults } from './profile-reading.ts'
import { sizePart, withSizePart } from './size-text.ts'
import { clean, fractionM, snappedM } from './snapping.ts'
import { jointsOf } from './sound-shape.ts'

type Features = Pick<SectionText, 'dish' | 'bore' | 'tip'>
export type Feature = keyof Features

/** A new section above or below section `index`, as thick as the metal that it meets. The document itself where there is no room for one more. */
export function addedSection(job: JobText, index: number, where: 'above' | 'below', system: System): JobText {
  const profile = job.profile ?? []
  if (profile.length >= MOST_SECTIONS) return job
  const beside = profile[index]
  const newLengthM = system === 'metric' ? 0.025 : 0.0254
  const length = lengthText(newLengthM, system)
  if (beside === undefined) {
    const across = lengthText(system === 'metric' ? 0.02 : 0.01905, system)
    return { ...job, profile: [{ shape: 'round', across, length }] }
  }
  const size = where === 'above' ? (beside.across ?? beside.to ?? '') : (beside.across ?? beside.from ?? '')
  // Only the very end may run out to a point: it does so in the new section.
  const pointed = metres(sizePart(size, 'across')) === 0
  const thick = pointed ? withSizePart(size, 'across', lengthText(halfOfFar(beside, where, system), system)) : size
  const made: SectionText = pointed
    ? { shape: beside.shape, ...(where === 'above' ? { from: thick, to: size } : { from: size, to: thick }), length }
    : { shape: beside.shape, across: size, length }
  const old = pointed ? sized(beside, where === 'above' ? 'to' : 'from', () => thick) : beside
  const at = where === 'above' ? index + 1 : index
  const startM = jointsOf(job)[at] ?? 0
  const next = restructured(profile, (sections) => sections.with(index, { ...withoutFeatures(old) }).toSpliced(at, 0, made))
  return followed({ ...job, profile: next }, (xM, side) =>
    xM > startM + 1e-9 || (side === 'above' && xM > startM - 1e-9) ? clean(xM + newLengthM) : xM,
  )
}

/** A section cut into two halves that together are the same metal. */
export function splitSection(job: JobText, index: number, system: System): JobText {
  const profile = job.profile ?? []
  const section = profile[index]
  const read = section === undefined ? undefined : sectionOf(section)
  if (section === undefined || read === undefined || profile.length >= MOST_SECTIONS) return job
  const own = systemOf(section.length)
  const least = fractionM(system)
  const lowerM = Math.min(snappedM(read.lengthM / 2, system), read.lengthM - least)
  if (lowerM < least) return job
  const share = lowerM / read.lengthM
  const middle = (part: 'acrossM' | 'widthM'): string =>
    lengthText(Math.round(((read.from[part] ?? 0) + share * ((read.to[part] ?? 0) - (read.from[part] ?? 0))) * 1e5) / 1e5, system)
  const { across, from = '', to = '', fillet, length: _, shape } = withoutFeatures(section)
  const mid =
    read.from.widthM === undefined
      ? middle('acrossM')
      : withSizePart(withSizePart('1 x 1 mm', 'width', middle('widthM')), 'across', middle('acrossM'))
  const lower: SectionText = {
    shape,
    ...(across === undefined ? { from, to: mid } : { across }),
    length: lengthText(lowerM, system),
    ...(fillet === undefined ? {} : { fillet }),
  }
  const upper: SectionText = {
    shape,
    ...(across === undefined ? { from: mid, to } : { across }),
    length: lengthText(clean(read.lengthM - lowerM), own),
  }
  return { ...job, profile: restructured(profile, (sections) => sections.toSpliced(index, 1, lower, upper)) }
}

/** Without a section; what stood on it goes, what lay above it comes down. The last one stays. */
export function withoutSection(job: JobText, index: number): JobText {
  const profile = job.profile ?? []
  if (profile[index] === undefined || profile.length < 2) return job
  const joints = jointsOf(job)
  const [fromM = 0, toM = 0] = [joints[index], joints[index + 1]]
  // A fillet and what is in an end face are of their own metal, and go with it.
  const next = fitted(profile.toSpliced(index, 1).map((each, i) => (i === 0 ? withoutFillet(each) : each)))
  return followed({ ...job, profile: next }, (xM) => (xM >= toM - 1e-9 ? clean(xM - (toM - fromM)) : Math.min(xM, fromM)))
}

/** A section in the place of its neighbour, and the neighbour in its own. Zones that lie wholly on one of them go along. */
export function movedSection(job: JobText, index: number, way: 'up' | 'down'): JobText {
  const profile = job.profile ?? []
  const low = way === 'up' ? index : index - 1
  const [lower, upper] = [profile[low], profile[low + 1]]
  if (lower === undefined || upper === undefined) return job
  const joints = jointsOf(job)
  const [startM = 0, jointM = 0, endM = 0] = [joints[low], joints[low + 1], joints[low + 2]]
  const next = restructured(profile, (sections) =>
    sections.with(low, sections[low + 1] as SectionText).with(low + 1, sections[low] as SectionText),
  )
  const on = (fromM: number, toM: number, a: number, b: number): boolean => a >= fromM - 1e-9 && b <= toM + 1e-9
  const zones = job.zones?.map((zone) => {
    const [a, b] = [metres(zone.from), metres(zone.to)]
    if (a === undefined || b === undefined) return zone
    const byM = on(startM, jointM, a, b) ? endM - jointM : on(jointM, endM, a, b) ? startM - jointM : 0
    if (byM === 0) return zone
    return { ...zone, from: lengthText(clean(a + byM), systemOf(zone.from)), to: lengthText(clean(b + byM), systemOf(zone.to)) }
  })
  return { ...job, profile: next, ...(zones === undefined ? {} : { zones }) }
}

/** The same metal in another cross-section; a flat begins half as wide again as it is thick. */
export function reshaped(job: JobText, index: number, shape: ShapeText, system: System): JobText {
  return withSection(job, index, (section) => {
    if (section.shape === shape) return section
    const wasFlat = section.shape === 'flat'
    const convert = (size: string): string => {
      const across = sizePart(size, 'across') ?? size
      if (shape !== 'flat') return wasFlat ? across : size
      const acrossM = metres(across) ?? 0
      const widthM = Math.max(acrossM, snappedM(acrossM * 1.5, system), 4 * fractionM(system))
      return withSizePart(`${across} x ${across}`, 'width', lengthText(widthM, system))
    }
    const { across, from, to, ...rest } = section
    if (across !== undefined) return { ...rest, shape, across: convert(across) }
    return { ...rest, shape, from: convert(from ?? ''), to: convert(to ?? '') }
  })
}

/** A section even all along, or tapering toward its outer end by a quarter to begin with. */
export function tapered(job: JobText, index: number, taper: boolean, system: System): JobText {
  return withSection(job, index, (section) => {
    const { across, from, to, shape, ...rest } = section
    if (taper === (across === undefined)) return section
    if (!taper) return { shape, across: thicker(from ?? '', to ?? ''), ...rest }
    const size = across ?? ''
    const sizeM = metres(sizePart(size, 'across')) ?? 0
    const less = withSizePart(size, 'across', lengthText(Math.max(fractionM(system), snappedM(sizeM * 0.75, system)), system))
    return index === 0 ? { shape, from: less, to: size, ...rest } : { shape, from: size, to: less, ...rest }
  })
}

/** A dish, a bore or a rounding put into an end face at a size that its metal can take, or taken out of it. */
export function withFeature(job: JobText, index: number, feature: Feature, present: boolean, system: System): JobText {
  const profile = job.profile ?? []
  const section = profile[index]
  if (section === undefined || (section[feature] !== undefined) === present) return job
  if (!present) return withSection(job, index, ({ [feature]: _, ...rest }) => rest)
  const read = sectionOf(section)
  if (read === undefined) return job
  const endM = index === 0 ? read.from.acrossM : read.to.acrossM
  const least = fractionM(system)
  for (const share of [0.5, 0.35, 0.2, 0.1]) {
    const acrossM = Math.max(least, snappedM(endM * share, system))
    const made = madeFeature(
      feature,
      acrossM,
      Math.max(least, snappedM(acrossM * (feature === 'dish' ? 0.3 : 1.5), system)),
      system,
    )
    const next = withSection(job, index, (each) => ({ ...each, ...made }))
    if (shapeFaults(next.profile ?? []).length === 0) return next
  }
  return job
}

function madeFeature(feature: Feature, acrossM: number, depthM: number, system: System): Features {
  if (feature === 'tip')
    return { tip: { radius: lengthText(Math.max(fractionM(system), snappedM(acrossM / 3, system)), system) } }
  const hollow: HollowText = { across: lengthText(acrossM, system), depth: lengthText(depthM, system) }
  return feature === 'dish' ? { dish: hollow } : { bore: hollow }
}

/** What is in the end faces stays in the end faces of the piece, whichever section now has them. */
function restructured(
  profile: readonly SectionText[],
  change: (sections: readonly SectionText[]) => readonly SectionText[],
): readonly SectionText[] {
  const first = featuresOf(profile[0])
  const last = profile.length > 1 ? featuresOf(profile.at(-1)) : {}
  const next = change(profile.map(withoutFeatures))
  return fitted(
    next.map((section, i) => ({
      ...(i === 0 ? withoutFillet(section) : section),
      ...(i === 0 ? first : {}),
      ...(i === next.length - 1 && i > 0 ? last : {}),
    })),
  )
}

/** The sections without what no longer has its place in the metal: holes, dishes, roundings and fillets that are at fault go. */
function fitted(sections: readonly SectionText[]): readonly SectionText[] {
  let now = sections
  for (let faults = shapeFaults(now); faults.length > 0; faults = shapeFaults(now)) {
    const [, index = '', key = ''] = /^profile\[(\d+)\]\.(dish|bore|tip|fillet)/u.exec(faults[0]?.field ?? '') ?? []
    const at = now[Number(index)]
    if (key === '' || at === undefined) return sections
    const { [key as Feature | 'fillet']: _, ...rest } = at
    now = now.with(Number(index), rest as SectionText)
  }
  return now
}

function featuresOf(section: SectionText | undefined): Features {
  const { dish, bore, tip } = section ?? {}
  return {
    ...(dish === undefined ? {} : { dish }),
    ...(bore === undefined ? {} : { bore }),
    ...(tip === undefined ? {} : { tip }),
  }
}

function withoutFeatures({ dish: _, bore: __, tip: ___, ...rest }: SectionText): SectionText {
  return rest
}

function withoutFillet({ fillet: _, ...rest }: SectionText): SectionText {
  return rest
}

function thicker(from: string, to: string): string {
  return (metres(sizePart(from, 'across')) ?? 0) >= (metres(sizePart(to, 'across')) ?? 0) ? from : to
}

function halfOfFar(section: SectionText, where: 'above' | 'below', system: System): number {
  const far = where === 'above' ? (section.across ?? section.from) : (section.across ?? section.to)
  return Math.max(fractionM(system), snappedM((metres(sizePart(far ?? '', 'across')) ?? 0) / 2, system))
}
