import type { Job } from '#engine/simulation/job.ts'
import { treat } from '#engine/simulation/treatment.ts'
import type { Fire } from '#engine/surface-heat/gear.ts'

/** How a fire takes a piece, or one end of it, to a heat. */
export interface HeatTrial {
  /** Once the outside shows the heat, until the middle is up [s]; absent where it never is. */
  readonly middleUpS?: number
  readonly reached: boolean
}

/** Tells how long a heat takes; each is worked out once. */
export type HeatTimer = (fire: Fire, toK: number, toM: number | undefined) => HeatTrial

/** What the fires can be read to, best first; an oven that goes hot enough serves as a muffle. */
export function firesFor(job: Job, toK: number): readonly Fire[] {
  const order = ['muffle', 'gas', 'charcoal', 'coal', 'torch']
  const ovens = job.shop.ovens.filter(({ maxK }) => maxK >= toK).map(({ name }): Fire => ({ name, kind: 'muffle' }))
  return [...job.shop.fires, ...ovens].sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind))
}

/** A first guess of the hold that brings the middle up: a minute a millimetre of thickness [s/m], common practice, no source. */
const HOLD_PER_M = 60 / 0.001
const LONGEST_S = 2 * 3600

export function heatTimer(job: Job, thickestM: number): HeatTimer {
  const known = new Map<string, HeatTrial>()
  return (fire, toK, toM) => {
    const key = `${fire.name} ${toK} ${toM ?? 'whole'}`
    let trial = known.get(key)
    if (trial === undefined) {
      const holdS = Math.min(LONGEST_S, Math.max(600, thickestM * HOLD_PER_M))
      trial = heated(job, fire, toK, toM, holdS)
      if (trial.reached && trial.middleUpS === undefined && toM === undefined && holdS < LONGEST_S)
        trial = heated(job, fire, toK, toM, LONGEST_S)
      known.set(key, trial)
    }
    return trial
  }
}

function heated(job: Job, fire: Fire, toK: number, toM: number | undefined, holdS: number): HeatTrial {
  const part = toM === undefined ? {} : { part: { fromM: 0, toM } }
  const { records } = treat(
    { ...job, process: [{ do: 'heat', in: fire.name, toK, holdS, even: true, ...part }] },
    { grade: 'draft', traceAtM: 0 },
  )
  const heat = records.find((record) => record.kind === 'heat')
  if (heat?.kind !== 'heat') throw new Error('planning: a heat left no record')
  return { reached: heat.outsideUpS !== null, ...(heat.middleUpS === null ? {} : { middleUpS: heat.middleUpS }) }
}
