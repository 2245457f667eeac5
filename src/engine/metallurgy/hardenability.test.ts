import fc from 'fast-check'
import { expect, test } from 'vitest'
import { compositionOf } from '#engine/materials/steel.ts'
import { DIVIDING_FACTORS } from './dividing-factors.ts'
import { dividingFactor, idealDiameterM, jominyHrc } from './hardenability.ts'
import { jominyEstimate } from './jominy-estimate.ts'

const SIXTEENTH_M = 0.0015875
const STEEL_4140 = compositionOf({ C: 0.4, Mn: 0.85, Si: 0.25, Cr: 0.95, Mo: 0.2 })
const STEEL_5160 = compositionOf({ C: 0.6, Mn: 0.85, Si: 0.22, Cr: 0.8 })

test.each(DIVIDING_FACTORS)('row $sixteenths begins to divide at its limit', ({ limitIn, coefficients }) => {
  const atLimit = coefficients.reduceRight((sum, a) => sum * limitIn + a, 0)
  expect(atLimit).toBeGreaterThanOrEqual(1.002)
  // Rows from 14/16 on have their printed limit at the end of the method's range (7 in), not where the curve meets 1.
  if (limitIn < 7) expect(atLimit).toBeLessThanOrEqual(1.0155)
})

// Worked by hand through the A255 polynomials.
test.each([
  [STEEL_4140, 8, 50.9],
  [STEEL_4140, 16, 41.1],
  [STEEL_4140, 32, 33.4],
  [STEEL_5160, 6, 51.0],
  [STEEL_5160, 12, 38.8],
])('case %#: hardness at J%d is %f HRC', (steel, sixteenths, expected) => {
  expect(Math.abs(jominyHrc(steel, sixteenths * SIXTEENTH_M, 7) - expected)).toBeLessThanOrEqual(0.5)
})

test('hardness never rises away from the quenched end', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.4, max: 12, noNaN: true }),
      fc.double({ min: 0, max: 60, noNaN: true }),
      fc.double({ min: 0, max: 10, noNaN: true }),
      (di, j, more) => {
        const factor = dividingFactor(di, j)
        expect(factor).toBeGreaterThanOrEqual(1)
        expect(dividingFactor(di, j + more)).toBeGreaterThanOrEqual(factor - 1e-9)
      },
    ),
  )
})

test('a more hardenable steel is never softer at any distance', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.3, max: 12, noNaN: true }),
      fc.double({ min: 1, max: 60, noNaN: true }),
      fc.double({ min: 0, max: 2, noNaN: true }),
      (di, j, more) => {
        expect(dividingFactor(di + more, j)).toBeLessThanOrEqual(dividingFactor(di, j) * 1.012)
      },
    ),
  )
})

test('a coarser grain hardens deeper', () => {
  expect(idealDiameterM(STEEL_4140, 5)).toBeGreaterThan(idealDiameterM(STEEL_4140, 8))
})

test('a bar with a wider analysis has a wider band', () => {
  const named = { name: 'a', composition: STEEL_4140, grainSize: 7, range: {} }
  const loose = { ...named, range: { C: [0.38, 0.43], Mn: [0.75, 1], Cr: [0.8, 1.1], Mo: [0.15, 0.25] } as const }
  const at = 16 * SIXTEENTH_M
  const tight = jominyEstimate(named, at)
  const wide = jominyEstimate(loose, at)
  expect(wide.high - wide.low).toBeGreaterThan(tight.high - tight.low + 2)
  expect(wide.value).toBe(tight.value)
})
