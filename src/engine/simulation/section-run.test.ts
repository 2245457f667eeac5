import { describe, expect, test } from 'vitest'
import { radiusAt } from '#engine/geometry/outline.ts'
import { readAt } from './body.ts'
import { SAMPLE_TEMPER, sampleJob } from './sample-job.ts'
import { sectionThrough } from './section-run.ts'
import { treat } from './treatment.ts'

const bar = (shape: 'round' | 'square', acrossM: number, lengthM: number) => ({
  sections: [{ shape, from: { acrossM }, to: { acrossM }, lengthM }],
})

describe('[HC9] a cross-section through what its piece met', () => {
  const job = sampleJob({ profile: bar('round', 0.03, 0.16), zones: [], probes: [] })
  const treatment = treat(job, { grade: 'draft', traceAtM: 0.08 })
  const { body, state, hardening } = treatment

  test('half way up a long round it cools as the body of revolution does', () => {
    const [skinS, centreS] = readAt(body, state.coolingS, [
      { xM: 0.08, rM: radiusAt(body.outline, 0.08) },
      { xM: 0.08, rM: 0 },
    ])
    const found = sectionThrough('round', { acrossM: 0.03 }, 0.08, body, hardening)!
    expect(Math.abs(found.faceS / skinS! - 1)).toBeLessThan(0.06)
    expect(Math.abs(found.centreS / centreS! - 1)).toBeLessThan(0.03)
  })

  test('corners cool first, then faces, then the middle; the octagon lies between the round and the square', () => {
    const through = (shape: 'round' | 'octagon' | 'hexagon' | 'square') =>
      sectionThrough(shape, { acrossM: 0.03 }, 0.08, body, hardening)!
    const all = [through('octagon'), through('hexagon'), through('square')]
    for (const { cornerS, faceS, centreS } of all) {
      expect(cornerS).toBeLessThan(faceS)
      expect(faceS).toBeLessThan(centreS)
    }
    const corners = all.map(({ cornerS }) => cornerS)
    expect(corners).toEqual([...corners].sort((a, b) => b - a))
    expect(corners[0]!).toBeLessThan(through('round').faceS)
    const middles = [through('round'), ...all].map(({ centreS }) => centreS)
    expect(middles).toEqual([...middles].sort((a, b) => a - b))
  })

  test('a flat as wide as thick is a square, and a very wide one a plate', () => {
    const flat = (widthM: number) => sectionThrough('flat', { acrossM: 0.012, widthM }, 0.08, body, hardening)!
    const square = sectionThrough('square', { acrossM: 0.012 }, 0.08, body, hardening)!
    expect(Math.abs(flat(0.012).cornerS / square.cornerS - 1)).toBeLessThan(0.005)
    expect(Math.abs(flat(0.012).centreS / square.centreS - 1)).toBeLessThan(0.005)
    expect(Math.abs(flat(0.12).centreS / flat(0.24).centreS - 1)).toBeLessThan(0.01)
  })

  test('above the waterline it cools in air; never quenched, it has no cooling time', () => {
    const quench = job.process.find((step) => step.do === 'quench')
    if (quench?.do !== 'quench') throw new Error('the sample is quenched')
    const process = job.process.map((step) => (step.do === 'quench' ? { ...quench, depthM: 0.04 } : step))
    const dipped = treat({ ...job, process }, { grade: 'draft', traceAtM: 0.02, onlyHardening: true })
    const at = (xM: number) => sectionThrough('square', { acrossM: 0.03 }, xM, dipped.body, dipped.hardening)!
    expect(at(0.12).cornerS).toBeGreaterThan(10 * at(0.02).cornerS)
    const untouched = treat({ ...job, process: [SAMPLE_TEMPER] }, { grade: 'draft', traceAtM: 0.02 })
    expect(sectionThrough('square', { acrossM: 0.03 }, 0.08, untouched.body, untouched.hardening)).toBeUndefined()
  })
})
