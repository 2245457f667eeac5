import type { Job } from '#engine/simulation/job.ts'
import { treat } from '#engine/simulation/treatment.ts'
import type { Fire } from '#engine/surface-heat/gear.ts'

const LONGEST_S = 2 * 3600

/** Until the middle of this piece is up once its outside is at `toK`, heated whole [s]. */
export function middleUpS(job: Job, fire: Fire, toK: number): number {
  const { records } = treat(
    { ...job, process: [{ do: 'heat', in: fire.name, toK, holdS: LONGEST_S, even: true }] },
    { grade: 'draft', traceAtM: 0 },
  )
  const heat = records.find((record) => record.kind === 'heat')
  return heat?.kind === 'heat' ? (heat.middleUpS ?? LONGEST_S) : 0
}

/** A hold as a smith would say it: whole minutes, never less than asked. */
export function wholeMinutes(seconds: number): number {
  return Math.ceil(seconds / 60) * 60
}
