import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { gradeById } from '#engine/materials/catalogue.ts'
import { steelOf } from '#engine/materials/grade-heats.ts'
import { compositionOf, type Steel } from '#engine/materials/steel.ts'
import { type HardeningResponse, hardeningResponse } from './hardening-response.ts'
import { hrcFromHv } from './hardness-scales.ts'
import { usualAustenite } from './jominy-estimate.ts'

function of(gradeId: string): HardeningResponse {
  const steel = steelOf(gradeById(gradeId)!)
  return hardeningResponse(steel, usualAustenite(steel.composition))
}

function ofComposition(given: Parameters<typeof compositionOf>[0], grainSize = 7): HardeningResponse {
  const composition = compositionOf(given)
  const steel: Steel = { name: 'analysed steel', composition, range: {}, grainSize }
  return hardeningResponse(steel, composition)
}

const anySteel = fc.record({
  C: fc.double({ min: 0.05, max: 1.2, noNaN: true }),
  Mn: fc.double({ min: 0.2, max: 2, noNaN: true }),
  Si: fc.double({ min: 0, max: 2.2, noNaN: true }),
  Cr: fc.double({ min: 0, max: 12, noNaN: true }),
  Ni: fc.double({ min: 0, max: 4, noNaN: true }),
  Mo: fc.double({ min: 0, max: 2, noNaN: true }),
})
const anyTime = fc.double({ min: 0.05, max: 1e6, noNaN: true })

describe('[MT9] for any steel', () => {
  test('slower cooling never hardens more, and never makes more martensite', () => {
    fc.assert(
      fc.property(anySteel, anyTime, anyTime, (given, a, b) => {
        const r = ofComposition(given)
        const [fast, slow] = a < b ? [a, b] : [b, a]
        expect(r.quenchedHv(slow)).toBeLessThanOrEqual(r.quenchedHv(fast) + 1e-9)
        expect(r.martensiteFraction(slow)).toBeLessThanOrEqual(r.martensiteFraction(fast) + 1e-12)
      }),
    )
  })

  test('hardness lies between soft and full, martensite between none and all', () => {
    fc.assert(
      fc.property(anySteel, anyTime, (given, s) => {
        const r = ofComposition(given)
        expect(r.quenchedHv(s)).toBeGreaterThanOrEqual(r.softHv - 1e-9)
        expect(r.quenchedHv(s)).toBeLessThanOrEqual(r.fullHv + 1e-9)
        expect(r.martensiteFraction(s)).toBeGreaterThanOrEqual(0)
        expect(r.martensiteFraction(s)).toBeLessThanOrEqual(1)
        expect(r.quenchedHv(Number.POSITIVE_INFINITY)).toBe(r.softHv)
        expect(r.martensiteFraction(Number.POSITIVE_INFINITY)).toBe(0)
        expect(r.criticalCoolingS).toBeGreaterThan(0)
      }),
    )
  })

  // Where one law passes into the next a hundredth or two may be lost.
  test('a finer grain never hardens deeper', () => {
    fc.assert(
      fc.property(anySteel, anyTime, (given, s) => {
        const coarse = ofComposition(given, 5)
        expect(ofComposition(given, 9).martensiteFraction(s)).toBeLessThanOrEqual(coarse.martensiteFraction(s) + 0.03)
      }),
    )
  })

  test('a little more alloy moves nothing by a jump', () => {
    fc.assert(
      fc.property(anySteel, anyTime, (given, s) => {
        const before = hrcFromHv(ofComposition(given).quenchedHv(s))
        const after = hrcFromHv(ofComposition({ ...given, Mn: given.Mn + 0.002 }).quenchedHv(s))
        expect(Math.abs(after - before)).toBeLessThan(2)
      }),
    )
  })
})

// The end-quench bar of A255 worked by hand for the printed composition, at the time that each place takes.
test.each([
  ['4140', { C: 0.4, Mn: 0.85, Si: 0.25, Cr: 0.95, Mo: 0.2 }, 25.6, 50.9],
  ['4140', { C: 0.4, Mn: 0.85, Si: 0.25, Cr: 0.95, Mo: 0.2 }, 66.9, 41.1],
  ['4340', { C: 0.4, Mn: 0.7, Si: 0.25, Ni: 1.8, Cr: 0.8, Mo: 0.25 }, 25.6, 56.1],
])('%s follows the end-quench bar', (_, given, s, hrc) => {
  expect(Math.abs(hrcFromHv(ofComposition(given).quenchedHv(s)) - hrc)).toBeLessThan(1.5)
})

// As quenched in a small piece: the sheets named in the catalogue, +/-1.5 HRC.
test.each([
  ['W2', 67],
  ['O1', 64.5],
  ['A2', 64],
  ['D2', 63],
  ['L6', 64],
  ['H13', 54],
  ['4340', 56],
])('%s reaches the published hardness', (gradeId, hrc) => {
  const r = of(gradeId)
  expect(Math.abs(hrcFromHv(r.fullHv) - hrc)).toBeLessThan(1.5)
  expect(hrcFromHv(r.quenchedHv(0.5))).toBeGreaterThan(hrc - 2)
})

test('[MT9] steels stand in the order in which smiths rank their depth', () => {
  const order = ['W1', '1084', '5160', 'O1', 'S7', 'A2'].map((gradeId) => of(gradeId).criticalCoolingS)
  for (let i = 1; i < order.length; i++) expect(order[i]!, String(i)).toBeGreaterThan(order[i - 1]!)
})

test('water-hardening steel wants less than 2 s, which only water and brine do in a bar; air-hardening steel has a quarter of an hour', () => {
  expect(of('W1').criticalCoolingS).toBeLessThan(2)
  expect(of('A2').criticalCoolingS).toBeGreaterThan(900)
})

test('[MT10] what a sheet prints goes before the formula, and says so', () => {
  expect(of('S7').basis).toBe('published')
  expect(of('S7').source).toContain('Crucible data sheet S7')
  expect(of('4140').basis).toBe('model')
  expect(of('4140').source).toContain('A255')
  expect(of('D2').source).toContain('+/-30 %')
})
