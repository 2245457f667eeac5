import { expect, test } from 'vitest'
import { chiselForecast } from '#web/findings/forecast.test-data.ts'
import { keyedTime } from './scrubbing.ts'
import { timeScale } from './time-scale.ts'
import { timeTicks } from './time-ticks.ts'

const scale = timeScale(chiselForecast().steps)
const END = Number.POSITIVE_INFINITY

test('arrows go a little way along the line, longer with Shift', () => {
  const at = scale.shareOf(8610)
  expect(scale.shareOf(keyedTime(scale, 8610, 'ArrowRight', false)!)).toBeCloseTo(at + 0.005)
  expect(scale.shareOf(keyedTime(scale, 8610, 'ArrowLeft', true)!)).toBeCloseTo(at - 0.025)
  expect(keyedTime(scale, 0, 'ArrowLeft', false)).toBe(0)
  expect(keyedTime(scale, END, 'ArrowRight', false)).toBe(scale.endS)
})

test('page keys go from step to step, Home and End to the ends', () => {
  expect(keyedTime(scale, 8601, 'PageUp', false)).toBe(8603)
  expect(keyedTime(scale, 8603, 'PageUp', false)).toBe(8723)
  expect(keyedTime(scale, 8603, 'PageDown', false)).toBe(8600)
  expect(keyedTime(scale, END, 'PageDown', false)).toBe(9000)
  expect(keyedTime(scale, 100, 'PageDown', false)).toBe(0)
  expect(keyedTime(scale, 100, 'End', false)).toBe(scale.endS)
  expect(keyedTime(scale, 100, 'Home', false)).toBe(0)
  expect(keyedTime(scale, 100, 'Tab', false)).toBeUndefined()
})

test('ticks are round times since the start of their step, with room between them', () => {
  const ticks = timeTicks(scale, 900, 50)
  expect(ticks.length).toBeGreaterThan(4)
  for (const [i, tick] of ticks.entries()) if (i > 0) expect((tick.share - ticks[i - 1]!.share) * 900).toBeGreaterThan(29)
  expect(ticks.map(({ text }) => text)).toContain('1 min')
  expect(timeTicks(scale, 300, 50).length).toBeLessThan(ticks.length)
})
