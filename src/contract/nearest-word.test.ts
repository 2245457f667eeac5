import { expect, test } from 'vitest'
import { meant, nearestWord } from './nearest-word.ts'

const KEYS = ['shape', 'across', 'from', 'to', 'length', 'fillet', 'dish', 'bore', 'tip']

test.each([
  ['lenght', 'length'],
  ['Length', 'length'],
  ['acros', 'across'],
  ['lengthMm', 'length'],
  ['fillt', 'fillet'],
  ['form', 'from'],
  ['Shape ', 'shape'],
])('%s is near %s', (word, near) => {
  expect(nearestWord(word, KEYS)).toBe(near)
})

test.each(['colour', '', 'q', 'xx', 'z'.repeat(5000)])('%s is near nothing', (word) => {
  expect(nearestWord(word, KEYS)).toBeUndefined()
  expect(meant(word, KEYS)).toContain('known here: shape, across')
})
