import { signal } from '@preact/signals'
import { expect, test, vi } from 'vitest'
import type { Answered } from '#web/work/desk.ts'
import { firstAnswer } from './first-answer.ts'

test('a sketch is not yet the first answer; the full one is', async () => {
  const answered = signal<Answered | undefined>()
  const done = vi.fn()
  const waiting = firstAnswer({ answered }, 60_000).then(done)
  answered.value = { fineness: 'sketch' } as Answered
  await Promise.resolve()
  expect(done).not.toHaveBeenCalled()
  answered.value = { fineness: 'normal' } as Answered
  await waiting
  expect(done).toHaveBeenCalledTimes(1)
})

test('where nothing is asked it does not wait for ever', async () => {
  await firstAnswer({ answered: signal(undefined) }, 5)
})
