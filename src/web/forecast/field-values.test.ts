import { describe, expect, test } from 'vitest'
import type { Picture } from '#contract/picture-fields.ts'
import { fieldValues } from './field-values.ts'
import { spanSays } from './field-words.ts'

const picture = {
  xMm: new Float32Array(3),
  timeS: Float64Array.from([0, 100]),
  temperatureC: Float32Array.from([20, 20, 20, 669, 760, 854]),
  quenchedHrc: Float32Array.from([12, 40, 58]),
  temperedHrc: Float32Array.from([51.6, 51.8, 52.3]),
  bandHrc: Float32Array.from([6.2, 9, 12.4]),
} as unknown as Picture

describe('lines that carry a figure', () => {
  test('stand at round figures of the units in use', () => {
    const metric = fieldValues(picture, 'heat', 100, 'metric')!
    expect(metric.levels.map(metric.figureOf)).toEqual(['700°', '750°', '800°', '850°'])
    const inch = fieldValues(picture, 'heat', 100, 'inch')!
    expect(inch.levels.map(inch.figureOf)).toEqual(['1300°', '1400°', '1500°'])
    expect([metric.every, inch.every]).toEqual(['50°', '100°'])
  })

  test('none where it is even, and none under the beginning of the C scale', () => {
    expect(fieldValues(picture, 'heat', 0, 'metric')?.levels).toEqual([])
    expect(fieldValues(picture, 'quenched', 0, 'metric')?.levels).toEqual([20, 30, 40, 50])
  })
})

describe('in words', () => {
  test('the span over the piece', () => {
    expect(spanSays(picture, 'heat', 100, 'metric')).toBe('669 to 854 °C')
    expect(spanSays(picture, 'heat', 0, 'inch')).toBe('68 °F all through')
    expect(spanSays(picture, 'quenched', 0, 'metric')).toBe('under 20 to 58 HRC')
    expect(spanSays(picture, 'tempered', 0, 'metric')).toBe('52 HRC all through')
    expect(spanSays(picture, 'band', 0, 'metric')).toBe('6 to 12 HRC wide')
    expect(spanSays(picture, 'became', 0, 'metric')).toBe('')
  })
})
