import { outlineOf } from '#engine/geometry/outline.ts'
import type { ProfileProblem } from '#engine/geometry/profile-problems.ts'
import type { System } from '#units/length.ts'
import type { JobText } from './job-text.ts'
import { type Measure, metresAt, withMetres } from './measure.ts'
import { metres, profileOf, shapeFaults } from './profile-reading.ts'
import { clean, fractionM, snappedM } from './snapping.ts'

/** What a drag or a step came to: the document, and what kept it from going all the way. */
export interface Reached {
  readonly job: JobText
  readonly blocked?: string
}

/**
 * The document with a measure as near to `wantedM` as the metal allows, on the shop's fractions. A sound shape stays sound; one that is at
 * fault already is not made worse by refusing to be mended.
 */
export function reached(before: JobText, measure: Measure, wantedM: number, system: System): Reached {
  const nowM = metresAt(before, measure)
  if (nowM === undefined) return { job: before }
  if ('zone' in measure) return reachedZone(before, measure, wantedM, system)
  const faultsBefore = faults(before).length
  const at = (lengthM: number): JobText => withMetres(before, measure, lengthM, system)
  const why = (job: JobText): string | undefined => {
    const found = job === before ? [] : [...faults(job).map(({ says }) => says), ...lost(before, job), ...reduced(job, measure)]
    return found.length > faultsBefore ? found[0] : undefined
  }
  const goal = Math.max(0, snappedM(wantedM, system))
  const first = at(goal)
  const blocked = why(first)
  if (blocked === undefined) return { job: first }
  // Between where it stands and the goal lies the last fraction that will do.
  const step = fractionM(system)
  const way = goal > nowM ? 1 : -1
  const grid = (k: number): number =>
    clean((way > 0 ? Math.floor(nowM / step + 1e-6) + k : Math.ceil(nowM / step - 1e-6) - k) * step)
  let good = 0
  let bad = Math.round(Math.abs(goal - grid(0)) / step)
  while (bad - good > 1) {
    const middle = (good + bad) >> 1
    if (why(at(grid(middle))) === undefined) good = middle
    else bad = middle
  }
  return { job: good === 0 ? before : at(grid(good)), blocked }
}

function faults(job: JobText): readonly ProfileProblem[] {
  return shapeFaults(job.profile ?? [])
}

/** A zone that would lose its metal stops the hand. */
function lost(before: JobText, after: JobText): readonly string[] {
  const lives = (job: JobText): number =>
    (job.zones ?? []).filter(({ from, to }) => (metres(from) ?? 0) < (metres(to) ?? 0)).length
  return lives(after) < lives(before) ? ['A zone would have no metal left; move its ends or take it away first.'] : []
}

/** A fillet is dragged no further than there is room for; typed larger, it is drawn as large as it can be. */
function reduced(job: JobText, measure: Measure): readonly string[] {
  const profile = job.profile === undefined ? undefined : profileOf(job.profile)
  if (measure.of !== 'fillet' || profile === undefined || faults(job).length > 0) return []
  return outlineOf(profile).reducedFillets.some(({ joint }) => joint === measure.section - 1)
    ? ['There is no room for a larger fillet.']
    : []
}

type ZoneMeasure = Extract<Measure, { readonly zone: number }>

/** An end of a zone: on the piece, off its other end, out of its neighbours, and drawn to joints and borders that are near. */
function reachedZone(before: JobText, measure: ZoneMeasure, wantedM: number, system: System): Reached {
  const isFrom = measure.of === 'zone-from'
  const zone = before.zones?.[measure.zone]
  const otherM = metres(isFrom ? zone?.to : zone?.from)
  const nowM = metresAt(before, measure)
  if (zone === undefined || otherM === undefined || nowM === undefined) return { job: before }
  const step = fractionM(system)
  const joints = jointsOf(before)
  const totalM = joints.at(-1) ?? 0
  const borders = neighbours(before, measure, otherM)
  const lowM = isFrom ? Math.max(0, ...borders.filter((each) => each <= otherM)) : otherM + step
  const highM = isFrom ? otherM - step : Math.min(totalM, ...borders.filter((each) => each >= otherM))
  const marks = [...joints, ...borders].filter((each) => Math.abs(each - wantedM) < step && each >= lowM && each <= highM)
  const near = marks.toSorted((a, b) => Math.abs(a - wantedM) - Math.abs(b - wantedM))[0]
  const goal = near ?? snappedM(wantedM, system)
  if (lowM > highM) return { job: before }
  const held = Math.min(highM, Math.max(lowM, goal))
  const job = withMetres(before, measure, clean(held), system)
  if (Math.abs(held - goal) < 1e-9) return { job }
  const ownEnd = Math.abs(held - otherM) < step + 1e-9
  const at = held === 0 || held === totalM ? 'The piece ends here.' : 'Another zone begins here.'
  return { job, blocked: ownEnd ? 'A zone has some length; take it away if it is not wanted.' : at }
}

/** Heights of the joints and of both ends from the working end [m]. */
export function jointsOf(job: JobText): readonly number[] {
  let atM = 0
  return [0, ...(job.profile ?? []).map(({ length }) => (atM = clean(atM + (metres(length) ?? 0))))]
}

/** Ends of other zones that this one does not lie over already. */
function neighbours(job: JobText, { zone, of }: ZoneMeasure, otherM: number): readonly number[] {
  const own = job.zones?.[zone]
  const [fromM, toM] = [metres(own?.from) ?? 0, metres(own?.to) ?? 0]
  return (job.zones ?? []).flatMap((each, i) => {
    const [a, b] = [metres(each.from), metres(each.to)]
    if (i === zone || a === undefined || b === undefined || (a < toM - 1e-9 && b > fromM + 1e-9)) return []
    return of === 'zone-from' ? (b <= otherM ? [b] : []) : a >= otherM ? [a] : []
  })
}
