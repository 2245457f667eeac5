import { describe, expect, test } from 'vitest'
import { bathHeatCapacityJPerK } from '#engine/surface-heat/bath.ts'
import { readAt } from './body.ts'
import { ROOM_K } from './node-state.ts'
import type { HeatRecord, StepRecord } from './records.ts'
import { SAMPLE_HEAT, SAMPLE_QUENCH, SAMPLE_TEMPER, SAMPLE_WALK, sampleJob, sampleSteel } from './sample-job.ts'
import { type Treatment, treat } from './treatment.ts'

const DRAFT = { grade: 'draft', traceAtM: 0.04 } as const
const C = 273.15

type RecordOf<Kind extends StepRecord['kind']> = Kind extends HeatRecord['kind']
  ? HeatRecord
  : Extract<StepRecord, { kind: Kind }>

function recordOf<Kind extends StepRecord['kind']>(treatment: Treatment, kind: Kind): RecordOf<Kind> {
  const found = treatment.records.find((record) => record.kind === kind)
  if (found === undefined) throw new Error(`no record of a ${kind}`)
  return found as RecordOf<Kind>
}

const whole = treat(sampleJob(), DRAFT)

describe('one bar through fire, bath and oven', () => {
  test('the outside is at heat before the middle, and the middle comes up in the hold', () => {
    const heat = recordOf(whole, 'heat')
    expect(heat.outsideUpS).toBeGreaterThan(20)
    expect(heat.middleUpS).toBeGreaterThan(30)
    expect(heat.middleUpS).toBeLessThan(heat.holdS)
    expect(heat.coldestK).toBeGreaterThan(857 + C - 15)
    // A fire is set by looking at the steel: it may run ahead by half of what the eye can tell (20 K).
    expect(heat.hottestK).toBeLessThan(857 + C + 12)
  })

  test('steps follow one another on one clock', () => {
    const { records } = whole
    expect(records.map(({ kind }) => kind)).toEqual(['heat', 'carry', 'quench', 'temper'])
    for (let i = 1; i < records.length; i++) expect(records[i]!.startS).toBeGreaterThanOrEqual(records[i - 1]!.endS - 1e-6)
    const { timeS } = whole.trace
    for (let i = 1; i < timeS.length; i++) expect(timeS[i]!).toBeGreaterThanOrEqual(timeS[i - 1]!)
  })

  test('the bath takes the heat that the steel gives, to a thousandth', () => {
    const { bath, bathStartK, bathEndK, heatIntoBathJ } = recordOf(whole, 'quench')
    const takenJ = (bathEndK - bathStartK) * bathHeatCapacityJPerK(bath)
    expect(takenJ).toBeGreaterThan(1e5)
    expect(Math.abs(takenJ - heatIntoBathJ)).toBeLessThan(1e-3 * heatIntoBathJ)
  })

  test('about 0.59 MJ/kg goes into the bath from 850 to 60 degC (EN 1993-1-2 enthalpy, integrated)', () => {
    const { heatIntoBathJ, massUnderKg } = recordOf(whole, 'quench')
    expect(heatIntoBathJ / massUnderKg).toBeGreaterThan(0.5e6)
    expect(heatIntoBathJ / massUnderKg).toBeLessThan(0.65e6)
  })

  test('a broad flat warms the bath by all of its metal, not by that of the round it is meshed as', () => {
    const size = { acrossM: 0.007, widthM: 0.041 }
    const flat = treat(
      sampleJob({ profile: { sections: [{ shape: 'flat', from: size, to: size, lengthM: 0.09 }] }, zones: [], probes: [] }),
      { ...DRAFT, onlyHardening: true },
    )
    const { bath, bathStartK, bathEndK, heatIntoBathJ, massUnderKg } = recordOf(flat, 'quench')
    expect(massUnderKg).toBeCloseTo(7850 * 0.007 * 0.041 * 0.09, 3)
    expect(heatIntoBathJ / massUnderKg).toBeGreaterThan(0.5e6)
    expect(Math.abs((bathEndK - bathStartK) * bathHeatCapacityJPerK(bath) - heatIntoBathJ)).toBeLessThan(1e-3 * heatIntoBathJ)
  })

  test('skin cools before the middle, and every node passed the window', () => {
    const [skin, centre] = readAt(whole.body, whole.state.coolingS, [
      { xM: 0.045, rM: 0.0115 },
      { xM: 0.045, rM: 0 },
    ])
    expect(skin!).toBeLessThan(centre!)
    expect(centre!).toBeLessThan(60)
  })

  test('the oven holds what its dial says plus what it reads low; the middle takes most of an hour to come up', () => {
    const temper = recordOf(whole, 'temper')
    expect(temper.trueK).toBeCloseTo(211 + 7 + C, 6)
    expect(temper.middleUpS).toBeGreaterThan(20 * 60)
    expect(temper.middleUpS).toBeLessThan(90 * 60)
    for (const peakK of whole.state.temperPeakK) {
      expect(peakK).toBeGreaterThan(temper.trueK - 5.1)
      expect(peakK).toBeLessThan(temper.trueK + 11.1)
    }
  })
})

test('a hold too short leaves the middle cold', () => {
  const short = treat(sampleJob({ process: [{ ...SAMPLE_HEAT, holdS: 5 }, SAMPLE_WALK, SAMPLE_QUENCH] }), DRAFT)
  const heat = recordOf(short, 'heat')
  expect(heat.middleUpS).toBeNull()
  expect(heat.coldestK).toBeLessThan(840 + C)
})

test('only the length in the fire is austenitised', () => {
  const process = [{ ...SAMPLE_HEAT, part: { fromM: 0, toM: 0.045 } }, SAMPLE_WALK, SAMPLE_QUENCH] as const
  const { body, state } = treat(sampleJob({ process }), DRAFT)
  const [hot, cold] = readAt(body, state.peakK, [
    { xM: 0.005, rM: 0 },
    { xM: 0.085, rM: 0 },
  ])
  expect(hot!).toBeGreaterThan(840 + C)
  expect(cold!).toBeLessThan(720 + C)
})

test('above the line of a part quench the metal cools in air', () => {
  const { body, state, records } = treat(
    sampleJob({ process: [SAMPLE_HEAT, SAMPLE_WALK, { ...SAMPLE_QUENCH, depthM: 0.03 }] }),
    DRAFT,
  )
  const [under, over] = readAt(body, state.coolingS, [
    { xM: 0.01, rM: 0.0115 },
    { xM: 0.085, rM: 0.0115 },
  ])
  expect(under!).toBeLessThan(15)
  expect(over!).toBeGreaterThan(60)
  const quench = records.find((record) => record.kind === 'quench')
  expect(quench?.kind === 'quench' && quench.lengthUnderM).toBeCloseTo(0.03, 9)
})

test('a weaker film cools slower everywhere, in the variants as in a shop with less motion', () => {
  const { state, variants } = treat(sampleJob(), { ...DRAFT, onlyHardening: true, filmFactors: [1.3, 0.75] })
  const [up, down] = variants
  for (let i = 0; i < state.coolingS.length; i++) {
    expect(up!.coolingS[i]!).toBeLessThan(state.coolingS[i]! + 1e-9)
    expect(down!.coolingS[i]!).toBeGreaterThan(state.coolingS[i]! - 1e-9)
  }
})

test('two tempers are one of twice the time: equivalent times add (Hollomon & Jaffe 1945)', () => {
  const calm = { name: 'small oven', maxK: 240 + C, readsLowK: 0, swingK: 0 }
  const job = sampleJob({ shop: { ...sampleJob().shop, ovens: [calm] } })
  const at = (times: number, holdS: number): number => {
    const { body, state } = treat(
      { ...job, process: [SAMPLE_HEAT, SAMPLE_WALK, SAMPLE_QUENCH, { ...SAMPLE_TEMPER, times, holdS }] },
      DRAFT,
    )
    return readAt(body, state.parameter18K, [{ xM: 0.045, rM: 0 }])[0]!
  }
  const twice = at(2, 3600)
  const once = at(1, 3600)
  const long = at(1, 7200)
  expect(twice).toBeGreaterThan(once + 100)
  // Two warm-ups and coolings against one: a little more than one long hold, and never less.
  expect(twice).toBeGreaterThanOrEqual(long - 1)
  expect(twice - long).toBeLessThan(25)
})

test('a hot bar warms the bath by the heat balance, and the quench begins from there', () => {
  const warm = { do: 'warm-bath', in: 'oil tank', with: { acrossM: 0.04, lengthM: 0.3, atK: 700 + C } } as const
  const treatment = treat(sampleJob({ process: [warm, SAMPLE_HEAT, SAMPLE_WALK, SAMPLE_QUENCH] }), DRAFT)
  const warmed = recordOf(treatment, 'warm-bath')
  expect(warmed.bathEndK - warmed.bathStartK).toBeGreaterThan(15)
  expect(recordOf(treatment, 'quench').bathStartK).toBe(warmed.bathEndK)
})

test('heat left in the body runs to the edge and tempers it', () => {
  const process = [
    { ...SAMPLE_HEAT, toK: 845 + C },
    { do: 'carry', forS: 2 },
    { ...SAMPLE_QUENCH, in: 'water butt', depthM: 0.03, forS: 6 },
    { do: 'run-colours', stopAtK: 250 + C, in: 'water butt' },
  ] as const
  const treatment = treat(sampleJob({ steel: sampleSteel({ C: 0.76, Cr: 0.1, Mo: 0 }), process }), DRAFT)
  const ran = recordOf(treatment, 'run-colours')
  expect(ran.reachedS).toBeGreaterThan(3)
  expect(ran.reachedS).toBeLessThan(200)
  expect(ran.risePerS).toBeGreaterThan(0.3)
  const [edge] = readAt(treatment.body, treatment.state.temperPeakK, [{ xM: 0, rM: 0 }])
  expect(edge!).toBeGreaterThan(220 + C)
  expect(edge!).toBeLessThan(300 + C)
  expect(Math.max(...treatment.state.temperatureK)).toBeLessThan(340)
})

test('a piece that is never heated stays as it was', () => {
  const { state } = treat(sampleJob({ process: [SAMPLE_TEMPER] }), DRAFT)
  expect(Math.max(...state.peakK)).toBe(ROOM_K)
  expect(Math.min(...state.coolingS)).toBe(Number.POSITIVE_INFINITY)
})

describe('a sketch', () => {
  const sketch = treat(sampleJob(), { grade: 'sketch', traceAtM: 0.04 })

  test('keeps the clock, the fire, the bath and the oven near those of a finer treatment', () => {
    expect(sketch.state.peakK.length).toBeLessThan(0.6 * whole.state.peakK.length)
    const [quick, slow] = [recordOf(sketch, 'heat'), recordOf(whole, 'heat')]
    expect(Math.abs(quick.hottestK - slow.hottestK)).toBeLessThan(6)
    expect(Math.abs(quick.coldestK - slow.coldestK)).toBeLessThan(6)
    expect(Math.abs(quick.outsideUpS! / slow.outsideUpS! - 1)).toBeLessThan(0.1)
    const [bath, fineBath] = [recordOf(sketch, 'quench'), recordOf(whole, 'quench')]
    expect(Math.abs(bath.bathEndK - fineBath.bathEndK)).toBeLessThan(0.5)
    const [oven, fineOven] = [recordOf(sketch, 'temper'), recordOf(whole, 'temper')]
    expect(Math.abs(oven.middleUpS / fineOven.middleUpS - 1)).toBeLessThan(0.1)
  })

  test('gives up on a fire that never gets the piece there', () => {
    const part = { fromM: 0, toM: 0.002 }
    const block = { sections: [{ shape: 'round', from: { acrossM: 0.08 }, to: { acrossM: 0.08 }, lengthM: 0.06 }] } as const
    const job = sampleJob({ profile: block, process: [{ ...SAMPLE_HEAT, part }, SAMPLE_QUENCH] })
    const heat = recordOf(treat(job, { grade: 'sketch', traceAtM: 0 }), 'heat')
    expect(heat.outsideUpS).toBeNull()
    expect(heat.hottestK).toBeLessThan(857 + C - 80)
  })
})
