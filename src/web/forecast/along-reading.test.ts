import { expect, test } from 'vitest'
import { bodyOfText } from '#web/drawing/body.ts'
import { chiselForecast } from '#web/findings/forecast.test-data.ts'
import { alongAt, alongPoints, heightNow, hrcSays } from './along-reading.ts'

const points = alongPoints(chiselForecast(), 'skin', 'tempered', (xMm) => xMm)

test('hardness at a height, straight between the places that were worked out', () => {
  expect(alongAt(points, 10)).toEqual({ xMm: 10, hrc: 61, lowHrc: 58, highHrc: 64 })
  expect(alongAt(points, -4)).toMatchObject({ hrc: 62 })
  expect(alongAt(points, 999)).toMatchObject({ hrc: 15 })
  expect(alongAt([], 10)).toBeUndefined()
})

test('under 20 HRC the scale is no measure', () => {
  expect(hrcSays({ xMm: 0, hrc: 15, lowHrc: 12, highHrc: 18 })).toBe('soft, under 20 HRC')
  expect(hrcSays({ xMm: 0, hrc: 24, lowHrc: 18, highHrc: 29 })).toBe('24 HRC (under 20 to 29)')
  expect(hrcSays({ xMm: 0, hrc: 52.4, lowHrc: 47.6, highHrc: 56 })).toBe('52 HRC (48 to 56)')
})

test('heights follow a piece that is being drawn longer', () => {
  const before = bodyOfText({ profile: [{ shape: 'round', across: '20 mm', length: '100 mm' }] })
  const after = bodyOfText({ profile: [{ shape: 'round', across: '20 mm', length: '150 mm' }] })
  expect(heightNow(before, before)(40)).toBe(40)
  expect(heightNow(before, after)(40)).toBe(60)
})
