import { describe, expect, test } from 'vitest'
import { steppedDuration, steppedLength, steppedTemperature } from './stepping.ts'

describe('one step of an arrow key', () => {
  test.each([
    ['845 °C', 1, '850 °C'],
    ['845 C', -1, '840 °C'],
    ['848 °C', 1, '850 °C'],
    ['848 °C', -1, '845 °C'],
    ['450 °F', 1, '460 °F'],
    ['455F', -1, '450 °F'],
    ['505 K', 1, '510 K'],
  ] as const)('temperature %s by %i: %s', (typed, direction, after) => {
    expect(steppedTemperature(typed, direction)).toBe(after)
  })

  test.each([
    ['3 s', 1, '3.5 s'],
    ['10 s', -1, '9.5 s'],
    ['10 s', 1, '15 s'],
    ['60 s', 1, '2 min'],
    ['12 min', 1, '13 min'],
    ['20 min', 1, '25 min'],
    ['20 min', -1, '19 min'],
    ['1 h', 1, '1 h 15 min'],
    ['1 h', -1, '55 min'],
    ['4 h', 1, '4 h 30 min'],
  ] as const)('time %s by %i: %s', (typed, direction, after) => {
    expect(steppedDuration(typed, direction)).toBe(after)
  })

  test.each([
    ['35 mm', 1, '40 mm'],
    ['30 mm', -1, '29 mm'],
    ['22 mm', 1, '23 mm'],
    ['1-1/2 in', 1, '1-9/16 in'],
    ['2"', 1, '2-1/8 in'],
    ['2 in', -1, '1-15/16 in'],
  ] as const)('length %s by %i: %s', (typed, direction, after) => {
    expect(steppedLength(typed, direction)).toBe(after)
  })

  test('nothing below nothing, and nothing itself only where it may stand', () => {
    expect(steppedDuration('0.5 s', -1)).toBeUndefined()
    expect(steppedDuration('0.5 s', -1, { zero: true })).toBe('0 min')
    expect(steppedLength('1 mm', -1)).toBeUndefined()
    expect(steppedLength('1 mm', -1, { zero: true })).toBe('0 mm')
  })

  test('what cannot be read is left alone', () => {
    expect(steppedTemperature('red', 1)).toBeUndefined()
    expect(steppedDuration('a while', 1)).toBeUndefined()
    expect(steppedLength('whole', 1)).toBeUndefined()
  })
})
