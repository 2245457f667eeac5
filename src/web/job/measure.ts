import { lengthText, type System } from '#units/length.ts'
import { followedLength } from './following.ts'
import type { JobText, SectionText, ZoneText } from './job-text.ts'
import { metres } from './profile-reading.ts'
import { type SizePart, sizePart, withSizePart } from './size-text.ts'

export type SectionEnd = 'from' | 'to' | 'both'

/** One figure of the drawing: what a handle moves, an arrow key steps and a field is typed into. */
export type Measure =
  | { readonly of: SizePart; readonly section: number; readonly end: SectionEnd }
  | { readonly of: 'length' | 'fillet' | 'tip'; readonly section: number }
  | { readonly of: 'dish-across' | 'dish-depth' | 'bore-across' | 'bore-depth'; readonly section: number }
  | { readonly of: 'zone-from' | 'zone-to'; readonly zone: number }

/** A name of its own for each measure, and the same for the same. */
export function measureKey(measure: Measure): string {
  return 'zone' in measure
    ? `${measure.of} ${measure.zone}`
    : `${measure.of} ${measure.section}${'end' in measure ? ` ${measure.end}` : ''}`
}

/** What stands there as typed; undefined where nothing does. `both` ends of a taper have no one figure. */
export function typedAt(job: JobText, measure: Measure): string | undefined {
  if ('zone' in measure) return job.zones?.[measure.zone]?.[measure.of === 'zone-from' ? 'from' : 'to']
  const section = job.profile?.[measure.section]
  if (section === undefined) return undefined
  switch (measure.of) {
    case 'across':
    case 'width': {
      const typed = measure.end === 'both' ? section.across : (section.across ?? section[measure.end])
      return typed === undefined ? undefined : sizePart(typed, measure.of)
    }
    case 'length':
      return section.length
    case 'fillet':
      return section.fillet
    case 'tip':
      return section.tip?.radius
    case 'dish-across':
      return section.dish?.across
    case 'dish-depth':
      return section.dish?.depth
    case 'bore-across':
      return section.bore?.across
    case 'bore-depth':
      return section.bore?.depth
  }
}

/** The same in metres; undefined where nothing stands or it cannot be read. A joint without a fillet has one of nothing. */
export function metresAt(job: JobText, measure: Measure): number | undefined {
  const typed = typedAt(job, measure)
  return typed === undefined && measure.of === 'fillet' && job.profile?.[measure.section] !== undefined ? 0 : metres(typed)
}

/** The document with this typed there, whatever it is. What lies beyond a section whose length changes moves with its metal. */
export function withTyped(job: JobText, measure: Measure, typed: string): JobText {
  if (typedAt(job, measure) === typed) return job
  if ('zone' in measure) {
    const key = measure.of === 'zone-from' ? 'from' : 'to'
    return withZone(job, measure.zone, (zone) => ({ ...zone, [key]: typed }))
  }
  const changed = withSection(job, measure.section, (section) => sectionWith(section, measure, typed))
  return measure.of === 'length' ? followedLength(job, changed, measure.section) : changed
}

/** The document with this length there, written in the shop's units. */
export function withMetres(job: JobText, measure: Measure, lengthM: number, system: System): JobText {
  const now = metresAt(job, measure)
  if (now !== undefined && Math.abs(now - lengthM) < 1e-9) return job
  return withTyped(job, measure, lengthText(lengthM, system))
}

export function withSection(job: JobText, index: number, change: (section: SectionText) => SectionText): JobText {
  const section = job.profile?.[index]
  if (job.profile === undefined || section === undefined) return job
  const next = change(section)
  return next === section ? job : { ...job, profile: job.profile.with(index, next) }
}

export function withZone(job: JobText, index: number, change: (zone: ZoneText) => ZoneText): JobText {
  const zone = job.zones?.[index]
  if (job.zones === undefined || zone === undefined) return job
  const next = change(zone)
  return next === zone ? job : { ...job, zones: job.zones.with(index, next) }
}

function sectionWith(section: SectionText, measure: Exclude<Measure, { zone: number }>, typed: string): SectionText {
  switch (measure.of) {
    case 'across':
    case 'width':
      return sized(section, measure.end, (size) => withSizePart(size, measure.of as SizePart, typed))
    case 'length':
      return { ...section, length: typed }
    case 'fillet': {
      const { fillet: _, ...rest } = section
      return typed.trim() === '' || metres(typed) === 0 ? rest : { ...section, fillet: typed }
    }
    case 'tip':
      return { ...section, tip: { radius: typed } }
    case 'dish-across':
    case 'dish-depth':
    case 'bore-across':
    case 'bore-depth': {
      const [hollow, key] = measure.of.split('-') as ['dish' | 'bore', 'across' | 'depth']
      return { ...section, [hollow]: { across: '', depth: '', ...section[hollow], [key]: typed } }
    }
  }
}

/** A section with one end, or both, of another size. An even section becomes a taper; a taper with the same at both ends is even again. */
export function sized(section: SectionText, end: SectionEnd, change: (size: string) => string): SectionText {
  const { across, from, to, ...rest } = section
  const now = { from: across ?? from ?? to ?? '', to: across ?? to ?? from ?? '' }
  const next = {
    from: end === 'to' ? now.from : change(now.from),
    to: end === 'from' ? now.to : change(now.to),
  }
  const { shape, ...others } = rest
  return next.from === next.to ? { shape, across: next.from, ...others } : { shape, ...next, ...others }
}
