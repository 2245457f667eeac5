import { describe, expect, test } from 'vitest'
import { parseMass, parseVolume } from './amount.ts'
import { parseDuration } from './duration.ts'
import { parseLength } from './length.ts'
import type { Reading } from './reading.ts'
import { parseSectionSize } from './section-size.ts'
import { parseReadingError, parseSwing, parseTemperature } from './temperature.ts'
import { parseRate } from './temperature-rate.ts'

function value<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new Error(reading.says)
  return reading.value
}

function says(reading: Reading<unknown>): string {
  if (reading.ok) throw new Error(`was read as ${JSON.stringify(reading.value)}`)
  return reading.says
}

describe('lengths', () => {
  test.each([
    ['7/8 in', 0.022225],
    ['1-3/16"', 0.0301625],
    ['1 3/16 in', 0.0301625],
    ['1.5 in', 0.0381],
    ['22 mm', 0.022],
    ['22mm', 0.022],
    ['2.2 cm', 0.022],
    ['0.3 m', 0.3],
    ['2 ft', 0.6096],
    [`1' 6"`, 0.4572],
    [`1'6-1/2"`, 0.4699],
    ['1 ft 6 1/2 in', 0.4699],
    ['½ in', 0.0127],
    ['1½″', 0.0381],
    ['12 ¾ inches', 0.32385],
    ['1⁄4 in.', 0.00635],
    ['22,5 mm', 0.0225],
    ['0,125 in', 0.003175],
    [' 30 thou ', 0.000762],
    ['7 MM', 0.007],
  ])('%s is %f m', (typed, lengthM) => {
    expect(value(parseLength(typed))).toEqual({ typed, lengthM })
  })

  test.each([
    ['22', 'no unit'],
    [22, 'no unit'],
    ['', 'figure belongs here'],
    [null, 'not a quantity'],
    ['mm', 'no figure'],
    ['22 furlongs', 'no unit of length'],
    ['22 °C', 'no unit of length'],
    ['-3 mm', 'less than nothing'],
    ['−3 mm', 'less than nothing'],
    ['0 mm', 'nothing'],
    ['1,125 in', 'thousands'],
    ['1,000,000 mm', 'thousands'],
    ['1/0 in', 'over nothing'],
    ['1-5/4 in', 'one or more'],
    ['1.5 1/2 in', 'one or the other'],
    ['1e3 mm', 'power of ten'],
    ['1-3 mm', 'one figure'],
    ['1..3 mm', 'one figure'],
    ['6 in 1 ft', 'great to small'],
    ['1 ft 6', 'last number stands by itself'],
    ['1.2.3 mm', 'no number'],
    ['NaN mm', 'no figure'],
    ['Infinity mm', 'no figure'],
    [Number.NaN, 'no unit'],
    [{ mm: 3 }, 'not a quantity'],
    [['3 mm'], 'not a quantity'],
    ['9'.repeat(10_000), 'too long'],
    [`${'9'.repeat(40)} mm`, 'digits'],
    ['3 mm\u202e', 'no figure'],
  ])('%s is refused: %s', (typed, why) => {
    expect(says(parseLength(typed))).toContain(why)
    expect(says(parseLength(typed)).length).toBeLessThan(260)
  })

  test('nothing is taken only where it is allowed', () => {
    expect(value(parseLength('0 mm', { zero: true })).lengthM).toBe(0)
  })
})

test.each([
  ['450F', 505.3722222222222],
  ['450 °F', 505.3722222222222],
  ['450ºF', 505.3722222222222],
  ['450 deg F', 505.3722222222222],
  ['232 °C', 505.15],
  ['232 C', 505.15],
  ['232℃', 505.15],
  ['232 degrees Celsius', 505.15],
  ['505 K', 505],
  ['-10 °C', 263.15],
])('%s is %f K', (typed, temperatureK) => {
  expect(value(parseTemperature(typed)).temperatureK).toBeCloseTo(temperatureK, 9)
})

test.each([
  [205, 'no unit'],
  ['205', 'no unit'],
  ['205 °', 'which scale'],
  ['-300 °C', 'colder'],
  ['0 K', 'colder'],
  ['±15 C', 'not a swing'],
  ['205 °C low', 'after the temperature'],
  ['200-210 C', 'one figure'],
  ['hot', 'no figure'],
  ['205 mm', 'no unit of temperature'],
])('temperature %s is refused: %s', (typed, why) => {
  expect(says(parseTemperature(typed))).toContain(why)
})

test('differences', () => {
  expect(value(parseReadingError('8 °C low')).differenceK).toBe(8)
  expect(value(parseReadingError('15 °F high')).differenceK).toBeCloseTo(-25 / 3, 12)
  expect(value(parseReadingError('true')).differenceK).toBe(0)
  expect(value(parseReadingError('0 C')).differenceK).toBe(0)
  expect(says(parseReadingError('8 °C'))).toContain('low or high')
  expect(value(parseSwing('±15 C')).differenceK).toBe(15)
  expect(value(parseSwing('+/- 18 °F')).differenceK).toBe(10)
  expect(says(parseSwing('15'))).toContain('no unit')
  expect(says(parseSwing('-15 C'))).toContain('either way')
})

test.each([
  ['1 h 20 min', 4800],
  ['90 s', 90],
  ['3.5 s', 3.5],
  ['2 hours', 7200],
  ['12 min', 720],
  ['1/2 h', 1800],
  ['1 ½ h', 5400],
  ['1:20 h', 4800],
  ['1:20 min', 80],
  ['1 hour and 5 minutes', 3900],
  ['1h20min', 4800],
])('%s is %f s', (typed, durationS) => {
  expect(value(parseDuration(typed)).durationS).toBe(durationS)
})

test.each([
  ['1:20', '1 h 20 min, or 1 min 20 s'],
  ['10 m', 'metres'],
  ['10', 'no unit'],
  ['1h20', 'last number stands by itself'],
  ['-1 min', 'less than nothing'],
  ['0 s', 'nothing'],
  ['while it sings', 'no figure'],
])('time %s is refused: %s', (typed, why) => {
  expect(says(parseDuration(typed))).toContain(why)
})

test.each([
  ['12 L', 0.012],
  ['5 gal', 0.01892705892],
  ['5 imp gal', 0.02273045],
  ['2 qt', 0.001892705892],
  ['500 ml', 0.0005],
  ['231 cu in', 0.003785411784],
  ['1 ft3', 0.028316846592],
])('%s is %f m3', (typed, volumeM3) => {
  expect(value(parseVolume(typed)).volumeM3).toBeCloseTo(volumeM3, 15)
})

test.each([
  ['3/4 lb', 0.3401942775],
  ['1 lb 4 oz', 0.5669904625],
  ['2 kg', 2],
  ['300 g', 0.3],
])('%s is %f kg', (typed, massKg) => {
  expect(value(parseMass(typed)).massKg).toBeCloseTo(massKg, 14)
})

test.each([
  ['15 C/h', 15 / 3600],
  ['20 °C per hour', 20 / 3600],
  ['36 °F/h', 20 / 3600],
  ['2 K/min', 2 / 60],
])('%s is %f K/s', (typed, rateKPerS) => {
  expect(value(parseRate(typed)).rateKPerS).toBeCloseTo(rateKPerS, 15)
})

test('rates that are refused', () => {
  expect(says(parseRate('15 C'))).toContain('not degrees by time')
  expect(says(parseRate(15))).toContain('no unit')
  expect(says(parseRate('0 C/h'))).toContain('never gets there')
})

test.each([
  ['22 mm', { acrossM: 0.022 }],
  ['5 x 12 mm', { acrossM: 0.005, widthM: 0.012 }],
  ['5x12mm', { acrossM: 0.005, widthM: 0.012 }],
  ['5 mm × 12 mm', { acrossM: 0.005, widthM: 0.012 }],
  ['1/4 x 1 in', { acrossM: 0.00635, widthM: 0.0254 }],
  ['1/4" x 1"', { acrossM: 0.00635, widthM: 0.0254 }],
  ['¼″ by 1-1/8″', { acrossM: 0.00635, widthM: 0.028575 }],
  ['½ × ¾ in', { acrossM: 0.0127, widthM: 0.01905 }],
])('size %s', (typed, size) => {
  expect(value(parseSectionSize(typed))).toEqual({ typed, ...size })
})

test.each(['5 x 12', '5 mm x 12', '5 x 12 x 3 mm', 'x 12 mm', '5 x', 'big', 12, `1/4 x 1' 6"`])('size %s is refused', (typed) => {
  expect(says(parseSectionSize(typed))).toContain('write')
})
