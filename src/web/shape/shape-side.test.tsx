// @vitest-environment happy-dom
import { act, cleanup, fireEvent, render, screen, within } from '@testing-library/preact'
import { afterEach, describe, expect, test } from 'vitest'
import { chiselForecast } from '#web/findings/forecast.test-data.ts'
import type { JobText } from '#web/job/job-text.ts'
import { withOutcome } from '#web/outcome/outcome.test-data.ts'
import { CHISEL, type TestBench, testBench } from '#web/treatment/bench.test-data.ts'
import { ShapeSide } from './shape-side.tsx'

afterEach(cleanup)

function shown(job: JobText = CHISEL): TestBench {
  const made = testBench(job)
  render(<ShapeSide bench={made.bench} />)
  return made
}

const head = (name: RegExp): HTMLElement => screen.getByRole('button', { name })
const open = (name: RegExp): void => {
  fireEvent.click(head(name))
}
const type = (name: string | RegExp, value: string): void => {
  const field = screen.getByLabelText(name)
  fireEvent.input(field, { target: { value } })
  fireEvent.keyDown(field, { key: 'Enter' })
}

describe('the sections', () => {
  test('hang as they are drawn: the working end lowest', () => {
    shown()
    const heads = screen.getAllByRole('button').map(({ textContent }) => textContent ?? '')
    expect(heads.findIndex((each) => each.includes('Other end'))).toBeLessThan(
      heads.findIndex((each) => each.includes('Working end')),
    )
  })

  test('what is typed stands as typed, and one step takes it back', () => {
    const { bench } = shown()
    open(/Other end/u)
    expect(bench.selection.value).toEqual({ kind: 'section', index: 1 })
    type('Across flats', '3/4"')
    expect(bench.job.value.profile?.[1]?.across).toBe('3/4"')
    act(() => bench.undo())
    expect(bench.job.value).toBe(CHISEL)
  })

  test('arrow keys go by the fraction and are one step to undo', () => {
    const { bench } = shown()
    open(/Other end/u)
    const field = screen.getByLabelText('Across flats')
    fireEvent.keyDown(field, { key: 'ArrowUp' })
    fireEvent.keyDown(field, { key: 'ArrowUp' })
    expect(bench.job.value.profile?.[1]?.across).toBe('20 mm')
    act(() => bench.undo())
    expect(bench.job.value).toBe(CHISEL)
  })

  test('add, split, move and delete without a pointer', () => {
    const { bench } = shown()
    const shapes = (): readonly string[] | undefined => bench.job.value.profile?.map(({ shape, length }) => `${shape} ${length}`)
    open(/Other end/u)
    fireEvent.click(screen.getByRole('button', { name: 'Split' }))
    expect(shapes()).toEqual(['flat 45 mm', 'octagon 62.5 mm', 'octagon 62.5 mm'])
    fireEvent.click(screen.getByRole('button', { name: 'Add below' }))
    expect(shapes()).toEqual(['flat 45 mm', 'octagon 25 mm', 'octagon 62.5 mm', 'octagon 62.5 mm'])
    fireEvent.click(screen.getByRole('button', { name: 'Move up' }))
    expect(shapes()).toEqual(['flat 45 mm', 'octagon 62.5 mm', 'octagon 25 mm', 'octagon 62.5 mm'])
    expect(bench.selection.value).toEqual({ kind: 'section', index: 2 })
    fireEvent.click(screen.getByRole('button', { name: 'Delete' }))
    expect(shapes()).toEqual(['flat 45 mm', 'octagon 62.5 mm', 'octagon 62.5 mm'])
  })

  test('a dish is put in where there is an end face, with sizes to change', () => {
    const { bench } = shown()
    open(/Other end/u)
    fireEvent.click(screen.getByRole('button', { name: 'Add a dish' }))
    expect(bench.job.value.profile?.[1]?.dish).toBeDefined()
    type('Dish, depth', '1/16 in')
    expect(bench.job.value.profile?.[1]?.dish?.depth).toBe('1/16 in')
    fireEvent.click(screen.getByRole('button', { name: /Take out/u }))
    expect(bench.job.value.profile?.[1]).not.toHaveProperty('dish')
  })

  test('what is wrong is said at its field, of the whole piece on top', () => {
    const { fault } = shown()
    act(() =>
      fault([
        { field: 'profile[1].length', says: 'too short' },
        { field: 'profile', says: 'longer than 3 m' },
        { field: 'steel', says: 'no such steel' },
      ]),
    )
    open(/Other end/u)
    expect(screen.getByLabelText('Length').getAttribute('aria-invalid')).toBe('true')
    expect(screen.getByText('too short')).toBeTruthy()
    expect(within(screen.getByRole('alert')).getByText('longer than 3 m')).toBeTruthy()
    expect(screen.queryByText('no such steel')).toBeNull()
  })
})

describe('zones', () => {
  test('say what to grind off; opened, what comes of them', async () => {
    const { answer } = shown()
    act(() => answer(withOutcome(chiselForecast())))
    expect(head(/edge/u).textContent).toContain('grind 0.3 mm off')
    open(/edge/u)
    const outcome = within(await screen.findByRole('region', { name: 'What comes of edge' }))
    expect(outcome.getByText(/^Comes to/u).textContent).toMatch(/^Comes to 61 HRC \(\d+ to \d+\), from \d+ as quenched\./u)
    expect(outcome.getByText('Skin: grind 0.3 mm off; a file alone deceives')).toBeTruthy()
    expect(outcome.getByText('Corner 41, face 25, middle 22 HRC')).toBeTruthy()
    expect(outcome.getByText('Retained austenite: 16 in 100')).toBeTruthy()
    expect(outcome.getByRole('img', { name: /^Hardness by depth/u })).toBeTruthy()
    type('Aim', 'at least 52 HRC')
    expect(outcome.getByText(/^Comes to/u, { exact: false }).closest('p')?.textContent).toMatch(/^Before the last change: /u)
  })

  test('a new one lies on the section in hand', () => {
    const { bench } = shown()
    open(/Other end/u)
    fireEvent.click(screen.getByRole('button', { name: 'Add a zone on this section' }))
    expect(bench.job.value.zones?.[1]).toMatchObject({ name: 'other end', from: '45 mm', to: '170 mm' })
    expect(bench.selection.value).toEqual({ kind: 'zone', index: 1 })
  })

  test('its aim is typed, or stepped by a point', () => {
    const { bench } = shown()
    open(/edge/u)
    fireEvent.keyDown(screen.getByLabelText('Aim'), { key: 'ArrowDown' })
    expect(bench.job.value.zones?.[0]?.aim).toBe('53..58 HRC')
    type('Aim', 'at least 52 HRC')
    expect(bench.job.value.zones?.[0]?.aim).toBe('at least 52 HRC')
    fireEvent.click(screen.getByRole('button', { name: /Delete zone edge/u }))
    expect(bench.job.value).not.toHaveProperty('zones')
  })
})

describe('the struck end', () => {
  test('is asked about, and what the name lets one think is said', () => {
    const { bench } = shown()
    expect(screen.getByText(/taken as struck, since "chisel" stands in its name/u)).toBeTruthy()
    fireEvent.click(screen.getByLabelText('No'))
    expect(bench.job.value.struck).toBe(false)
    expect(screen.queryByText(/throws splinters/u)).toBeNull()
  })
})
