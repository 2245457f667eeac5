import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  convert,
  convertBrinellToHv,
  HARDNESS_SCALES,
  hrcFromHv,
  hvFromHrc,
  OutsideScale,
  scaleLimits,
} from './hardness-scales.ts'

test('[MT12] Rockwell C and Vickers are each other turned round, and rise together, from 90 to 1076 HV', () => {
  fc.assert(
    fc.property(fc.double({ min: 90, max: 1076, noNaN: true }), fc.double({ min: 0.01, max: 50, noNaN: true }), (hv, more) => {
      expect(Math.abs(hvFromHrc(hrcFromHv(hv)) - hv)).toBeLessThan(1e-6)
      if (hv + more <= 1076) expect(hrcFromHv(hv + more)).toBeGreaterThan(hrcFromHv(hv))
    }),
  )
})

test('[MT12] soft steel keeps a place on the C scale, below zero', () => {
  expect(hrcFromHv(160)).toBe(0)
  expect(hrcFromHv(100)).toBe(-20)
  expect(hrcFromHv(90)).toBeLessThan(-20)
})

test.each(HARDNESS_SCALES)('%s converts to HV and back to itself', (scale) => {
  const [low, high] = scaleLimits(scale)
  for (const share of [0.05, 0.3, 0.55, 0.8, 0.95]) {
    const value = low + share * (high - low)
    const { value: hv, low: least, high: most } = convert(value, scale, 'HV')
    expect(least).toBeLessThanOrEqual(hv)
    expect(most).toBeGreaterThanOrEqual(hv)
    expect(Math.abs(convert(hv, 'HV', scale).value - value)).toBeLessThan(0.01 * (high - low))
  }
})

test('[MT12] the standards are not stretched', () => {
  expect(() => convert(69, 'HRC', 'HV')).toThrow(OutsideScale)
  expect(() => convert(19, 'HRC', 'HV')).toThrow(OutsideScale)
  expect(() => convert(66, 'HRC', 'HBW')).toThrow(OutsideScale)
  expect(() => convert(Number.NaN, 'HRC', 'HV')).toThrow(OutsideScale)
})

test('Brinell of tables is read up to 739 HBW and as Vickers where it is soft', () => {
  expect(convertBrinellToHv(100)).toBe(100)
  expect(Math.abs(convertBrinellToHv(481) - 513)).toBeLessThan(1e-9)
  expect(convertBrinellToHv(739)).toBe(832)
})
