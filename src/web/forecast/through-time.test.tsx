// @vitest-environment happy-dom
import { signal } from '@preact/signals'
import { cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, expect, test, vi } from 'vitest'
import type { Picture } from '#contract/picture-fields.ts'
import type { Bench, Field } from '#web/bench/bench.ts'
import { chiselForecast } from '#web/findings/forecast.test-data.ts'
import type { Answered } from '#web/work/desk.ts'
import { ThroughTime } from './through-time.tsx'

vi.mock('./plot.tsx', () => ({ Plot: () => null }))
afterEach(cleanup)

const answered: Answered = { job: {}, units: 'metric', fineness: 'normal', forecast: chiselForecast(), picture: {} as Picture }

function shown() {
  const bench = {
    device: { units: signal('metric'), ground: signal('paper') },
    point: signal(undefined),
    selection: signal({ kind: 'step', index: 3 }),
    instantS: signal(Number.POSITIVE_INFINITY),
    field: signal<Field>('tempered'),
  }
  const view = render(<ThroughTime bench={bench as unknown as Bench} answered={answered} widthPx={900} children={null} />)
  return { bench, view, cursor: screen.getByRole('slider', { name: 'Time in the treatment' }) }
}

test('the cursor tells the step, how long into it, and the figures', async () => {
  const { bench, cursor } = shown()
  expect(cursor.getAttribute('aria-valuetext')).toBe('at the end, skin 220 °C, middle 220 °C')
  bench.instantS.value = 8601.5
  await screen.findByText('walk, 1.5 s in')
  expect(cursor.getAttribute('aria-valuetext')).toBe('walk, 1.5 s in, skin 775 °C, middle 779 °C')
})

test('moved by keys, the cut-away shows the heat of that time', () => {
  const { bench, cursor } = shown()
  fireEvent.keyDown(cursor, { key: 'PageDown' })
  expect(bench.instantS.value).toBe(9000)
  expect(bench.field.value).toBe('heat')
  fireEvent.keyDown(cursor, { key: 'Home' })
  expect(bench.instantS.value).toBe(0)
  fireEvent.keyDown(cursor, { key: 'End' })
  expect(bench.instantS.value).toBe(Number.POSITIVE_INFINITY)
})

test('every step has its stretch, and the one in hand is marked', () => {
  const { view } = shown()
  const blocks = [...view.container.querySelectorAll('.time-block')]
  expect(blocks.map((block) => block.firstElementChild?.textContent)).toEqual([
    'normalise',
    'heat',
    'walk',
    'slack tub',
    'air',
    'temper',
  ])
  expect(blocks.filter((block) => block.classList.contains('chosen')).map((block) => block.getAttribute('title'))).toEqual([
    'slack tub 2 min',
  ])
})
