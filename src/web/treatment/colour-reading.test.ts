import { expect, test } from 'vitest'
import { readColours } from './colour-reading.ts'

const colours = {
  reached_s: 50,
  edge_C: 280,
  within_K: 20,
  rise_K_per_s: 2.5,
  edge_HRC: 58,
  early_HRC_per_s: 0.3,
  late_HRC_per_s: 0.4,
  window_s: { from: 38.2, until: 64.4 },
}

test('the seconds there are, and how far off the eye is in seconds', () => {
  expect(readColours(colours, 'metric')).toEqual({
    short: '26 s to catch it: 38 s to 64 s after the lift',
    says: ['A colour tells the heat within 20 °C: some 8 s either way at the pace it has there.'],
    stopS: 50,
    fromS: 38.2,
    untilS: 64.4,
    lastS: 1.15 * 64.4,
  })
  expect(readColours(colours, 'inch')?.says[0]).toMatch(/within 36 °F/u)
})

test('a stop outside of it is told, with the colour to choose', () => {
  expect(readColours({ ...colours, reached_s: 30 }, 'metric')?.says[0]).toBe('The stop comes before that: choose a later colour.')
  expect(readColours({ ...colours, reached_s: 70 }, 'metric')?.says[0]).toBe('The stop comes after that: choose a paler colour.')
})

test('no hurry where it stays within its aim', () => {
  const reading = readColours({ ...colours, rise_K_per_s: 0, window_s: { from: 5, until: null } }, 'metric')
  expect(reading?.short).toBe('No hurry: good from 5 s after the lift on')
  expect(reading).not.toHaveProperty('untilS')
  expect(reading?.lastS).toBeGreaterThan(50)
})

test('nothing where the heat was not enough or nobody aims at anything', () => {
  const { window_s: _, ...unaimed } = colours
  expect(readColours({ ...colours, reached_s: null }, 'metric')).toBeUndefined()
  expect(readColours(unaimed, 'metric')).toBeUndefined()
  expect(readColours(undefined, 'metric')).toBeUndefined()
})
