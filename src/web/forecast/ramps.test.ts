import { expect, test } from 'vitest'
import { cssOf, lightnessOf, RAMP_SIZE, type Ramp, rampThrough } from './ramps.ts'
import { BAND, GLOWS_FROM_C, HARDNESS, HEAT } from './scales.ts'

const lightnessAlong = (ramp: Ramp): number[] => Array.from(ramp, lightnessOf)

test('hardness and band run from light to dark without turning back, far enough to be told in grey', () => {
  for (const { ramp } of [HARDNESS, BAND]) {
    const lightness = lightnessAlong(ramp)
    for (let i = 1; i < RAMP_SIZE; i++) expect(lightness[i]).toBeLessThan(lightness[i - 1]! + 0.4)
    expect(lightness[0]! - lightness[RAMP_SIZE - 1]!).toBeGreaterThan(50)
  }
})

test('equal steps of hardness are steps that the eye can tell', () => {
  const lightness = lightnessAlong(HARDNESS.ramp)
  const at = (hrc: number): number => lightness[Math.round((255 * (hrc - HARDNESS.low)) / (HARDNESS.high - HARDNESS.low))]!
  for (let hrc = 20; hrc <= 60; hrc += 10) expect(at(hrc) - at(hrc + 5)).toBeGreaterThan(2.5)
})

test('steel is plain until it glows, and the hotter the brighter from there', () => {
  const at = (celsius: number): number => HEAT.ramp[Math.round((255 * (celsius - HEAT.low)) / (HEAT.high - HEAT.low))]!
  expect(at(200) >>> 24).toBe(0)
  expect(at(GLOWS_FROM_C - 20) >>> 24).toBe(0)
  expect(at(700) >>> 24).toBe(255)
  let before = lightnessOf(at(600))
  for (let celsius = 620; celsius <= 1300; celsius += 20) {
    const now = lightnessOf(at(celsius))
    expect(now).toBeGreaterThanOrEqual(before)
    before = now
  }
  // Red before it is yellow, and nearly white at the end.
  const part = (celsius: number, shift: number): number => (at(celsius) >>> shift) & 255
  expect(part(800, 0)).toBeGreaterThan(2.5 * part(800, 8))
  expect(part(1290, 16)).toBeGreaterThan(120)
})

test('a ramp has its stops where they were put', () => {
  const ramp = rampThrough([
    { at: 0, colour: '#000000' },
    { at: 1, colour: '#ffffff', alpha: 0.5 },
  ])
  expect(cssOf(ramp[0]!)).toBe('rgb(0 0 0 / 100%)')
  expect(cssOf(ramp[255]!)).toBe('rgb(255 255 255 / 50%)')
  expect(lightnessOf(ramp[255]!)).toBeCloseTo(100)
})
