import { expect, test } from 'vitest'
import { formatMass, formatVolume } from './amount.ts'
import { durationText, formatDuration } from './duration.ts'
import { formatLength } from './length.ts'
import { formatDifference, formatTemperature } from './temperature.ts'

test.each([
  [0.022, '22 mm', '7/8 in'],
  [0.0222, '22.2 mm', '7/8 in'],
  [0.0301625, '30.2 mm', '1-3/16 in'],
  [0.0508, '50.8 mm', '2 in'],
  [0.0015, '1.5 mm', '1/16 in'],
  [0.00025, '0.25 mm', '0 in'],
  [0, '0 mm', '0 in'],
])('%f m is %s or %s', (lengthM, metric, inch) => {
  expect(formatLength(lengthM, 'metric')).toBe(metric)
  expect(formatLength(lengthM, 'inch')).toBe(inch)
})

test('finer than sixteenths when asked', () => {
  expect(formatLength(0.0115, 'inch', 64)).toBe('29/64 in')
  expect(formatLength(0.0115, 'inch', 32)).toBe('7/16 in')
})

test('temperatures and differences', () => {
  expect(formatTemperature(505.15, 'metric')).toBe('232 °C')
  expect(formatTemperature(505.15, 'inch')).toBe('450 °F')
  expect(formatTemperature(273.15, 'inch', 1)).toBe('32 °F')
  expect(formatDifference(8, 'metric')).toBe('8 °C')
  expect(formatDifference(8, 'inch')).toBe('14 °F')
  expect(formatDifference(-0.2, 'metric')).toBe('0 °C')
})

test.each([
  [3.5, '3.5 s', '3.5 s'],
  [45, '45 s', '45 s'],
  [150, '2 min 30 s', '150 s'],
  [720, '12 min', '12 min'],
  [3599, '1 h', '3599 s'],
  [4800, '1 h 20 min', '1 h 20 min'],
  [7200, '2 h', '2 h'],
])('%f s is %s', (durationS, said, typed) => {
  expect(formatDuration(durationS)).toBe(said)
  expect(durationText(durationS)).toBe(typed)
})

test('volumes and weights', () => {
  expect(formatVolume(0.012, 'metric')).toBe('12 L')
  expect(formatVolume(0.0005, 'metric')).toBe('500 ml')
  expect(formatVolume(0.012, 'inch')).toBe('3.2 gal')
  expect(formatMass(1.25, 'metric')).toBe('1.25 kg')
  expect(formatMass(0.3, 'metric')).toBe('300 g')
  expect(formatMass(0.567, 'inch')).toBe('1 lb 4 oz')
})
