import { hardnessRangeText, parseHardnessRange } from '#units/hardness.ts'
import { lengthText, type System } from '#units/length.ts'
import type { JobText, ZoneText } from './job-text.ts'
import { metres } from './profile-reading.ts'
import { clean, fractionM } from './snapping.ts'
import { jointsOf } from './sound-shape.ts'

/** What a new zone aims for until the smith says otherwise: hard, but not yet brittle. */
const FIRST_AIM = '50..55 HRC'

/** A zone on a section (on the first without one), where no other zone lies yet if there is such metal. Its place in the list comes with it. */
export function addedZone(job: JobText, section: number | undefined, system: System): { job: JobText; index: number } {
  const joints = jointsOf(job)
  const at = Math.max(0, Math.min(section ?? 0, joints.length - 2))
  const [fromM, toM] = freeStretch(job, joints[at] ?? 0, joints[at + 1] ?? 0, fractionM(system))
  const zone: ZoneText = {
    name: newName(job, at, joints.length - 2),
    from: lengthText(fromM, system),
    to: lengthText(toM, system),
    aim: FIRST_AIM,
  }
  return withAdded(job, zone)
}

export function withAdded(job: JobText, zone: ZoneText): { job: JobText; index: number } {
  const zones = [...(job.zones ?? []), zone]
  return { job: { ...job, zones }, index: zones.length - 1 }
}

export function withoutZone(job: JobText, index: number): JobText {
  if (job.zones?.[index] === undefined) return job
  const { zones, ...rest } = job
  const left = zones.toSpliced(index, 1)
  return left.length === 0 ? rest : { ...rest, zones: left }
}

/** An aim a point harder or softer. */
export function steppedAim(typed: string, by: 1 | -1): string | undefined {
  const aim = parseHardnessRange(typed)
  if (!aim.ok) return undefined
  const { low, high, scale, single } = aim.value
  const step = scale === 'HRC' || scale === 'HRB' ? by : 10 * by
  if (single) return `${(low ?? 0) + step} ${scale}`
  const next = { ...(low === undefined ? {} : { low: low + step }), ...(high === undefined ? {} : { high: high + step }) }
  const text = hardnessRangeText(next, scale)
  return parseHardnessRange(text).ok ? text : undefined
}

/** The longest length between two heights that no zone lies on; all of it where there is none [m]. */
function freeStretch(job: JobText, fromM: number, toM: number, leastM: number): readonly [number, number] {
  const taken = (job.zones ?? [])
    .map(({ from, to }) => [metres(from) ?? 0, metres(to) ?? 0] as const)
    .filter(([a, b]) => b > fromM && a < toM)
    .toSorted(([a], [b]) => a - b)
  let best: readonly [number, number] = [fromM, fromM]
  let lowM = fromM
  for (const [a, b] of [...taken, [toM, toM] as const]) {
    if (a - lowM > best[1] - best[0]) best = [lowM, clean(a)]
    lowM = Math.max(lowM, b)
  }
  return best[1] - best[0] >= leastM ? best : [fromM, toM]
}

function newName(job: JobText, section: number, last: number): string {
  const names = new Set((job.zones ?? []).map(({ name }) => name))
  const usual = section === 0 ? 'working end' : section === last ? 'other end' : 'body'
  if (!names.has(usual)) return usual
  let k = 2
  while (names.has(`${usual} ${k}`)) k += 1
  return `${usual} ${k}`
}
