import type { EngineFinding } from '#engine/findings/finding.ts'
import type { Profile, Section } from '#engine/geometry/profile.ts'
import { profileProblems } from '#engine/geometry/profile-problems.ts'
import { shapeFeatures } from '#engine/geometry/shape-features.ts'
import { lengthText } from '#units/length.ts'
import { sectionSizeText } from '#units/section-size.ts'
import type { JobEdit } from './job-edits.ts'
import { type Remedy, type RemedyGround, sectionStartsM, writes } from './remedy-edits-ground.ts'
import { before, lengthSetting, type Setting } from './remedy-edits-settings.ts'

/** The shape itself: radii, tapers, thin places. Each is tried on the shape before it is offered. */

export function sharpInnerCorner({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const { profile } = ground.account.job
  const index = jointAt(ground, where?.xM)
  if (index === undefined || figures?.radiusM === undefined) return []
  const now = profile.sections[index]?.filletM ?? 0
  const fillet = lengthSetting(figures.radiusM, ground.units, 'up')
  if (!isSound(withSection(profile, index, { filletM: fillet.si }))) return []
  const place = before.length(where?.xM ?? 0, ground.units)
  return [
    {
      says:
        now > 0
          ? `Give the inner corner at ${place} a radius of ${fillet.text} instead of ${before.length(now, ground.units)}`
          : `Give the sharp inner corner at ${place} a radius of ${fillet.text}`,
      edits: [writes(['profile', index, 'fillet'], fillet.text)],
    },
  ]
}

/** A jump spread over a taper that is cut out of the thick side; a short taper made longer. */
export function sectionJump({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const { job } = ground.account
  const taperM = figures?.taperM
  if (taperM === undefined || where?.xM === undefined) return []
  const index = jointAt(ground, where.xM)
  const taper = lengthSetting(1.02 * taperM, ground.units, 'up')
  const made =
    index === undefined ? undefined : (tapered(job.profile, index, taper, 'thick') ?? tapered(job.profile, index, taper, 'thin'))
  if (made === undefined || !isSound(made.profile)) return []
  const jumps = (profile: Profile): number =>
    shapeFeatures(profile).sectionJumps.filter(({ ratio }) => ratio >= MILD_RATIO).length
  if (jumps(made.profile) >= jumps(job.profile)) return []
  return [
    {
      says: `Let it pass over in a taper ${made.taper.text} long at ${before.length(where.xM, ground.units)}, instead of a step`,
      edits: made.edits(ground),
    },
  ]
}

const MILD_RATIO = 1.6
/** Radius at the foot of a taper [m]: common practice, no source. */
const FOOT_M = 0.003
/** What must be left of the thick side [m]. */
const LEFT_M = 0.002

interface Tapered {
  readonly profile: Profile
  readonly taper: Setting
  readonly edits: (ground: RemedyGround) => JobEdit[]
}

/** The joint before section `index` as a taper, in the length of the thicker or the thinner of its two sides. */
function tapered({ sections }: Profile, index: number, taper: Setting, within: 'thick' | 'thin'): Tapered | undefined {
  const first = sections[index - 1]
  const second = sections[index]
  if (first === undefined || second === undefined || first.shape !== second.shape) return undefined
  const cutsSecond = second.from.acrossM > first.to.acrossM === (within === 'thick')
  const [cut, at] = cutsSecond ? [second, index] : [first, index - 1]
  const even = cut.from.acrossM === cut.to.acrossM && cut.from.widthM === cut.to.widthM
  const leftM = cut.lengthM - taper.si
  if (!even || leftM < LEFT_M) return undefined
  const thinFirst = second.from.acrossM > first.to.acrossM
  const { filletM: fillet, ...plain } = cut
  // The foot of the taper, where it meets the thin side, has the radius.
  const between: Section = {
    shape: cut.shape,
    from: first.to,
    to: second.from,
    lengthM: taper.si,
    ...(thinFirst ? { filletM: FOOT_M } : {}),
  }
  const after = thinFirst ? {} : { filletM: FOOT_M }
  const left: Section = cutsSecond
    ? { ...plain, lengthM: leftM, ...after }
    : { ...plain, lengthM: leftM, ...(fillet === undefined ? {} : { filletM: fillet }) }
  const { filletM: _, ...secondPlain } = second
  const pieces = cutsSecond ? [between, left] : [left, between, { ...secondPlain, ...after }]
  const upTo = cutsSecond ? at : index - 1
  return {
    profile: { sections: [...sections.slice(0, upTo), ...pieces, ...sections.slice(index + 1)] },
    taper,
    edits: ({ units }) => {
      const size = (of: Section['from']): string => sectionSizeText(of, units)
      const foot = lengthSetting(FOOT_M, units, 'up').text
      const taken = { shape: cut.shape, from: size(between.from), to: size(between.to), length: taper.text }
      return [
        writes(['profile', at, 'length'], lengthText(leftM, units)),
        writes(['profile', index, 'fillet'], thinFirst ? undefined : foot),
        { path: ['profile', index], insert: thinFirst ? { ...taken, fillet: foot } : taken },
      ]
    },
  }
}

export function thinBesideThick({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  return figures?.leastAcrossM === undefined || where?.xM === undefined ? [] : madeThicker(ground, where.xM, figures.leastAcrossM)
}

/** The end of the section at a height left thicker, to be ground down after the temper; or a hole drilled smaller. */
export function madeThicker(ground: RemedyGround, xM: number, leastM: number): Remedy[] {
  const { job } = ground.account
  const starts = sectionStartsM(job)
  const joint = jointAt(ground, xM)
  const after = starts.findLastIndex((startM) => startM <= xM + 1e-6)
  // At a joint the thinner of its two sides is meant.
  const { sections } = job.profile
  const thinBefore = joint !== undefined && (sections[joint - 1]?.to.acrossM ?? 0) < (sections[joint]?.from.acrossM ?? 0)
  const index = thinBefore ? joint - 1 : after
  const section = job.profile.sections[index]
  if (section === undefined) return []
  if (section.bore !== undefined) return drilledSmaller(ground, index, section, leastM)
  const nearFrom = xM - (starts[index] ?? 0) < 0.5 * section.lengthM
  if (sameSize(section.from, section.to)) return evenlyThicker(ground, index, section, leastM)
  const end = nearFrom ? 'from' : 'to'
  const size = section[end]
  const thick = lengthSetting(1.02 * leastM, ground.units, 'up')
  if (size.acrossM >= thick.si || (size.widthM ?? Number.POSITIVE_INFINITY) < thick.si) return []
  // A taper that runs the other way is another piece of metal, not a mend.
  if (section[nearFrom ? 'to' : 'from'].acrossM < thick.si) return []
  const changed = withSection(job.profile, index, { [end]: { ...size, acrossM: thick.si } })
  if (!isSound(changed) || (section.tip !== undefined && nearFrom)) return []
  const typed = sectionSizeText({ ...size, acrossM: thick.si }, ground.units)
  return [
    {
      says: `Leave it ${thick.text} thick instead of ${before.length(size.acrossM, ground.units)}, and grind it down after the temper`,
      edits: [writes(['profile', index, end], typed)],
    },
  ]
}

/** Even bar left thicker all along. */
function evenlyThicker(ground: RemedyGround, index: number, section: Section, leastM: number): Remedy[] {
  const { units, account } = ground
  const { from } = section
  const thick = lengthSetting(1.02 * leastM, units, 'up')
  if (from.acrossM >= thick.si || (from.widthM ?? Number.POSITIVE_INFINITY) < thick.si) return []
  const size = { ...from, acrossM: thick.si }
  if (!isSound(withSection(account.job.profile, index, { from: size, to: size }))) return []
  const typed = sectionSizeText(size, units)
  return [
    {
      says: `Leave it ${thick.text} thick instead of ${before.length(from.acrossM, units)}, and grind it down after the temper`,
      edits: [
        writes(['profile', index, 'across'], typed),
        { path: ['profile', index, 'from'] },
        { path: ['profile', index, 'to'] },
      ],
    },
  ]
}

/** A wall works as a round of one and a half times its thickness. */
const ROUND_OF_WALL = 1.5

function drilledSmaller({ units, account }: RemedyGround, index: number, section: Section, leastM: number): Remedy[] {
  const { bore } = section
  if (bore === undefined) return []
  const across = lengthSetting(
    Math.min(section.from.acrossM, section.to.acrossM) - (2 * 1.02 * leastM) / ROUND_OF_WALL,
    units,
    'down',
  )
  if (!(across.si >= 0.003) || across.si >= bore.acrossM) return []
  if (!isSound(withSection(account.job.profile, index, { bore: { ...bore, acrossM: across.si } }))) return []
  return [
    {
      says: `Drill the hole ${across.text} instead of ${before.length(bore.acrossM, units)}, and open it after the temper`,
      edits: [writes(['profile', index, 'bore', 'across'], across.text)],
    },
  ]
}

/** The section whose joint with the one before it lies at a height. */
function jointAt({ account: { job } }: RemedyGround, xM: number | undefined): number | undefined {
  if (xM === undefined) return undefined
  const index = sectionStartsM(job).findIndex((startM, i) => i > 0 && Math.abs(startM - xM) < 1e-5)
  return index < 0 ? undefined : index
}

export function withSection({ sections }: Profile, index: number, change: Partial<Section>): Profile {
  return { sections: sections.map((section, i) => (i === index ? { ...section, ...change } : section)) }
}

export function isSound(profile: Profile): boolean {
  return profileProblems(profile).length === 0
}

function sameSize(a: Section['from'], b: Section['from']): boolean {
  return a.acrossM === b.acrossM && a.widthM === b.widthM
}
