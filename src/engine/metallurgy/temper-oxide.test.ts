import fc from 'fast-check'
import { expect, test } from 'vitest'
import { heatByColourK, hotterForColourK, oxideGrownS } from './temper-oxide.ts'

const C = 273.15

test('[TM10] five minutes at a heat show its own colour', () => {
  for (const degC of [220, 240, 260, 300, 330]) expect(heatByColourK(oxideGrownS(degC + C, 300))).toBeCloseTo(degC + C, 6)
})

test('[TM10] an hour at 205 degC looks like 244; ten seconds look 50 K too cool', () => {
  expect(Math.abs(heatByColourK(oxideGrownS(205 + C, 3600)) - C - 244)).toBeLessThan(5)
  const looks = heatByColourK(oxideGrownS(350 + C, 10)) - C
  expect(looks).toBeGreaterThan(265)
  expect(looks).toBeLessThan(300)
})

test('[TM10] ten times as long looks 35 to 50 K hotter', () => {
  for (const degC of [220, 260, 300]) {
    const moved = heatByColourK(oxideGrownS(degC + C, 3000)) - heatByColourK(oxideGrownS(degC + C, 300))
    expect(moved).toBeGreaterThan(33)
    expect(moved).toBeLessThan(60)
  }
})

test('[TM10] rich steel must be hotter for a colour, and stretches add up', () => {
  expect(hotterForColourK({ Cr: 0.1, Si: 0.25 })).toBe(0)
  expect(hotterForColourK({ Cr: 5, Si: 0.3 })).toBeCloseTo(50, 6)
  const hotter = hotterForColourK({ Cr: 5, Si: 0.3 })
  expect(heatByColourK(oxideGrownS(300 + C, 300, hotter))).toBeCloseTo(250 + C, 6)
  fc.assert(
    fc.property(fc.double({ min: 450, max: 650, noNaN: true }), fc.double({ min: 1, max: 4000, noNaN: true }), (k, s) => {
      expect(oxideGrownS(k, s / 3) + oxideGrownS(k, (2 * s) / 3)).toBeCloseTo(oxideGrownS(k, s), 6)
    }),
  )
})
