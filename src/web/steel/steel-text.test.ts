import fc from 'fast-check'
import { expect, test } from 'vitest'
import { steelText, steelTyped } from './steel-text.ts'

test.each([
  ['S7', { grade: 'S7' }],
  ['drill rod', { grade: 'drill rod' }],
  ['C 0.40, Mn 0.85', { analysis: { C: 0.4, Mn: 0.85 } }],
  ['C=0.40; Mn=0.85', { analysis: { C: 0.4, Mn: 0.85 } }],
  ['unknown', { unknown: {} }],
])('%s', (typed, steel) => {
  expect(steelTyped(typed)).toEqual(steel)
})

test('an analysis is read again from its line', () => {
  const element = fc.constantFrom('C', 'Mn', 'Si', 'Cr', 'Mo', 'V', 'W')
  const share = fc.integer({ min: 0, max: 1800 }).map((n) => n / 100)
  fc.assert(
    fc.property(fc.dictionary(element, share, { minKeys: 1 }), (analysis) => {
      expect(steelTyped(steelText({ analysis }))).toEqual({ analysis: { ...analysis } })
    }),
  )
})
