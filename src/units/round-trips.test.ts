import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseMass, parseVolume, volumeText } from './amount.ts'
import { durationText, parseDuration } from './duration.ts'
import { hardnessRangeText, parseHardnessRange } from './hardness.ts'
import { formatLength, lengthText, parseLength } from './length.ts'
import { shortDecimal } from './number-text.ts'
import type { Reading } from './reading.ts'
import { parseSectionSize, sectionSizeText } from './section-size.ts'
import { formatTemperature, parseReadingError, parseSwing, parseTemperature, temperatureText } from './temperature.ts'
import { parseRate, rateText } from './temperature-rate.ts'

function value<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new Error(reading.says)
  return reading.value
}

const close = (a: number, b: number): void => expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-11 * Math.abs(b))

describe('what is written is read as the same', () => {
  test('every sixty-fourth of an inch, exactly', () => {
    for (let count = 1; count <= 640; count++) {
      const lengthM = (count * 254) / 640_000
      const text = formatLength(lengthM, 'inch', 64)
      expect(value(parseLength(text)).lengthM).toBe(lengthM)
      expect(lengthText(lengthM, 'inch')).toBe(text)
    }
  })

  test('fractions however they are spaced', () => {
    fc.assert(
      fc.property(fc.nat(40), fc.integer({ min: 1, max: 63 }), fc.constantFrom(64, 32, 16, 8, 3, 5, 7), (whole, top, bottom) => {
        fc.pre(top < bottom)
        const exact = ((whole * bottom + top) * 254) / (bottom * 10_000)
        for (const join of ['-', ' '])
          for (const unit of ['"', ' in', ' inches', '″'])
            expect(value(parseLength(`${whole}${join}${top}/${bottom}${unit}`)).lengthM).toBe(exact)
        expect(value(parseLength(`${whole}' ${top}/${bottom}"`)).lengthM).toBeCloseTo(
          whole * 0.3048 + (top * 0.0254) / bottom,
          12,
        )
      }),
    )
  })

  test('tenths of a millimetre and degrees, exactly', () => {
    for (let count = 1; count < 3000; count += 7) {
      const lengthM = count / 10_000
      expect(value(parseLength(lengthText(lengthM, 'metric'))).lengthM).toBe(lengthM)
    }
    for (let celsius = -30; celsius < 1300; celsius++) {
      const { temperatureK } = value(parseTemperature(`${celsius} °C`))
      expect(temperatureText(temperatureK, 'metric')).toBe(`${celsius} °C`)
      expect(formatTemperature(temperatureK, 'metric')).toBe(`${celsius} °C`)
      const fahrenheit = value(parseTemperature(`${celsius} °F`)).temperatureK
      expect(temperatureText(fahrenheit, 'inch')).toBe(`${celsius} °F`)
    }
  })

  test('any length, heat, time, rate, volume and size', () => {
    const size = fc.double({ min: 1e-4, max: 3, noNaN: true })
    fc.assert(
      fc.property(size, size, fc.constantFrom('metric', 'inch'), (a, b, system) => {
        close(value(parseLength(lengthText(a, system))).lengthM, a)
        close(value(parseDuration(durationText(a * 1e4))).durationS, a * 1e4)
        close(value(parseVolume(volumeText(a))).volumeM3, a)
        close(value(parseRate(rateText(a, system))).rateKPerS, a)
        const back = value(parseSectionSize(sectionSizeText({ acrossM: a, widthM: b }, system)))
        close(back.acrossM, a)
        close(back.widthM ?? 0, b)
        expect(
          Math.abs(value(parseTemperature(temperatureText(250 + 500 * a, system))).temperatureK - 250 - 500 * a),
        ).toBeLessThan(1e-7)
        expect(Math.abs(value(parseLength(formatLength(a, system), { zero: true })).lengthM - a)).toBeLessThan(0.0008)
      }),
    )
  })

  test('hardness wishes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 60 }), fc.nat(8), fc.constantFrom('HRC', 'HRB', 'HV', 'HBW'), (low, more, scale) => {
        for (const wish of [{ low, high: low + more }, { low }, { high: low }])
          expect(value(parseHardnessRange(hardnessRangeText(wish, scale)))).toMatchObject({ ...wish, scale })
      }),
    )
  })
})

test('nothing typed makes a reader throw, and every refusal says something short', () => {
  const readers = [
    parseLength,
    parseTemperature,
    parseDuration,
    parseVolume,
    parseMass,
    parseRate,
    parseSwing,
    parseReadingError,
    parseHardnessRange,
  ]
  const pieces = fc.array(
    fc.constantFrom(
      '1',
      '22',
      '3/4',
      '1-1/2',
      '.5',
      ',',
      '-',
      '±',
      'x',
      ' ',
      'mm',
      'in',
      '"',
      "'",
      '°C',
      'F',
      'h',
      'min',
      'HRC',
      '..',
      'at most',
      '½',
      'e9',
      'low',
    ),
  )
  const anything = fc.oneof(
    fc.string({ unit: 'binary' }),
    pieces.map((parts) => parts.join('')),
    fc.anything(),
  )
  fc.assert(
    fc.property(anything, (input) => {
      for (const reader of [...readers, (each: unknown) => parseSectionSize(each)]) {
        const reading = reader(input)
        if (reading.ok) {
          const numbers = Object.values(reading.value).filter((each) => typeof each === 'number')
          expect(numbers.every(Number.isFinite)).toBe(true)
        } else {
          expect(reading.says.length).toBeGreaterThan(10)
          expect(reading.says.length).toBeLessThan(300)
        }
      }
    }),
    { numRuns: 500 },
  )
})

test.each([
  [0, '0'],
  [1e-9, '0.000000001'],
  [1 / 3, '0.333333333333'],
  [22.225, '22.225'],
  [0.1 + 0.2, '0.3'],
  [-40, '-40'],
])('%f is written %s', (number, text) => {
  expect(shortDecimal(number)).toBe(text)
})
