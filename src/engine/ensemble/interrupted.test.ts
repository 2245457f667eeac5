import { expect, test } from 'vitest'
import type { ProcessStep } from '#engine/simulation/process.ts'
import { SAMPLE_HEAT, SAMPLE_QUENCH, SAMPLE_WALK, sampleJob } from '#engine/simulation/sample-job.ts'
import { forecastJob } from './forecast.ts'

type Quench = Extract<ProcessStep, { do: 'quench' }>

/** Hardness out of the bath in the middle of the sample bar [HRC], and what it is made of. */
function middleAfter(...quenches: Quench[]) {
  const job = sampleJob({ process: [SAMPLE_HEAT, SAMPLE_WALK, ...quenches] })
  const { outlook } = forecastJob(job, { grade: 'draft', members: 0, seed: 1 })
  return outlook.probes[0]!
}

const water = (forS: number): Quench => ({ do: 'quench', in: 'water butt', forS, agitation: 'moderate' })
const air = (forS: number): Quench => ({ do: 'quench', in: 'still air', forS, agitation: 'still' })

test('water for a few seconds and then oil: between the two, and what the first bath did is kept', () => {
  const oil = middleAfter(SAMPLE_QUENCH).quenchedHrc.value
  const both = middleAfter(water(2), SAMPLE_QUENCH).quenchedHrc.value
  const wet = middleAfter(water(60)).quenchedHrc.value
  expect(both).toBeGreaterThanOrEqual(oil - 0.3)
  expect(both).toBeLessThanOrEqual(wet + 0.3)
  // The quench is over before the second bath: it may be anything.
  expect(middleAfter(water(60), air(600)).quenchedHrc.value).toBeCloseTo(wet, 1)
})

test('out of the oil too soon: the middle turns to softer things in the air', () => {
  const full = middleAfter(SAMPLE_QUENCH)
  const short = middleAfter({ ...SAMPLE_QUENCH, forS: 4 }, air(1200))
  expect(short.quenchedHrc.value).toBeLessThan(full.quenchedHrc.value - 3)
})
