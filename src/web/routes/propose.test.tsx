// @vitest-environment happy-dom
import { act, cleanup, fireEvent, render, screen, within } from '@testing-library/preact'
import { LocationProvider } from 'preact-iso'
import { afterEach, describe, expect, test, vi } from 'vitest'
import type { Routes } from '#contract/answers.ts'
import { chiselForecast } from '#web/findings/forecast.test-data.ts'
import type { JobText } from '#web/job/job-text.ts'
import { CHISEL, type TestBench, testBench } from '#web/treatment/bench.test-data.ts'
import { Propose } from './propose.tsx'

afterEach(cleanup)

const route = (says: string, depth: string, chance: number): Routes['routes'][number] => ({
  says,
  process: (CHISEL.process ?? []).map((step) => (step.do === 'quench' ? { ...step, depth } : { ...step })),
  forecast: chiselForecast(),
  chance,
  holdsGear: true,
})
const routes: Routes = {
  routes: [route('dipped 30 mm', '30 mm', 0.68), route('quenched whole', 'whole', 0.41)],
  refused: [{ says: 'brine', because: 'fiercer than it needs' }],
}

function shown(job: JobText = CHISEL): TestBench {
  const made = testBench(job)
  render(
    <LocationProvider>
      <Propose bench={made.bench} main />
    </LocationProvider>,
  )
  return made
}

async function proposed(reply: unknown, job?: JobText): Promise<TestBench> {
  const made = shown(job)
  act(() => made.answer(chiselForecast()))
  fireEvent.click(screen.getByRole('button', { name: 'Propose a treatment' }))
  await act(async () => made.questions[0]?.answer(reply))
  return made
}

describe('routes', () => {
  test('without an aim nothing is proposed, and where to give one is said', () => {
    const { zones: _, ...aimless } = CHISEL
    shown(aimless)
    expect(screen.queryByRole('button', { name: 'Propose a treatment' })).toBeNull()
    expect(screen.getByRole('button', { name: 'Give an aim in Shape' })).toBeTruthy()
  })

  test('show how far the planner is, and can be called off', () => {
    const { questions } = shown()
    fireEvent.click(screen.getByRole('button', { name: 'Propose a treatment' }))
    act(() => questions[0]?.progress({ done: 2, total: 5, says: 'oil drum' }))
    expect(screen.getByText('Looking for routes: oil drum ...')).toBeTruthy()
    fireEvent.click(screen.getByRole('button', { name: 'Stop looking' }))
    expect(screen.getByRole('button', { name: 'Propose a treatment' })).toBeTruthy()
  })

  test('stand side by side with the treatment of the bench, best first', async () => {
    await proposed(routes)
    const columns = screen.getAllByRole('article')
    expect(columns.map((each) => each.getAttribute('aria-label'))).toEqual(['As it stands', 'Route 1', 'Route 2'])
    expect(columns[0]?.textContent).toContain('at best 83 in 100')
    expect(columns[1]?.textContent).toContain('68 in 100')
    expect(columns[1]?.textContent).toContain('slack tub: 30 mm deep')
    expect(screen.getByText(/fiercer than it needs/u)).toBeTruthy()
  })

  test('one is taken as one step to undo, and the others stay at hand until they are put away', async () => {
    const { bench } = await proposed(routes)
    const second = screen.getByRole('article', { name: 'Route 2' })
    fireEvent.click(within(second).getByRole('button', { name: 'Take this one' }))
    expect(bench.job.value.process?.[3]?.depth).toBe('whole')
    expect(bench.undoSays.value).toBe('take route 2: quenched whole')
    fireEvent.click(screen.getByRole('button', { name: 'Compare the routes (2)' }))
    expect(screen.getByRole('article', { name: 'Route 2' }).textContent).toContain('it stands on the bench')
    act(() => bench.undo())
    expect(bench.job.value).toEqual(CHISEL)
    for (const button of screen.getAllByRole('button', { name: 'Put them away' }).slice(0, 1)) fireEvent.click(button)
    expect(screen.getByRole('button', { name: 'Propose a treatment' })).toBeTruthy()
  })

  test('that were proposed for another shape say so', async () => {
    const { bench } = await proposed(routes)
    act(() => bench.edit('length', (job) => ({ ...job, profile: [] })))
    expect(screen.getByText('The piece, its steel or the shop has changed since these were proposed.')).toBeTruthy()
  })

  test('where none holds, why and the nearest stand there', async () => {
    await proposed({ routes: [], none: { because: 'The bath is too slow.', nearest: 'Brine would do.' }, refused: [] })
    expect(screen.getByText('The bath is too slow.')).toBeTruthy()
    expect(screen.getByText('Brine would do.')).toBeTruthy()
  })

  test('a job at fault and a planner that ends say so', async () => {
    const made = await proposed({ kind: 'problems', problems: [{ field: 'steel', says: 'missing' }] })
    expect(screen.getByText('steel: missing')).toBeTruthy()
    fireEvent.click(screen.getByRole('button', { name: 'Propose a treatment' }))
    const told = vi.spyOn(console, 'error').mockImplementation(() => undefined)
    await act(async () => made.questions[1]?.fail(new Error('ended')))
    expect(told).toHaveBeenCalledOnce()
    told.mockRestore()
    expect(screen.getByRole('alert').textContent).toContain('The planner stopped')
  })
})
