// @vitest-environment happy-dom
import { signal } from '@preact/signals'
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { System } from '#units/length.ts'
import type { Bench } from '#web/bench/bench.ts'
import { ProofPlace } from './proof-place.tsx'
import { MEMORY, RECORD } from './proof-record.ts'

// Some thousand marks: drawn once, and turned to other units once.
const units = signal<System>('metric')
beforeAll(() => {
  render(<ProofPlace bench={{ device: { units, ground: signal('paper') } } as unknown as Bench} />)
})
afterAll(cleanup)

function check(id: string): HTMLElement {
  const found = document.getElementById(id)
  if (found === null) throw new Error(`${id} is not on the page`)
  return found
}

test('every check is there with its sources, and those that may be shown with a picture', () => {
  for (const { id, name, committed, sources, whyMissed } of RECORD.checks) {
    const shown = check(id)
    expect(shown.querySelector('h3')?.textContent).toBe(name)
    expect(shown.querySelector('figure svg title')?.textContent).toBe(committed ? `${name}: published and forecast` : undefined)
    expect(shown.textContent).toContain(`Where the figures are from (${sources.length})`)
    expect(shown.textContent?.includes('Why it is missed.')).toBe(whyMissed !== undefined)
  }
})

test('the table says of every wish what it is off by, and leads to the check', () => {
  const links = [...document.querySelectorAll('.proof-reach a')].map((link) => link.getAttribute('href'))
  const wished = RECORD.checks.filter(({ wish }) => wish !== undefined)
  expect(links.toSorted()).toEqual(wished.map(({ id }) => `#${id}`).toSorted())
})

test('a list from memory opens with its figures, what would replace them and where they are used', async () => {
  const fires = MEMORY.find(({ name }) => name === 'Fires')
  const list = screen.getByText(`Fires (${fires?.figures.length})`).closest('details')
  expect(list?.querySelectorAll('li')).toHaveLength(0)
  if (list !== null) {
    list.open = true
    await fireEvent(list, new Event('toggle'))
  }
  expect(list?.querySelectorAll('li')).toHaveLength(fires?.figures.length ?? -1)
  expect(list?.textContent).toContain(fires?.replacedBy)
  expect(list?.textContent).toContain('src/engine/surface-heat/fire.ts')
})

test('the units are those of the device', async () => {
  expect(check('ac1-of-named-grades').textContent).toContain('°C')
  units.value = 'inch'
  await waitFor(() => expect(check('ac1-of-named-grades').textContent).toContain('°F'))
})
