import { expect, test } from 'vitest'
import { hardnessRangeText, parseHardness, parseHardnessRange } from './hardness.ts'

test.each([
  ['54..57 HRC', { scale: 'HRC', low: 54, high: 57, single: false }],
  ['52-55 HRC', { scale: 'HRC', low: 52, high: 55, single: false }],
  ['52–55HRC', { scale: 'HRC', low: 52, high: 55, single: false }],
  ['52 to 55 Rc', { scale: 'HRC', low: 52, high: 55, single: false }],
  ['HRC 52-55', { scale: 'HRC', low: 52, high: 55, single: false }],
  ['53.5 ± 1.5 HRC', { scale: 'HRC', low: 52, high: 55, single: false }],
  ['at most 40 HRC', { scale: 'HRC', high: 40, single: false }],
  ['≤ 40 HRC', { scale: 'HRC', high: 40, single: false }],
  ['40 HRC max', { scale: 'HRC', high: 40, single: false }],
  ['at least 52 HRC', { scale: 'HRC', low: 52, single: false }],
  ['52 HRC', { scale: 'HRC', low: 52, high: 52, single: true }],
  ['560 HV', { scale: 'HV', low: 560, high: 560, single: true }],
  ['560 HV10', { scale: 'HV', low: 560, high: 560, single: true }],
  ['250..302 HB', { scale: 'HBW', low: 250, high: 302, single: false }],
  ['at most 95 HRB', { scale: 'HRB', high: 95, single: false }],
])('%s', (typed, expected) => {
  expect(parseHardnessRange(typed)).toEqual({ ok: true, value: { typed, ...expected } })
})

test.each([
  ['52', 'scale'],
  [52, 'scale'],
  ['57..54 HRC', 'write 54..57 HRC'],
  ['75 HRC', 'outside the HRC scale'],
  ['hard HRC', 'no figure'],
  ['HRC', 'no figure'],
  ['52 HRC 560 HV', 'scale'],
  ['', 'figure'],
  [null, 'not a quantity'],
  ['x'.repeat(10_000), 'too long'],
])('%s is refused: %s', (typed, why) => {
  const reading = parseHardnessRange(typed)
  expect(reading.ok ? reading.value : reading.says).toContain(why)
})

test('a reading is one figure', () => {
  expect(parseHardness('58 HRC')).toEqual({ ok: true, value: { typed: '58 HRC', scale: 'HRC', value: 58 } })
  expect(parseHardness('54..58 HRC').ok).toBe(false)
})

test.each(['54..57 HRC', 'at most 40 HRC', 'at least 52.5 HRC', '200..240 HBW'])('%s is written as it was typed', (typed) => {
  const range = parseHardnessRange(typed)
  expect(range.ok && hardnessRangeText(range.value, range.value.scale)).toBe(typed)
})
