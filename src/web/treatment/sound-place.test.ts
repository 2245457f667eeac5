import { expect, test } from 'vitest'
import { soundPlace } from './sound-place.ts'
import { stepSummary } from './step-summary.ts'

const steps = ['normalise', 'heat', 'carry', 'quench', 'temper'].map((each) => ({ do: each }))

test.each([
  ['normalise', 1],
  ['warm-bath', 1],
  ['carry', 2],
  ['quench', 3],
  ['run-colours', 4],
  ['temper', 5],
] as const)('a further %s goes to place %i', (kind, place) => {
  expect(soundPlace(steps, kind)).toBe(place)
})

test('the first heat goes before a bath that waits for it, a bath after the heat that nobody walks from', () => {
  expect(soundPlace([{ do: 'normalise' }, { do: 'quench' }, { do: 'temper' }], 'heat')).toBe(1)
  expect(soundPlace([{ do: 'heat' }, { do: 'temper' }], 'quench')).toBe(1)
  expect(soundPlace([], 'temper')).toBe(0)
})

test.each([
  [
    { do: 'heat', in: 'gas forge', to: '945 °C', hold: '40 min', part: { from: '0 mm', to: '100 mm' } },
    'gas forge, to 945 °C, hold 40 min, 0 mm to 100 mm',
  ],
  [{ do: 'normalise', in: 'coal fire', to: '830 °C', times: 3 }, 'coal fire, to 830 °C, 3 times'],
  [{ do: 'quench', in: 'slack tub', depth: 'whole', for: '1 min' }, 'slack tub, 1 min'],
  [{ do: 'quench', in: 'slack tub', depth: '30 mm' }, 'slack tub, 30 mm deep'],
  [{ do: 'temper', in: 'small oven', at: '450 °F', hold: '1 h', times: 2 }, 'small oven, 450 °F, hold 1 h, twice'],
  [{ do: 'run-colours', stop: 'dark straw' }, 'stop at dark straw'],
  [{ do: 'carry', for: '3 s' }, '3 s'],
] as const)('%o in one line', (step, says) => {
  expect(stepSummary(step)).toBe(says)
})
