import type { Job } from '#engine/simulation/job.ts'
import { treat } from '#engine/simulation/treatment.ts'
import type { Fire } from '#engine/surface-heat/gear.ts'
import type { SteelPractice } from './steel-practice.ts'

const LONGEST_S = 2 * 3600

/** Hold in the fire, from when the outside is at heat: until the middle of this piece is up, and then the soak that the steel wants [s]. */
export function soakFor(job: Job, practice: SteelPractice, fire: Fire): number {
  const { records } = treat(
    { ...job, process: [{ do: 'heat', in: fire.name, toK: practice.austeniteK, holdS: LONGEST_S, even: true }] },
    { grade: 'draft', traceAtM: 0 },
  )
  const heat = records.find((record) => record.kind === 'heat')
  const upS = heat?.kind === 'heat' ? (heat.middleUpS ?? LONGEST_S) : 0
  return Math.ceil((upS + practice.soakS) / 60) * 60
}
