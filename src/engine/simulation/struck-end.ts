import type { Job } from './job.ts'
import type { Zone } from './process.ts'

/** Hardest that a struck end may be [HRC]: softer than the hammer that strikes it. Band from memory of ASME B107.410; practice varies 25..45. */
export const STRUCK_END_MOST_HRC = 45
/** Length that the hammer's blow reaches [m]: common practice, no source. */
const STRUCK_LENGTH_M = 0.02

/** The job with its struck end as a zone, whether or not anybody asked: a hard struck end throws splinters. */
export function withStruckEnd(job: Job): Job {
  if (!job.struck) return job
  const lengthM = job.profile.sections.reduce((sum, section) => sum + section.lengthM, 0)
  const fromM = lengthM - Math.min(STRUCK_LENGTH_M, 0.2 * lengthM)
  const covered = job.zones.some((zone) => zone.toM > 0.5 * (fromM + lengthM))
  if (covered) return job
  const zone: Zone = { name: 'struck end', fromM, toM: lengthM, aim: { highHrc: STRUCK_END_MOST_HRC }, assumed: true }
  return { ...job, zones: [...job.zones, zone] }
}
