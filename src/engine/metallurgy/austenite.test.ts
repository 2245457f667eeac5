import fc from 'fast-check'
import { expect, test } from 'vitest'
import { gradeById } from '#engine/materials/catalogue.ts'
import { steelOf } from '#engine/materials/grade-heats.ts'
import { compositionOf, type Steel } from '#engine/materials/steel.ts'
import { austeniteAt, retainedAusteniteFraction } from './austenite.ts'
import { criticalTemperatures } from './critical-temperatures.ts'
import { hardenedHv } from './hardened-hardness.ts'
import { hrcFromHv } from './hardness-scales.ts'

const ZERO_DEGC_K = 273.15

function analysed(given: Parameters<typeof compositionOf>[0]): Steel {
  return { name: 'analysed steel', composition: compositionOf(given), range: {}, grainSize: 7 }
}
const STEELS = [
  analysed({ C: 0.45, Mn: 0.75, Si: 0.22 }),
  analysed({ C: 0.84, Mn: 0.75, Si: 0.22 }),
  analysed({ C: 0.95, Mn: 0.4, Si: 0.2 }),
  analysed({ C: 1, Mn: 0.35, Si: 0.25, Cr: 1.45 }),
  analysed({ C: 1.5, Mn: 0.4, Si: 0.3, Cr: 11.5, Mo: 0.9, V: 0.8 }),
]
const anySteel = fc.constantFrom(...STEELS)
const anyPeakK = fc.double({ min: 950, max: 1450, noNaN: true })
const anyHoldS = fc.double({ min: 0, max: 7200, noNaN: true })

test('[MT3] nothing turns below Ac1, all is austenite well above Ac3', () => {
  for (const steel of STEELS) {
    const { ac1K, ac3K } = criticalTemperatures(steel.composition)
    expect(austeniteAt(steel, ac1K.value - 1, 3600).fraction).toBe(0)
    expect(austeniteAt(steel, ac3K.value + 60, 900).fraction).toBeGreaterThan(0.99)
  }
})

test('[MT3] hotter or longer never means less austenite', () => {
  fc.assert(
    fc.property(anySteel, anyPeakK, anyHoldS, fc.double({ min: 0, max: 80, noNaN: true }), (steel, peakK, holdS, more) => {
      const { fraction } = austeniteAt(steel, peakK, holdS)
      expect(fraction).toBeGreaterThanOrEqual(0)
      expect(fraction).toBeLessThanOrEqual(1)
      expect(austeniteAt(steel, peakK + more, holdS).fraction).toBeGreaterThanOrEqual(fraction - 1e-9)
      expect(austeniteAt(steel, peakK, holdS + 60 * more).fraction).toBeGreaterThanOrEqual(fraction - 1e-9)
    }),
  )
})

test('[MT3] a degree or a second makes no jump', () => {
  fc.assert(
    fc.property(anySteel, anyPeakK, anyHoldS, (steel, peakK, holdS) => {
      const here = austeniteAt(steel, peakK, holdS)
      for (const there of [austeniteAt(steel, peakK + 0.1, holdS), austeniteAt(steel, peakK, holdS + 0.1)]) {
        expect(Math.abs(there.fraction - here.fraction)).toBeLessThan(0.03)
        if (here.fraction > 0) expect(Math.abs(there.composition.C - here.composition.C)).toBeLessThan(0.02)
      }
    }),
  )
})

test('[MT3] spheroidised stock wants longer than normalised', () => {
  const steel = STEELS[2]!
  const fine = austeniteAt(steel, 790 + ZERO_DEGC_K, 60, 'fine')
  const coarse = austeniteAt(steel, 790 + ZERO_DEGC_K, 60, 'spheroidised')
  expect(coarse.composition.C).toBeLessThan(fine.composition.C - 0.1)
})

test('[MT2] plain high-carbon steel keeps carbide at its usual heat and dissolves it when overheated', () => {
  const steel = STEELS[2]!
  const usual = austeniteAt(steel, 790 + ZERO_DEGC_K, 600)
  const hot = austeniteAt(steel, 950 + ZERO_DEGC_K, 600)
  expect(usual.carbideLeft).toBe(true)
  // Published for 1095 / W1 at 790 degC: 0.85-0.93 % C in the austenite.
  expect(usual.composition.C).toBeGreaterThanOrEqual(0.84)
  expect(usual.composition.C).toBeLessThanOrEqual(0.93)
  expect(hot.carbideLeft).toBe(false)
  expect(retainedAusteniteFraction(hot.composition, 298)).toBeGreaterThan(retainedAusteniteFraction(usual.composition, 298))
})

test('[MT5] overheated D2 comes out softer through retained austenite, and the cold brings hardness back', () => {
  const steel = STEELS[4]!
  const usual = austeniteAt(steel, 1020 + ZERO_DEGC_K, 1800).composition
  const hot = austeniteAt(steel, 1110 + ZERO_DEGC_K, 1800).composition
  const hrc = (austenite: typeof usual, minK = 298): number => hrcFromHv(hardenedHv(austenite, { minK, bulk: steel.composition }))
  // Sheets give 63-64 HRC from 1010 degC in air.
  expect(Math.abs(hrc(usual) - 63.5)).toBeLessThan(1.5)
  expect(hrc(hot)).toBeLessThan(hrc(usual) - 2)
  expect(hrc(hot, 195)).toBeGreaterThan(hrc(hot) + 1)
})

test.each([
  [816, 0.08],
  [843, 0.15],
  [871, 0.18],
])(
  '[MT5] 52100 held 25 min at %d degC and quenched in oil retains austenite as measured, within five points',
  (degC, measured) => {
    const { composition } = austeniteAt(steelOf(gradeById('52100')!), degC + ZERO_DEGC_K, 1500)
    expect(Math.abs(retainedAusteniteFraction(composition, 298) - measured)).toBeLessThan(0.05)
  },
)

test('[MT3] the finer the carbide lies, the sooner it is in solution; martensite is the quickest', () => {
  const steel = STEELS[2]!
  const dissolved = (['martensite', 'fine', 'rolled', 'spheroidised'] as const).map(
    (prior) => austeniteAt(steel, 790 + ZERO_DEGC_K, 60, prior).composition.C,
  )
  for (let i = 1; i < dissolved.length; i++) expect(dissolved[i]).toBeLessThan(dissolved[i - 1]!)
})

test('[MT3] annealed A2 wants its half hour: three minutes leave carbide that twenty do not', () => {
  const a2 = steelOf(gradeById('A2')!)
  const short = austeniteAt(a2, 950 + ZERO_DEGC_K, 180, 'spheroidised').composition.C
  const long = austeniteAt(a2, 950 + ZERO_DEGC_K, 1800, 'spheroidised').composition.C
  expect(long - short).toBeGreaterThan(0.04)
})
