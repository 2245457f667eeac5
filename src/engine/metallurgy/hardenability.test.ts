import fc from 'fast-check'
import { expect, test } from 'vitest'
import { compositionOf } from '#engine/materials/steel.ts'
import { DIVIDING_FACTORS } from './dividing-factors.ts'
import { dividingFactor, effectiveDiameterM, idealDiameterM, jominyHrc } from './hardenability.ts'
import { jominyEstimate, usualAustenite } from './jominy-estimate.ts'

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

test('[MT9] hardness never rises away from the quenched end', () => {
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

test('[MT9] a more hardenable steel is never softer at any distance', () => {
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

test('[MT7] a coarser grain hardens deeper', () => {
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

// Roberts, Krauss & Kennedy, Tool Steels, 5th ed., Table 7-3: critical diameter in brine [mm], turned into an ideal diameter by the
// exact cylinder solution for H = 5 /in (which takes 0.17 in off between 0.75 and 1.5 in); smaller ones than that table are left out.
test.each([
  [{ C: 1.07, Mn: 0.34, Si: 0.22, Cr: 0.1, Ni: 0.03 }, 11.4],
  [{ C: 1.09, Mn: 0.26, Si: 0.26, Cr: 0.17, Ni: 0.2 }, 11.4],
  [{ C: 1.0, Mn: 0.31, Si: 0.28, Cr: 0.13, Ni: 0.07 }, 15.2],
  [{ C: 0.99, Mn: 0.36, Si: 0.31, Cr: 0.15, Ni: 0.17 }, 19.1],
  [{ C: 0.94, Mn: 0.45, Si: 0.36, Cr: 0.21, Ni: 0.16 }, 25.4],
])('carbides in water-hardening steel %o make it shallow: %d mm in brine', (given, observedMm) => {
  const bulk = compositionOf(given)
  const idealIn = effectiveDiameterM(bulk, usualAustenite(bulk), 7) / 0.0254
  const observedIn = observedMm / 25.4 + 0.17
  expect(Math.abs(Math.log(idealIn / observedIn))).toBeLessThan(Math.log(1.25))
})

test('[MT7] steel that dissolves all its carbon has the diameter of the standard', () => {
  expect(effectiveDiameterM(STEEL_4140, STEEL_4140, 7)).toBe(idealDiameterM(STEEL_4140, 7))
})
