import { describe, expect, test } from 'vitest'
import { chiselForecast } from '#web/findings/forecast.test-data.ts'
import type { JobText } from '#web/job/job-text.ts'
import type { Answered } from '#web/work/desk.ts'
import { type Pair, turnOfPair, withAnswer } from './turns.ts'

const forecast = chiselForecast()
const answer = (job: JobText, fineness: Answered['fineness']): Answered => ({
  job,
  fineness,
  units: 'metric',
  forecast,
  picture: undefined as unknown as Answered['picture'],
})
const [first, second, third] = [{ piece: 'a' }, { piece: 'b' }, { piece: 'c' }] as const
const having = (...answers: readonly Answered[]): Pair => answers.reduce(withAnswer, {})
const told = (pair: Pair): readonly unknown[] | undefined => {
  const turn = turnOfPair(pair)
  return turn && [turn.before.job, turn.after.job, turn.rough]
}

describe('what a change came to', () => {
  test('nothing is told before something was changed', () => {
    expect(told(having(answer(first, 'sketch'), answer(first, 'normal')))).toBeUndefined()
  })

  test('sketches tell it at once, full answers replace them', () => {
    const known = [answer(first, 'sketch'), answer(first, 'normal')]
    expect(told(having(...known, answer(second, 'sketch')))).toEqual([first, second, true])
    expect(told(having(...known, answer(second, 'sketch'), answer(second, 'normal')))).toEqual([first, second, false])
  })

  test('a sketch and a full answer are never compared', () => {
    expect(told(having(answer(first, 'sketch'), answer(second, 'normal')))).toBeUndefined()
    expect(told(having(answer(first, 'sketch'), answer(second, 'sketch'), answer(second, 'normal')))).toEqual([
      first,
      second,
      true,
    ])
  })

  test('what is only passed through is not what a change is told against', () => {
    const pair = having(answer(first, 'sketch'), answer(first, 'normal'), answer(second, 'sketch'), answer(third, 'sketch'))
    expect(told(pair)).toEqual([first, third, true])
    expect(told(withAnswer(pair, answer(third, 'normal')))).toEqual([first, third, false])
  })

  test('the next change is told against the last one', () => {
    const pair = having(...[first, second, third].map((job) => answer(job, 'normal')))
    expect(told(pair)).toEqual([second, third, false])
  })
})
