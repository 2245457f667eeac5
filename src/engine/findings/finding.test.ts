import { expect, test } from 'vitest'
import { type EngineFinding, inOrder } from './finding.ts'
import { IN_METRIC, timeInWords } from './wording.ts'

const finding = (change: Partial<EngineFinding>): EngineFinding => ({
  id: 'overheated',
  severity: 'warn',
  says: 'Too hot.',
  because: 'It is.',
  remedy: 'Cooler.',
  ...change,
})

test('of two for one cause and place the worse one stays', () => {
  const found = inOrder([finding({ where: { step: 3 } }), finding({ where: { step: 3 }, severity: 'stop' })])
  expect(found).toEqual([finding({ where: { step: 3 }, severity: 'stop' })])
})

test('other steps, zones and places are findings of their own', () => {
  const places = [{ step: 1 }, { step: 2 }, { step: 2, zone: 'face' }, { step: 2, xM: 0.011 }, { step: 2, xM: 0.017 }]
  expect(inOrder(places.map((where) => finding({ where })))).toHaveLength(5)
})

test('worst first, then in the order of the steps, those without a step last', () => {
  const found = inOrder([
    finding({ severity: 'note', where: { step: 0 } }),
    finding({}),
    finding({ where: { step: 7 } }),
    finding({ where: { step: 2 } }),
    finding({ severity: 'stop', where: { step: 9 } }),
  ])
  expect(found.map(({ severity, where }) => [severity, where?.step])).toEqual([
    ['stop', 9],
    ['warn', 2],
    ['warn', 7],
    ['warn', undefined],
    ['note', 0],
  ])
})

test('quantities as a smith writes them', () => {
  expect(IN_METRIC.temperature(1063.4)).toBe('790 °C')
  expect(IN_METRIC.length(0.0025)).toBe('2.5 mm')
  expect(IN_METRIC.length(0.1822)).toBe('182 mm')
  expect(IN_METRIC.hardness(56.7)).toBe('57 HRC')
  expect(IN_METRIC.volume(0.0163)).toBe('16 L')
  expect([3.25, 45, 125, 7200, 5400, 12600].map(timeInWords)).toEqual([
    '3.3 s',
    '45 s',
    '2 min',
    '2 h',
    '1 h 30 min',
    '3 h 30 min',
  ])
})
