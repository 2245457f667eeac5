import { type Composition, compositionOf, type Steel } from '#engine/materials/steel.ts'
import type { Job } from './job.ts'
import type { ProcessStep } from './process.ts'

const C = 273.15

type StepOf<Kind extends ProcessStep['do']> = Extract<ProcessStep, { do: Kind }>

/** A medium-carbon chrome-moly steel by analysis, so that no grade's sheet has a say. */
export function sampleSteel(change: Partial<Record<keyof Composition, number>> = {}): Steel {
  const composition = compositionOf({ C: 0.41, Mn: 0.83, Si: 0.27, Cr: 0.97, Mo: 0.19, P: 0.013, S: 0.017, ...change })
  return { name: 'sample steel', composition, range: { C: [composition.C - 0.02, composition.C + 0.02] }, grainSize: 7 }
}

export const SAMPLE_HEAT: StepOf<'heat'> = { do: 'heat', in: 'gas forge', toK: 857 + C, holdS: 840, even: true }
export const SAMPLE_WALK: StepOf<'carry'> = { do: 'carry', forS: 3 }
export const SAMPLE_QUENCH: StepOf<'quench'> = { do: 'quench', in: 'oil tank', forS: 210, agitation: 'moderate' }
export const SAMPLE_TEMPER: StepOf<'temper'> = { do: 'temper', in: 'small oven', atK: 211 + C, holdS: 3600, times: 1 }

/** A round bar of 23 x 90 mm in a shop of invented gear, for tests of what stands on it. */
export function sampleJob(change: Partial<Job> = {}): Job {
  return {
    piece: 'sample bar',
    steel: sampleSteel(),
    profile: { sections: [{ shape: 'round', from: { acrossM: 0.023 }, to: { acrossM: 0.023 }, lengthM: 0.09 }] },
    struck: false,
    zones: [{ name: 'end', fromM: 0, toM: 0.03, aim: { lowHrc: 50, highHrc: 56 }, assumed: false }],
    probes: [{ name: 'middle', xM: 0.045, rM: 0 }],
    shop: {
      fires: [{ name: 'gas forge', kind: 'gas' }],
      baths: [
        { name: 'oil tank', kind: 'medium oil', volumeM3: 0.019, depthM: 0.31, temperatureK: 52 + C },
        { name: 'water butt', kind: 'water', volumeM3: 0.061, depthM: 0.4, temperatureK: 19 + C },
      ],
      ovens: [{ name: 'small oven', maxK: 240 + C, readsLowK: 7, swingK: 11 }],
    },
    process: [SAMPLE_HEAT, SAMPLE_WALK, SAMPLE_QUENCH, SAMPLE_TEMPER],
    ...change,
  }
}
