import { expect, test } from 'vitest'
import type { Answered } from './desk.ts'
import { knownAnswers } from './known-answers.ts'

const answered = (piece: string, units: Answered['units'] = 'metric') =>
  ({ job: { piece }, units, fineness: 'normal', forecast: { piece }, picture: {} }) as unknown as Answered

test('an answer is found by what it answers, and belongs to the document that asks', () => {
  const known = knownAnswers(3)
  known.keep(answered('a'))
  const again = { piece: 'a' }
  expect(known.find(again, 'metric')?.job).toBe(again)
  expect(known.find(again, 'inch')).toBeUndefined()
  expect(known.find({ piece: 'b' }, 'metric')).toBeUndefined()
})

test('the one that was longest not asked for goes first', () => {
  const known = knownAnswers(2)
  known.keep(answered('a'))
  known.keep(answered('b'))
  known.find({ piece: 'a' }, 'metric')
  known.keep(answered('c'))
  expect(known.find({ piece: 'b' }, 'metric')).toBeUndefined()
  expect(known.find({ piece: 'a' }, 'metric')).toBeDefined()
  expect(known.find({ piece: 'c' }, 'metric')).toBeDefined()
})
