import { describe, expect, test } from 'vitest'
import type { Section } from '#engine/geometry/profile.ts'
import { sampleJob } from '#engine/simulation/sample-job.ts'
import { treat } from '#engine/simulation/treatment.ts'
import { crossSections, shifted } from './cross-sections.ts'
import { forecastJob } from './forecast.ts'
import { historyAt } from './history.ts'
import { sectionStations, sizeAt } from './section-stations.ts'

const square = (acrossM: number, lengthM: number): Section => ({ shape: 'square', from: { acrossM }, to: { acrossM }, lengthM })
const zone = (name: string, fromM: number, toM: number) => ({
  name,
  fromM,
  toM,
  aim: { lowHrc: 50, highHrc: 56 },
  assumed: false,
})
const ALL = { zones: [zone('all', 0, 0.12)], probes: [] }
const treated = (job: Parameters<typeof sampleJob>[0]) => {
  const made = sampleJob(job)
  return { job: made, treatment: treat(made, { grade: 'sketch', traceAtM: 0.01 }) }
}

describe('[GE6] true cross-sections', () => {
  test('one solve for a straight length, more along a taper, none for rounds', () => {
    const taper: Section = {
      shape: 'flat',
      from: { acrossM: 0.005, widthM: 0.012 },
      to: { acrossM: 0.019, widthM: 0.025 },
      lengthM: 0.06,
    }
    const round: Section = { shape: 'round', from: { acrossM: 0.025 }, to: { acrossM: 0.025 }, lengthM: 0.06 }
    const straight = treated({ profile: { sections: [square(0.02, 0.12)] }, ...ALL })
    expect(sectionStations(straight.job, straight.treatment).at).toHaveLength(1)
    const tapered = treated({
      profile: { sections: [taper, round] },
      zones: [zone('edge', 0, 0.06), zone('rest', 0.06, 0.12)],
      probes: [],
    })
    const { at } = sectionStations(tapered.job, tapered.treatment)
    expect(at.map(({ section }) => section)).toEqual([0, 0, 0])
    expect(at[1]!.size.acrossM).toBeCloseTo(0.012, 3)
    expect(at[1]!.size.widthM).toBeCloseTo(0.0185, 3)
    expect(sizeAt(taper, 0.06)).toEqual(taper.to)
    expect(sizeAt(square(0.02, 0.1), 0.03)).toEqual({ acrossM: 0.02 })
  })

  test('a block shorter than twice its thickness and what stands out of the bath are left as their rounds', () => {
    const block = treated({ profile: { sections: [square(0.08, 0.12)] }, ...ALL })
    expect(sectionStations(block.job, block.treatment)).toEqual({ at: [], reaches: [] })
    const job = sampleJob({ profile: { sections: [square(0.02, 0.12)] }, ...ALL })
    const process = job.process.map((step) => (step.do === 'quench' ? { ...step, depthM: 0.05 } : step))
    const dipped = treat({ ...job, process }, { grade: 'sketch', traceAtM: 0.01 })
    const { reaches } = sectionStations({ ...job, process }, dipped)
    expect(reaches).toHaveLength(1)
    expect(reaches[0]!.toM).toBeCloseTo(0.04, 9)
    const found = crossSections({ ...job, process }, dipped)
    expect(found.solved).toHaveLength(1)
    expect(found.edgesAt(0.06)).toEqual([])
  })

  test('a shallow steel: the corner comes harder than the round says, and the zone is judged by it', () => {
    const profile = { sections: [square(0.04, 0.12)] }
    const { solved, edgesAt } = (({ job, treatment }) => crossSections(job, treatment))(treated({ profile, ...ALL }))
    const { corner, face, centre } = solved[0]!.places
    expect(corner.roundLnCooling).toBeGreaterThan(0.3)
    expect(corner.quenchedHrc).toBeGreaterThan(face.quenchedHrc)
    expect(Math.abs(centre.roundLnCooling)).toBeLessThan(0.15)
    expect(solved[0]!.judged).toBe(true)
    expect(edgesAt(0.06)).toHaveLength(2)
    const options = { grade: 'draft', members: 20, seed: 4 } as const
    const { outlook } = forecastJob(sampleJob({ profile, ...ALL }), options)
    expect(outlook.sections).toHaveLength(1)
    expect(outlook.zones[0]!.spots).toHaveLength(9 * 3 + 5 * 2)
    const hardest = Math.max(...outlook.zones[0]!.spots.map(({ quenchedHrc }) => quenchedHrc.value))
    expect(Math.abs(hardest - corner.quenchedHrc)).toBeLessThan(1.5)
  })

  test('a sketch solves none', () => {
    const { outlook } = forecastJob(sampleJob({ profile: { sections: [square(0.04, 0.12)] }, ...ALL }), {
      grade: 'sketch',
      members: 0,
      seed: 4,
    })
    expect(outlook.sections).toEqual([])
  })

  test('a longer cooling is longer throughout, at its own spot alone', () => {
    const { treatment } = treated({ profile: { sections: [square(0.02, 0.12)] }, ...ALL })
    const before = historyAt(treatment, [
      { xM: 0.06, rM: 0 },
      { xM: 0.06, rM: 0.01 },
    ])
    const after = shifted(before, [{ spot: 1, lnCooling: Math.LN2 }])
    expect(after.lnCoolingS[0]).toBe(before.lnCoolingS[0])
    expect(after.lnCoolingS[1]! - before.lnCoolingS[1]!).toBeCloseTo(Math.LN2, 12)
    before.dwellS.forEach((s, k) => {
      expect(after.dwellS[k]).toBeCloseTo(k % 2 === 0 ? s : 2 * s, 9)
    })
  })
})
