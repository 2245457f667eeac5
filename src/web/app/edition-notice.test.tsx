// @vitest-environment happy-dom
import { signal } from '@preact/signals'
import { act, cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, expect, test, vi } from 'vitest'
import { EditionNotice } from './edition-notice.tsx'
import type { Editions } from './editions.ts'

afterEach(cleanup)

function editions() {
  const offlineReady = signal(false)
  const newer = signal<(() => void) | undefined>()
  const said = vi.fn(() => {
    offlineReady.value = false
    newer.value = undefined
  })
  return { offlineReady, newer, said } satisfies Editions
}

test('nothing is said until there is something to say', () => {
  const { container } = render(<EditionNotice editions={editions()} />)
  expect(container.textContent).toBe('')
})

test('a newer edition waits until it is asked for', () => {
  const known = editions()
  const open = vi.fn()
  render(<EditionNotice editions={known} />)
  act(() => {
    known.newer.value = open
  })
  expect(screen.getByRole('status').textContent).toContain('A newer Quenchwright is ready')
  expect(open).not.toHaveBeenCalled()
  fireEvent.click(screen.getByRole('button', { name: 'Use it' }))
  expect(open).toHaveBeenCalledTimes(1)
  fireEvent.click(screen.getByRole('button', { name: 'Later' }))
  expect(screen.queryByRole('status')).toBeNull()
})

test('that it works without network is said once, and put aside', () => {
  const known = editions()
  render(<EditionNotice editions={known} />)
  act(() => {
    known.offlineReady.value = true
  })
  expect(screen.getByRole('status').textContent).toContain('works without network')
  fireEvent.click(screen.getByRole('button', { name: 'Good' }))
  expect(screen.queryByRole('status')).toBeNull()
})
