import { expect, test } from 'vitest'
import { stepTold } from './step-told.ts'

test('grain and carbide stand apart, how often it is done stays', () => {
  expect(
    stepTold(
      'Normalise: heat to 860 °C. About 200 HB then. Grain: ASTM 7.0, then 7.0, 7.6; so fine, it hardens perhaps 5 % less deep. The carbide lies in fine pearlite. Twice in all.',
    ),
  ).toEqual({
    says: 'Normalise: heat to 860 °C. About 200 HB then. Twice in all.',
    grain: {
      short: 'Grain after it: ASTM 7.6',
      says: 'Grain: ASTM 7.0, then 7.0, 7.6; so fine, it hardens perhaps 5 % less deep. The carbide lies in fine pearlite.',
    },
  })
  expect(stepTold('Anneal: slow. Grain: ASTM 7.0, then 8.1.').grain?.short).toBe('Grain after it: ASTM 8.1')
})

test('words without grain stay as they are', () => {
  expect(stepTold('To the quench in 3 s.')).toEqual({ says: 'To the quench in 3 s.' })
})
