import { expect, test } from 'vitest'
import type { Check } from '#report/validation-record.ts'
import { checkIn, errorText } from './check-in-units.ts'

const all = {
  name: 'all',
  n: 1,
  meanAbsolute: 10,
  bias: -10,
  worst: { label: 'a hinge', published: 700, error: -10 },
}
const check: Check = {
  id: 'ac1',
  name: 'Ac1',
  unit: 'K',
  scale: 'degC',
  relative: false,
  arithmetic: false,
  committed: true,
  aim: 12,
  tolerance: 1,
  says: '',
  all,
  families: [],
  groups: [],
  provenances: [],
  sources: [],
  betweenSources: { n: 1, meanAbsolute: 5, widest: { what: 'a hinge', one: 700, other: 705 } },
  rows: [{ label: 'a hinge', group: '', provenance: '', source: '', published: 700, forecast: 690, low: 680, high: 700 }],
}

test('temperatures read in degrees Celsius: differences as they are', () => {
  const shown = checkIn(check, 'metric')
  expect([shown.unit, shown.valueUnit, shown.aim, shown.all.meanAbsolute]).toEqual(['°C', '°C', 12, 10])
})

test('and in Fahrenheit: figures turned, differences only stretched', () => {
  const shown = checkIn(check, 'inch')
  expect([shown.unit, shown.aim, shown.all.meanAbsolute, shown.all.bias]).toEqual(['°F', 21.6, 18, -18])
  expect(shown.rows).toEqual([{ label: 'a hinge', published: 1292, forecast: 1274, low: 1256, high: 1292 }])
  expect([shown.all.worst?.published, shown.all.worst?.error]).toEqual([1292, -18])
  expect(shown.betweenSources).toEqual({ n: 1, meanAbsolute: 9, widest: { what: 'a hinge', one: 1292, other: 1301 } })
  expect(check.all).toBe(all)
})

test('lengths go to inches, hardness stays', () => {
  const length = checkIn({ ...check, scale: 'mm', unit: 'mm' }, 'inch')
  expect([length.unit, length.all.meanAbsolute]).toEqual(['in', 10 / 25.4])
  const hardness = checkIn({ ...check, scale: 'HRC', unit: 'HRC' }, 'inch')
  expect([hardness.unit, hardness.valueUnit, hardness.all.meanAbsolute]).toEqual(['HRC', 'HRC', 10])
})

test('an error has as many digits as tell something', () => {
  expect([errorText(12.4, '°C'), errorText(2.95, 'HRC'), errorText(0.107, 'in'), errorText(120.4, 'mm')]).toEqual([
    '12 °C',
    '3.0 HRC',
    '0.11 in',
    '120 mm',
  ])
})
