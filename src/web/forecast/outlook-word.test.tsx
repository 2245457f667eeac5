// @vitest-environment happy-dom
import { signal } from '@preact/signals'
import { cleanup, render, screen } from '@testing-library/preact'
import { afterEach, expect, test, vi } from 'vitest'
import type { Picture } from '#contract/picture-fields.ts'
import type { Problem } from '#contract/problems.ts'
import type { Bench } from '#web/bench/bench.ts'
import { chiselForecast } from '#web/findings/forecast.test-data.ts'
import type { Answered } from '#web/work/desk.ts'
import type { Progress } from '#web/work/messages.ts'
import { OutlookWord } from './outlook-word.tsx'

afterEach(cleanup)

function fakeBench() {
  const outlook = {
    answered: signal<Answered | undefined>(undefined),
    stale: signal(true),
    problems: signal<readonly Problem[]>([]),
    untreated: signal(false),
    progress: signal<Progress | undefined>(undefined),
    halted: signal(false),
    failed: signal<{ says: string; retry: () => void } | undefined>(undefined),
    halt: vi.fn(),
    resume: vi.fn(),
  }
  return { bench: { outlook } as unknown as Bench, outlook }
}

const answered: Answered = { job: {}, units: 'metric', fineness: 'normal', forecast: chiselForecast(), picture: {} as Picture }

test('from the first word to the full answer', async () => {
  const { bench, outlook } = fakeBench()
  render(<OutlookWord bench={bench} />)
  expect(screen.getByRole('status').textContent).toBe('working it out')
  expect(screen.getByRole('progressbar')).toBeTruthy()

  outlook.answered.value = { ...answered, fineness: 'sketch' }
  outlook.progress.value = { done: 2, total: 5, says: 'quench' }
  await screen.findByText('coarse, the band follows')
  const bar = screen.getByRole('progressbar') as HTMLProgressElement
  expect([bar.value, bar.max]).toEqual([2, 5])
  screen.getByRole('button', { name: 'Stop' }).click()
  expect(outlook.halt).toHaveBeenCalledOnce()

  outlook.progress.value = undefined
  outlook.answered.value = answered
  outlook.stale.value = false
  await screen.findByText('edge 58 to 64 HRC, may meet its aim: 83 in 100')
  expect(screen.queryByRole('progressbar')).toBeNull()
})

test('a failure is told at once, with a way to try again', async () => {
  const { bench, outlook } = fakeBench()
  const retry = vi.fn()
  render(<OutlookWord bench={bench} />)
  outlook.failed.value = { says: 'The forecast stopped. Your drawing is kept.', retry }
  expect((await screen.findByRole('alert')).textContent).toContain('Your drawing is kept.')
  screen.getByRole('button', { name: 'Try again' }).click()
  expect(retry).toHaveBeenCalledOnce()
})

test('faults, no treatment and a stop by hand have their words', async () => {
  const { bench, outlook } = fakeBench()
  render(<OutlookWord bench={bench} />)
  outlook.problems.value = [{ field: 'profile[0].across', says: 'write a length' }]
  await screen.findByText('one thing cannot be read; the forecast waits')
  outlook.problems.value = []
  outlook.untreated.value = true
  await screen.findByText('no treatment yet')
  outlook.untreated.value = false
  outlook.halted.value = true
  await screen.findByText('stopped; only the coarse answer stands')
  screen.getByRole('button', { name: 'Work it out' }).click()
  expect(outlook.resume).toHaveBeenCalledOnce()
})
