import { expect, test } from 'vitest'
import { answeredIndex, clockSays, otherProblems, stepProblems } from './step-outlook.ts'

const [heat, quench, temper] = [{ do: 'heat' }, { do: 'quench' }, { do: 'temper' }] as const

test('a step finds itself in the last answer, changed or moved', () => {
  const answered = [heat, quench, temper]
  expect(answeredIndex(answered, [heat, { do: 'quench', depth: '60 mm' }, temper], 1)).toBe(1)
  expect(answeredIndex(answered, [{ do: 'normalise' }, heat, quench, temper], 2)).toBe(1)
  expect(answeredIndex(answered, [{ do: 'normalise' }, heat, quench, temper], 0)).toBeUndefined()
  expect(answeredIndex(answered, [], 0)).toBeUndefined()
})

test('clock of a step', () => {
  const step = { do: 'heat', says: '', cautions: [] }
  expect(clockSays({ ...step, start_s: 0, end_s: 600 })).toBe('at the start, 10 min')
  expect(clockSays({ ...step, start_s: 10_976, end_s: 10_979 })).toBe('after 3 h 3 min, 3 s')
})

test('a problem stands at its field, else at its step, else apart', () => {
  const problems = [
    { field: 'process[1].to', says: 'no heat for steel' },
    { field: 'process[1].with.at', says: 'too hot' },
    { field: 'process[1]', says: 'the piece is left hot; say how it cools, as { do: quench, in: still air }' },
    { field: 'process[10].to', says: 'another step' },
    { field: 'profile[0].across', says: 'missing' },
  ]
  const { ofField, ofStep } = stepProblems(problems, 1, ['to', 'hold'])
  expect([...ofField]).toEqual([['to', 'no heat for steel']])
  expect(ofStep).toEqual(['too hot', 'the piece is left hot; say how it cools'])
  expect(otherProblems(problems).map(({ field }) => field)).toEqual(['profile[0].across'])
})
