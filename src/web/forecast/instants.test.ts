import { expect, test } from 'vitest'
import type { Picture } from '#contract/picture-fields.ts'
import { betweenInstants, levelAt, temperaturesAt } from './instants.ts'

const picture = {
  xMm: new Float32Array(2),
  timeS: Float64Array.from([0, 10, 10, 30]),
  temperatureC: Float32Array.from([20, 20, 800, 760, 800, 760, 400, 300]),
  levelMm: Float32Array.from([Number.NaN, Number.NaN, 0, 60]),
} as unknown as Picture

test('temperatures between two instants', () => {
  expect([...temperaturesAt(picture, 5)]).toEqual([410, 390])
  expect([...temperaturesAt(picture, 20)]).toEqual([600, 530])
})

test('before the first and after the last, those', () => {
  expect([...temperaturesAt(picture, -3)]).toEqual([20, 20])
  expect([...temperaturesAt(picture, Number.POSITIVE_INFINITY)]).toEqual([400, 300])
})

test('at a joint of two steps the later one', () => {
  expect(betweenInstants(picture, 10)).toEqual({ before: 2, after: 3, share: 0 })
  expect(levelAt(picture, 10)).toBe(0)
})

test('the bath where there is one', () => {
  expect(levelAt(picture, 5)).toBeUndefined()
  expect(levelAt(picture, 20)).toBe(30)
  expect(levelAt(picture, 99)).toBe(60)
})
