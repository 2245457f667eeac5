import { describe, expect, test } from 'vitest'
import { interpolate } from '#engine/arithmetic/table.ts'
import { airContact } from './air.ts'
import { PACKINGS, packedContact } from './packing.ts'

const filmAt = (packing: (typeof PACKINGS)[number], acrossM: number, sinceS: number, surfaceK = 900): number =>
  interpolate(packedContact(packing, 293, { acrossM, sinceS }).film, surfaceK)

describe('[SH10] a piece buried in dry powder', () => {
  test('loses heat many times more slowly than in air', () => {
    const { film, emissivity } = airContact(293, { acrossM: 0.025 })
    const air = interpolate(film, 900) + (emissivity * 5.67e-8 * (900 ** 4 - 293 ** 4)) / (900 - 293)
    for (const packing of PACKINGS) expect(filmAt(packing, 0.025, 1800)).toBeLessThan(air / 5)
  })

  test('loses it ever more slowly as the bed warms, and the thicker the slower by area', () => {
    for (const packing of PACKINGS) {
      expect(filmAt(packing, 0.025, 3600)).toBeLessThan(filmAt(packing, 0.025, 600))
      expect(filmAt(packing, 0.05, 1800)).toBeLessThan(filmAt(packing, 0.0125, 1800))
    }
  })

  // Flux of a cylinder held at one heat in an endless bed, a q / (k dT), Carslaw & Jaeger 13.5: 2.24 at t' = 0.1, 0.98 at 1, 0.61 at 10.
  test.each([
    [0.1, 2.24],
    [1, 0.98],
    [10, 0.61],
  ])('by the flux of a cylinder in an endless bed, at t` = %f', (t, exact) => {
    const radiusM = 0.0125
    const meanK = 0.5 * (900 + 293)
    const k = 0.08 + ((meanK - 300) / 700) * 0.08
    const sinceS = (t * 400000 * radiusM * radiusM) / k
    expect(Math.abs((filmAt('ashes', 0.025, sinceS) * radiusM) / k / exact - 1)).toBeLessThan(0.16)
  })

  test('asks for a piece and a time', () => {
    expect(() => packedContact('ashes', 293, { acrossM: 0, sinceS: 1 })).toThrow(RangeError)
    expect(() => packedContact('ashes', 293, { acrossM: 0.02, sinceS: 0 })).toThrow(RangeError)
  })
})
