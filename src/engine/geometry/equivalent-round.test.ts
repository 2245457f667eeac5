import { describe, expect, test } from 'vitest'
import { areaM2, equivalentRatio, equivalentRoundM, volumeM3 } from './equivalent-round.ts'

describe('[GE1] equivalent rounds', () => {
  // Long bars, equal cooling of the centre; ranges of the published tables that section-shapes.ts names.
  test.each([
    ['square', 1.05, 1.08],
    ['hexagon', 1.03, 1.06],
    ['octagon', 1.01, 1.03],
  ] as const)('%s lies within its published range', (shape, low, high) => {
    const ratio = equivalentRatio(shape)
    expect(ratio.value).toBeGreaterThanOrEqual(low)
    expect(ratio.value).toBeLessThanOrEqual(high)
    expect(ratio.low).toBeLessThan(ratio.value)
    expect(ratio.high).toBeGreaterThan(ratio.value)
  })

  // Printed tables in the style of BS 5046, from memory, hold within 5 %.
  test.each([
    [1.5, 1.3],
    [2, 1.42],
    [3, 1.47],
    [4, 1.5],
    [9, 1.5],
  ])('a flat %s times as wide as thick counts as %s thicknesses, within 5 %%', (wide, ratio) => {
    const counts = equivalentRoundM('flat', { acrossM: 0.007, widthM: 0.007 * wide }) / 0.007
    expect(Math.abs(counts / ratio - 1)).toBeLessThan(0.051)
    const { low, high } = equivalentRatio('flat', wide)
    expect(low).toBeLessThan(ratio)
    expect(high).toBeGreaterThan(ratio)
  })

  test('a flat as wide as thick is a square', () => {
    expect(equivalentRoundM('flat', { acrossM: 0.011, widthM: 0.011 })).toBe(equivalentRoundM('square', { acrossM: 0.011 }))
  })

  test('a point has none, whatever its shape', () => {
    expect(equivalentRoundM('flat', { acrossM: 0, widthM: 0.012 })).toBe(0)
    expect(equivalentRoundM('round', { acrossM: 0 })).toBe(0)
  })
})

describe('[GE3] true areas and volumes', () => {
  test.each([
    ['round', Math.PI / 4],
    ['square', 1],
    ['hexagon', 6 * Math.tan(Math.PI / 6) * 0.25],
    ['octagon', 8 * Math.tan(Math.PI / 8) * 0.25],
  ] as const)('%s', (shape, share) => {
    expect(areaM2(shape, { acrossM: 0.013 })).toBeCloseTo(share * 0.013 ** 2, 12)
  })

  test('a square that runs out to a point is a pyramid', () => {
    const pyramid = { shape: 'square', from: { acrossM: 0 }, to: { acrossM: 0.012 }, lengthM: 0.05 } as const
    expect(volumeM3({ sections: [pyramid] })).toBeCloseTo((0.012 ** 2 * 0.05) / 3, 12)
  })

  test('a chisel end is a wedge, also where thickness and width change together', () => {
    const wedge = {
      shape: 'flat',
      from: { acrossM: 0, widthM: 0.02 },
      to: { acrossM: 0.01, widthM: 0.03 },
      lengthM: 0.06,
    } as const
    // Integral of (t s)(w0 + (w1 - w0) s) over s in 0..1, times the length.
    expect(volumeM3({ sections: [wedge] })).toBeCloseTo(0.06 * 0.01 * (0.02 / 2 + 0.01 / 3), 12)
  })

  test('a half-ball dish and a hole come off, a fillet comes on', () => {
    const bar = { shape: 'square', from: { acrossM: 0.04 }, to: { acrossM: 0.04 }, lengthM: 0.05 } as const
    const full = 0.04 ** 2 * 0.05
    const dished = volumeM3({ sections: [{ ...bar, dish: { acrossM: 0.018, depthM: 0.009 } }] })
    expect(full - dished).toBeCloseTo((2 / 3) * Math.PI * 0.009 ** 3, 12)
    const bored = volumeM3({ sections: [{ ...bar, bore: { acrossM: 0.01, depthM: 0.03 } }] })
    expect(full - bored).toBeCloseTo(Math.PI * 0.005 ** 2 * 0.03, 12)
    const shank = { shape: 'round', from: { acrossM: 0.02 }, to: { acrossM: 0.02 }, lengthM: 0.06 } as const
    expect(volumeM3({ sections: [bar, { ...shank, filletM: 0.005 }] })).toBeGreaterThan(volumeM3({ sections: [bar, shank] }))
  })
})
