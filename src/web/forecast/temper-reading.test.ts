import { expect, test } from 'vitest'
import type { Figure } from '#contract/answers.ts'
import { ovenHeats, temperAt } from './temper-reading.ts'

const hrc = (value: number): Figure => ({ value, low: value - 3, high: value + 2, basis: 'model', source: 'invented for tests' })
const curve = {
  step: 1,
  hold_h: 1,
  times: 1,
  quenched_HRC: hrc(60),
  points: [150, 200, 300].map((temperature_C, i) => ({ temperature_C, hardness_HRC: hrc(60 - 4 * i) })),
  oven: { name: 'small oven', max_C: 250, reads_low_C: 8, swing_C: 5 },
}

test('between two points of the curve, straight', () => {
  expect(temperAt(curve, 250)).toEqual({ celsius: 250, hrc: 54, lowHrc: 51, highHrc: 56 })
  expect(temperAt(curve, 150)).toMatchObject({ hrc: 60 })
  expect(temperAt(curve, 149)).toBeUndefined()
  expect(temperAt(curve, 301)).toBeUndefined()
})

test('an oven that reads low is hotter than its dial', () => {
  const steps = [
    { do: 'quench', start_s: 0, end_s: 10, says: '', cautions: [] },
    { do: 'temper', start_s: 10, end_s: 20, says: '', cautions: [], at_C: 220 },
  ]
  expect(ovenHeats(curve, steps)).toEqual({ setC: 228, mostC: 258 })
  const { oven: _, ...flame } = curve
  expect(ovenHeats(flame, steps)).toEqual({ setC: 220 })
})
