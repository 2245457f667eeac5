import { expect, test } from 'vitest'
import { readAt, type Spot } from './body.ts'
import { SAMPLE_HEAT, SAMPLE_QUENCH, SAMPLE_WALK, sampleJob } from './sample-job.ts'
import { treat } from './treatment.ts'

const DRAFT = { grade: 'draft', traceAtM: 0.01 } as const
const LENGTH_M = 0.17
const profile = {
  sections: [{ shape: 'round', from: { acrossM: 0.023 }, to: { acrossM: 0.023 }, lengthM: LENGTH_M }],
} as const
const job = (process: Parameters<typeof sampleJob>[0] extends infer Change ? NonNullable<Change> : never) =>
  sampleJob({ profile, zones: [], probes: [], ...process })

const ONE_END = [{ ...SAMPLE_HEAT, holdS: 240, part: { fromM: 0, toM: 0.04 } }, SAMPLE_WALK, SAMPLE_QUENCH] as const
const OTHER_END = [{ ...SAMPLE_HEAT, holdS: 240, part: { fromM: 0.13, toM: LENGTH_M } }, SAMPLE_WALK, SAMPLE_QUENCH] as const
const ENDS: readonly Spot[] = [
  { xM: 0.01, rM: 0.005 },
  { xM: LENGTH_M - 0.01, rM: 0.005 },
]

test('one end hardened after the other: both stay hard, and the first is drawn a little by the warmth of the second heat', () => {
  const first = treat(job({ process: ONE_END }), DRAFT)
  const both = treat(job({ process: [...ONE_END, ...OTHER_END] }), DRAFT)
  const [alone] = readAt(first.body, first.state.peakK, ENDS)
  const [near, far] = readAt(both.body, both.state.peakK, ENDS)
  expect(near).toBeCloseTo(alone!, 6)
  expect(far!).toBeGreaterThan(1090)
  const [nearS, farS] = readAt(both.body, both.state.coolingS, ENDS)
  expect(nearS!).toBeLessThan(20)
  expect(farS!).toBeLessThan(20)
  const [drawn, fresh] = readAt(both.body, both.state.temperPeakK, ENDS)
  expect(drawn!).toBeGreaterThan(fresh!)
})

test('heated again all through, it begins anew', () => {
  const again = treat(job({ process: [...ONE_END, SAMPLE_HEAT, SAMPLE_WALK, SAMPLE_QUENCH] }), DRAFT)
  const once = treat(job({ process: [SAMPLE_HEAT, SAMPLE_WALK, SAMPLE_QUENCH] }), DRAFT)
  const [twiceS] = readAt(again.body, again.state.coolingS, ENDS)
  const [onceS] = readAt(once.body, once.state.coolingS, ENDS)
  expect(Math.abs(twiceS! / onceS! - 1)).toBeLessThan(0.05)
  expect(Math.max(...again.state.temperPeakK)).toBeLessThan(500)
})
