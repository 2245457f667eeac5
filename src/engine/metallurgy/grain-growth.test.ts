import fc from 'fast-check'
import { expect, test } from 'vitest'
import { compositionOf } from '#engine/materials/steel.ts'
import { freeGrainNumber, grainAfterHeat, growsFromK, refined } from './grain-growth.ts'

const C = 273.15
const STEEL_4140 = compositionOf({ C: 0.4, Mn: 0.85, Si: 0.25, Cr: 0.95, Mo: 0.2 })
const STEEL_1095 = compositionOf({ C: 0.95, Mn: 0.4, Si: 0.2 })

// Worked by hand: 4140, 850 degC 300 s 12.5 um, 900 degC 1 h 32 um, 1000 degC 1 h 68 um; ASTM E112 mean intercept.
test.each([
  [850, 300, 9.36],
  [900, 3600, 6.64],
  [1000, 3600, 4.47],
])('[FI7] 4140 at %d degC for %d s grows freely to ASTM %d', (degC, s, number) => {
  expect(freeGrainNumber(STEEL_4140, degC + C, s)).toBeCloseTo(number, 0)
})

const anySteel = fc.constantFrom(STEEL_4140, STEEL_1095, compositionOf({ C: 1.5, Mn: 0.4, Cr: 11.5, Mo: 0.9, V: 0.8 }))
const anyHeatK = fc.double({ min: 1000, max: 1500, noNaN: true })
const anyHoldS = fc.double({ min: 0, max: 7200, noNaN: true })
const anyStart = fc.double({ min: 2, max: 11, noNaN: true })

test('[FI7] hotter or longer never leaves finer grain, and the estimate lies between free growth and none', () => {
  fc.assert(
    fc.property(
      anySteel,
      anyStart,
      anyHeatK,
      anyHoldS,
      fc.double({ min: 0, max: 100, noNaN: true }),
      (steel, start, atK, holdS, more) => {
        const here = grainAfterHeat(steel, start, atK, holdS)
        expect(here.number).toBeGreaterThanOrEqual(here.coarsest - 1e-9)
        expect(here.number).toBeLessThanOrEqual(here.finest + 1e-9)
        expect(grainAfterHeat(steel, start, atK + more, holdS).number).toBeLessThanOrEqual(here.number + 1e-9)
        expect(grainAfterHeat(steel, start, atK, holdS + 60 * more).number).toBeLessThanOrEqual(here.number + 1e-9)
      },
    ),
  )
})

test('[FI7] under the temperature it grows from, grain stays as it was', () => {
  fc.assert(
    fc.property(anySteel, anyStart, anyHoldS, (steel, start, holdS) => {
      expect(grainAfterHeat(steel, start, growsFromK(steel, start) - 1, holdS).number).toBeCloseTo(start, 6)
    }),
  )
})

test('[FI7] aluminium holds constructional steel at the heat where a carbon tool steel has grown coarse', () => {
  expect(grainAfterHeat(STEEL_4140, 7, 940 + C, 1800).number).toBe(7)
  expect(grainAfterHeat(STEEL_1095, 7, 940 + C, 1800).number).toBeLessThan(6.6)
  expect(grainAfterHeat(STEEL_4140, 7, 1100 + C, 1800).number).toBeLessThan(4)
})

test('[FI7] each normalising of a coarse bar buys less than the one before, and never goes past what the heat allows', () => {
  const trips = [3, ...refined(STEEL_4140, 3, 870 + C, 600, 5)]
  const gains = trips.slice(1).map((number, i) => number - trips[i]!)
  for (const [i, gain] of gains.entries()) {
    expect(gain).toBeGreaterThan(0)
    if (i > 0) expect(gain).toBeLessThan(gains[i - 1]!)
  }
  expect(trips[trips.length - 1]).toBeLessThan(freeGrainNumber(STEEL_4140, 870 + C, 600))
  expect(trips[2]).toBeGreaterThan(7)
})

test('[FI7] one normalising brings a sound bar no further than the standard bar, an overheated one makes it coarser', () => {
  expect(refined(STEEL_4140, 7, 870 + C, 600, 1)).toEqual([7])
  expect(refined(STEEL_4140, 7, 1150 + C, 3600, 1)[0]).toBeLessThan(4)
})
