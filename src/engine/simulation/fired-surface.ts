import type { SkinLeg } from '#engine/skin/skin-steps.ts'
import { atmosphereOf } from '#engine/surface-heat/atmosphere.ts'
import type { Atmosphere } from '#engine/surface-heat/gear.ts'
import { ROOM_K } from './node-state.ts'
import type { ProcessStep } from './process.ts'
import type { StepRecord } from './records.ts'
import type { Trace } from './trace.ts'

/** Where the skin is looked at: how hot it came in the last hardening heat [K], where the trace's own place came to another heat. */
export interface SkinPlace {
  readonly peakK: number
}

/**
 * What the skin of one place has been through, fire by fire, out of the traced place's temperatures: in a hardening heat they are moved in
 * proportion to how hot the place came, in the others the whole piece is alike. Scale falls in a liquid; what was done before the job's first step
 * (forging, the bar's own skin) is not known.
 */
export function skinLegs(
  records: readonly StepRecord[],
  trace: Trace,
  process: readonly ProcessStep[],
  { peakK }: SkinPlace,
): SkinLeg[] {
  const lastHeat = records.findLastIndex(({ kind }) => kind === 'heat')
  const tracePeakK = lastHeat < 0 ? Number.NaN : highest(within(trace, records, lastHeat, 1))
  const share = peakK > ROOM_K + 1 && tracePeakK > ROOM_K + 1 ? (peakK - ROOM_K) / (tracePeakK - ROOM_K) : 1
  const legs: SkinLeg[] = []
  records.forEach((record, index) => {
    const asked = process[record.step]
    const times = asked !== undefined && 'times' in asked ? asked.times : 1
    const atmosphere = around(record)
    if (atmosphere === undefined) {
      // A liquid: no air gets at it, and the scale bursts off.
      const last = legs[legs.length - 1]
      if (record.kind === 'quench' && last !== undefined) legs[legs.length - 1] = { ...last, scaleFalls: true }
      return
    }
    const own = within(trace, records, index, times)
    const hardening = record.kind === 'heat' || record.kind === 'carry' || record.kind === 'quench'
    const points = hardening ? own.map(([s, k]) => [s, ROOM_K + share * (k - ROOM_K)] as const) : own
    if (points.length > 1) legs.push({ points, atmosphere, times, scaleFalls: false })
  })
  return legs
}

function around(record: StepRecord): Atmosphere | undefined {
  switch (record.kind) {
    case 'heat':
    case 'normalise':
    case 'anneal':
    case 'stress-relieve':
      return atmosphereOf(record.fire)
    case 'temper':
      return record.fire === undefined ? 'oxidising' : atmosphereOf(record.fire)
    case 'carry':
      return 'oxidising'
    case 'quench':
      return record.bath.kind === 'still air' || record.bath.kind === 'moving air' ? 'oxidising' : undefined
    case 'warm-bath':
    case 'run-colours':
      return undefined
  }
}

/** The traced skin through one round of a step, and the air after it up to the next step. */
function within({ timeS, skinK }: Trace, records: readonly StepRecord[], index: number, times: number): [number, number][] {
  const { startS, endS } = records[index]!
  const untilS = times > 1 ? startS + (endS - startS) / times : (records[index + 1]?.startS ?? Number.POSITIVE_INFINITY)
  const points: [number, number][] = []
  for (let i = 0; i < timeS.length; i++)
    if (timeS[i]! >= startS - 1e-6 && timeS[i]! <= untilS + 1e-6) points.push([timeS[i]!, skinK[i]!])
  return points
}

function highest(points: readonly (readonly [number, number])[]): number {
  return points.reduce((most, [, k]) => Math.max(most, k), 0)
}
