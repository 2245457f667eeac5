import { expect, test } from 'vitest'
import { chiselForecast } from '#web/findings/forecast.test-data.ts'
import { readAt, wholeCurves } from './whole-curves.ts'

const step = (kind: string, start_s: number, end_s: number, times?: number) => ({
  do: kind,
  start_s,
  end_s,
  says: '',
  cautions: [],
  ...(times === undefined ? {} : { times }),
})

test('later rounds are like the first', () => {
  const whole = wholeCurves({
    steps: [step('normalise', 0, 300, 3), step('heat', 300, 400)],
    curves: {
      x_mm: 10,
      time_s: [0, 50, 100, 300, 350, 400],
      skin_C: [20, 850, 40, 40, 600, 800],
      centre_C: [20, 840, 45, 45, 580, 795],
    },
  })
  expect(whole.timeS).toEqual([0, 50, 100, 150, 200, 250, 300, 350, 400])
  expect(whole.skinC).toEqual([20, 850, 40, 850, 40, 850, 40, 600, 800])
})

test('without repeats the curves stand as they are', () => {
  const forecast = chiselForecast()
  expect(wholeCurves(forecast).timeS).toEqual(forecast.curves.time_s)
  expect(wholeCurves(forecast).centreC).toEqual(forecast.curves.centre_C)
})

test('a curve is read straight between its points', () => {
  expect(readAt([0, 10, 20], [0, 100, 0], 5)).toBe(50)
  expect(readAt([0, 10, 20], [0, 100, 7], 25)).toBe(7)
  expect(readAt([0, 10, 20], [3, 100, 7], -1)).toBe(3)
  expect(readAt([], [], 1)).toBeNaN()
})
