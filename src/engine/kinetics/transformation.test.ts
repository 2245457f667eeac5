import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compositionOf } from '#engine/materials/steel.ts'
import { hardeningResponse } from '#engine/metallurgy/hardening-response.ts'
import { dwellOf } from './dwell-clock.ts'
import { END_QUENCH_DWELL } from './end-quench-dwell.ts'
import { CLASSES } from './temperature-classes.ts'
import { transformation } from './transformation.ts'

const analysis = fc.record({
  C: fc.double({ min: 0.15, max: 0.9, noNaN: true }),
  Mn: fc.double({ min: 0.2, max: 1.6, noNaN: true }),
  Si: fc.double({ min: 0.1, max: 1.8, noNaN: true }),
  Cr: fc.double({ min: 0, max: 1.5, noNaN: true }),
  Ni: fc.double({ min: 0, max: 2, noNaN: true }),
  Mo: fc.double({ min: 0, max: 0.4, noNaN: true }),
})
/** As a forecast asks: the place on the bar [s], and what formed. */
function of(parts: Record<string, number>, gradeId?: string) {
  const turned = turnedOf(parts, gradeId)
  return {
    after: (dwellS: Float64Array) => ({ coolingS: Math.exp(turned.lnCooling(dwellS, 1, 0)), ...turned.products(dwellS, 1, 0) }),
  }
}

function turnedOf(parts: Record<string, number>, gradeId?: string) {
  const composition = compositionOf(parts)
  const steel = { name: 'bar', composition, range: {}, grainSize: 7, ...(gradeId === undefined ? {} : { gradeId }) }
  return transformation(steel, composition, hardeningResponse(steel, composition).halfMartensiteS)
}
const C1080 = { C: 0.8, Mn: 0.75, Si: 0.22 }
const C4140 = { C: 0.4, Mn: 0.85, Si: 0.25, Cr: 0.95, Mo: 0.2 }

/** From 850 degC in `s` seconds to `degC`, held there for `holdS`, then to the room at once. */
const held = (degC: number, holdS: number, s = 1) =>
  dwellOf([0, s, s + holdS, s + holdS + 0.5], [1123, degC + 273.15, degC + 273.14, 300])

describe('[KI3] held to the end-quench bar', () => {
  test('a cooling like that of a place of the bar is that place, whatever the steel', () => {
    fc.assert(
      fc.property(analysis, (parts) => {
        for (const { timeS, share } of END_QUENCH_DWELL) {
          const { coolingS, factor } = of(parts).after(Float64Array.from(share, (each) => 0.001 * timeS * each))
          expect(Math.abs(coolingS / timeS - 1)).toBeLessThan(0.005)
          expect(Math.abs(factor - 1)).toBeLessThan(0.005)
        }
      }),
      { numRuns: 40 },
    )
  })

  test('any second more, at any temperature, never hardens and never makes less of what is not martensite', () => {
    const dwells = fc.array(fc.double({ min: 0, max: 30, noNaN: true }), { minLength: CLASSES, maxLength: CLASSES })
    fc.assert(
      fc.property(analysis, dwells, fc.nat(CLASSES - 1), (parts, dwell, k) => {
        const turned = of(parts)
        const before = turned.after(Float64Array.from(dwell))
        const after = turned.after(Float64Array.from(dwell, (s, i) => (i === k ? s + 5 : s)))
        expect(after.coolingS).toBeGreaterThanOrEqual(before.coolingS * (1 - 1e-9))
        const { ferrite, pearlite, bainite } = after
        expect(Math.abs(ferrite + pearlite + bainite - 1)).toBeLessThan(1e-9)
        expect(Math.min(ferrite, pearlite, bainite)).toBeGreaterThanOrEqual(-1e-12)
      }),
      { numRuns: 60 },
    )
  })

  test('what was never hot has not cooled', () => {
    expect(of(C1080).after(new Float64Array(CLASSES)).coolingS).toBe(Number.POSITIVE_INFINITY)
  })
})

describe('[KI4] coolings that stop on the way', () => {
  const martensite = (parts: Record<string, number>, dwell: Float64Array): number => {
    const composition = compositionOf(parts)
    const steel = { name: 'bar', composition, range: {}, grainSize: 7 }
    return hardeningResponse(steel, composition).martensiteFraction(of(parts).after(dwell).coolingS)
  }

  test('1080 caught at 320 degC and held there: martensite after a second, bainite after an hour, harder than the pearlite of a slow quench', () => {
    expect(martensite(C1080, held(320, 1, 0.4))).toBeGreaterThan(0.9)
    expect(martensite(C1080, held(320, 3600, 0.4))).toBeLessThan(0.2)
    const hour = of(C1080).after(held(320, 3600, 0.4))
    expect(hour.factor).toBeGreaterThan(1.2)
  })

  test('4140 held at 650 degC for an hour on its way down is soft; for two seconds it still hardens', () => {
    expect(martensite(C4140, held(650, 3600))).toBeLessThan(0.02)
    expect(martensite(C4140, held(650, 2))).toBeGreaterThan(0.95)
  })

  test('4140 caught at 450 degC turns to bainite within minutes; the same at 700 degC gives ferrite and pearlite, and softer', () => {
    const upper = of(C4140).after(held(450, 300))
    const coarse = of(C4140).after(held(700, 3000))
    expect(upper.bainite).toBeGreaterThan(0.8)
    expect(coarse.bainite).toBeLessThan(0.1)
    expect(coarse.factor).toBeLessThan(0.85)
    expect(upper.factor).toBeGreaterThan(coarse.factor)
  })

  test('S7 by its published noses: half an hour at 400 degC is bainite, ten minutes at 700 are hardly felt', () => {
    const parts = { C: 0.5, Mn: 0.7, Si: 0.3, Cr: 3.2, Mo: 1.4 }
    expect(of(parts, 'S7').after(held(400, 1800, 60)).bainite).toBeGreaterThan(0.9)
    expect(of(parts, 'S7').after(held(400, 1800, 60)).coolingS).toBeGreaterThan(
      2 * of(parts, 'S7').after(held(700, 600, 60)).coolingS,
    )
  })
})
