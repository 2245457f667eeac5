import { expect, test } from 'vitest'
import { struckWord } from './struck-tool.ts'

test.each([
  ['slot punch', 'punch'],
  ['Cold Chisel, 3/4', 'chisel'],
  ['eye drift', 'drift'],
  ['hot set', 'set'],
  ['cold sett', 'sett'],
  ['rivet set', 'set'],
  ['snap', 'snap'],
  ['top fuller', 'fuller'],
  ['flatter', 'flatter'],
  ['swage for 1/2 in round', 'swage'],
  ['butcher', 'butcher'],
  ['touch-mark stamp', 'stamp'],
  ['set hammer', 'set hammer'],
  ['chisels for the class', 'chisels'],
  ['centre punches', 'punches'],
])('%s is struck', (piece, word) => {
  expect(struckWord(piece)).toBe(word)
})

test.each([
  'bottom fuller',
  'bottom swage',
  'hot-cut hardy',
  'hardie chisel',
  'tongs',
  'cross-peen hammer',
  'flat spring',
  'spring swage',
  'kitchen knife',
  'bick',
  'settle hinge',
  '',
])('%s is not', (piece) => {
  expect(struckWord(piece)).toBeUndefined()
})
