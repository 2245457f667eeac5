import { describe, expect, test } from 'vitest'
import { SAMPLE_HEAT, SAMPLE_QUENCH, SAMPLE_TEMPER, SAMPLE_WALK, sampleJob } from '#engine/simulation/sample-job.ts'
import { treat } from '#engine/simulation/treatment.ts'
import { filmResponse } from './forecast.ts'
import { historyAt } from './history.ts'
import { spreadFromLadder, withLadder } from './ladder.ts'
import { outlookOf } from './members.ts'
import { bandOfNodes, nodeHardness } from './node-outlook.ts'
import { type SpotPlan, spotPlan } from './spots.ts'

/** Half of the bar hardens: there is an edge for the ladder to follow. */
const job = sampleJob({
  process: [{ ...SAMPLE_HEAT, part: { fromM: 0, toM: 0.045 } }, SAMPLE_WALK, SAMPLE_QUENCH, SAMPLE_TEMPER],
})
const treatment = treat(job, { grade: 'draft', traceAtM: 0, filmFactors: [1.3] })
const { body } = treatment
const hardness = nodeHardness(job, treatment)
const plain = spotPlan(job, body)
const outlook = (plan: SpotPlan, members: number) =>
  outlookOf(job, plan, historyAt(treatment, plan.spots), filmResponse(job, treatment, plan), { members, seed: 3 })
const full = withLadder(plain, body, hardness.temperedHrc, false)
const bare = withLadder(plain, body, hardness.temperedHrc, true)

describe('a ladder on a plan', () => {
  test('changes nothing of what the plan is summed up to', () => {
    const { widthsHrc, ...with24 } = outlook(full, 24)
    expect(with24).toEqual(outlook(plain, 24))
    expect(widthsHrc?.size).toBe(full.ladder!.rungs.length * 4)
    expect(bare.spots).toBe(plain.spots)
  })

  test('has the band along the piece on its ends', () => {
    const { widthsHrc, along } = outlook(full, 24)
    plain.along.forEach(({ skin, centre }, i) => {
      const { skin: atSkin, centre: atCentre } = along[i]!
      expect(widthsHrc!.get(skin)).toBeCloseTo(atSkin.temperedHrc.high - atSkin.temperedHrc.low, 12)
      expect(widthsHrc!.get(centre)).toBeCloseTo(atCentre.temperedHrc.high - atCentre.temperedHrc.low, 12)
    })
  })

  test('has more rungs at the edge of what hardened', () => {
    const extra = full.ladder!.rungs.filter(({ xM }) => !plain.along.some((each) => each.xM === xM))
    expect(extra.length).toBeGreaterThanOrEqual(3)
    for (const { xM } of extra) {
      expect(xM).toBeGreaterThan(0.03)
      expect(xM).toBeLessThan(0.06)
    }
    for (let i = 1; i < full.ladder!.rungs.length; i++)
      expect(full.ladder!.rungs[i]!.xM).toBeGreaterThan(full.ladder!.rungs[i - 1]!.xM)
  })

  test('gives a node on a place its width, and any node one between those about it', () => {
    const linear = spreadFromLadder(full.ladder!, (spot) => 1000 * full.spots[spot]!.xM + 100 * full.spots[spot]!.rM, body)
    const [lowest, highest] = [full.ladder!.rungs[0]!.xM, full.ladder!.rungs[full.ladder!.rungs.length - 1]!.xM]
    linear.forEach((width, i) => {
      const x = Math.min(highest, Math.max(lowest, body.mesh.xM[i]!))
      expect(width).toBeCloseTo(1000 * x + 100 * body.mesh.rM[i]!, 6)
    })
  })

  test('one member does not pass for certainty, and sixty go with four hundred', () => {
    const one = bandOfNodes(outlook(full, 1), full, body)
    const some = bandOfNodes(outlook(full, 60), full, body)
    const many = bandOfNodes(outlook(full, 400), full, body)
    expect(Math.min(...one)).toBeGreaterThan(2)
    const mean = (off: Float64Array): number => off.reduce((sum, width, i) => sum + Math.abs(width - many[i]!), 0) / many.length
    expect(mean(some)).toBeLessThan(0.2 * (many.reduce((a, b) => a + b) / many.length))
    expect(mean(one)).toBeLessThan(0.4 * (many.reduce((a, b) => a + b) / many.length))
  })
})

test('what a place is worked out to at a node is what the node has', () => {
  const picked = [0, 40, 111, 222, 333].filter((i) => i < body.mesh.xM.length)
  const spots = picked.map((i) => ({ xM: body.mesh.xM[i]!, rM: body.mesh.rM[i]! }))
  const at = historyAt(treatment, spots)
  picked.forEach((node, i) => {
    expect(at.peakK[i]!).toBeCloseTo(treatment.state.peakK[node]!, 6)
  })
  const found = outlook({ spots, zones: [], probes: picked.map((_, i) => i), along: [], edges: [] }, 2).probes
  // Steel with nearly the same carbon in solution is worked out once: which of them comes first tells in the hundredths.
  picked.forEach((node, i) => {
    expect(Math.abs(found[i]!.temperedHrc.value - hardness.temperedHrc[node]!)).toBeLessThan(0.05)
    expect(Math.abs(found[i]!.quenchedHrc.value - hardness.quenchedHrc[node]!)).toBeLessThan(0.05)
    expect(found[i]!.martensiteFraction).toBeCloseTo(hardness.martensiteFraction[node]!, 2)
  })
})
