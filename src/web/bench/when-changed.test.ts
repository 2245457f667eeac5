import { expect, test } from 'vitest'
import { whenChanged } from './when-changed.ts'

// Instants without a zone are those of the device's own clock.
const NOW = new Date('2025-03-14T15:30:00')
const said = (at: string) => whenChanged(at, NOW, 'en-GB')

test.each([
  ['2025-03-14T15:29:00', 'just now'],
  ['2025-03-14T15:08:00', '22 minutes ago'],
  ['2025-03-14T07:05:00', 'today, 07:05'],
  ['2025-03-13T23:50:00', 'yesterday, 23:50'],
  ['2025-03-12T15:30:00', '12 March'],
  ['2024-11-02T10:00:00', '2 November 2024'],
  ['2025-03-15T10:00:00', '15 March'],
  ['no date', 'some time ago'],
])('%s is %s', (at, words) => {
  expect(said(at)).toBe(words)
})
