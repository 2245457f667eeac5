// @vitest-environment happy-dom
import { cleanup, render, screen } from '@testing-library/preact'
import { afterEach, expect, test, vi } from 'vitest'
import { later, loadTheRest } from './later.tsx'

afterEach(() => {
  cleanup()
  vi.restoreAllMocks()
})

test('a part is fetched when it is first shown, once, and gets what it is given', async () => {
  const load = vi.fn(async () => ({ says }: { says: string }) => <p>{says}</p>)
  const Part = later(load)
  expect(load).not.toHaveBeenCalled()
  render(<Part says="the rack" />)
  expect(screen.getByText('Fetching this part ...')).toBeTruthy()
  await screen.findByText('the rack')
  render(<Part says="the rack again" />)
  expect(screen.getByText('the rack again')).toBeTruthy()
  expect(load).toHaveBeenCalledTimes(1)
})

test('a part that cannot be fetched says so and how to go on', async () => {
  vi.spyOn(console, 'error').mockImplementation(() => undefined)
  const Part = later(async () => {
    throw new TypeError('Failed to fetch dynamically imported module')
  })
  render(<Part />)
  expect((await screen.findByRole('alert')).textContent).toMatch(/could not be fetched.*bench is kept/u)
  expect(screen.getByRole('button', { name: 'Open the page anew' })).toBeTruthy()
})

test('the rest is fetched in its order, each once', async () => {
  const order: string[] = []
  const part = (name: string) =>
    later(async () => {
      order.push(name)
      return () => null
    })
  const First = part('first')
  part('second')
  render(<First />)
  await vi.waitFor(() => expect(order).toEqual(['first']))
  await loadTheRest()
  expect(order).toEqual(['first', 'second'])
})
