// @vitest-environment happy-dom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, describe, expect, test } from 'vitest'
import type { Finding, Forecast } from '#contract/answers.ts'
import { CHISEL, type TestBench, testBench } from '#web/treatment/bench.test-data.ts'
import { FindingsList } from './findings-list.tsx'
import { chiselForecast } from './forecast.test-data.ts'
import { TriedBar } from './tried-bar.tsx'
import { tried, trySays } from './tries.ts'

afterEach(cleanup)

const says = 'quench 60 mm instead of 35 mm'
const deeper = { says, edits: [{ path: ['process', 3, 'depth'], value: '60 mm' }] }
const forecast = chiselForecast()
const withTry: Forecast = {
  ...forecast,
  findings: forecast.findings.map((finding): Finding => (finding.where?.x_mm === 46 ? { ...finding, try: [deeper] } : finding)),
}

describe('a remedy in the document', () => {
  test('changes the piece and leaves its shop to the device', () => {
    const { bench } = testBench(CHISEL)
    const after = tried(CHISEL, bench.composed.value, deeper)
    expect(after.process?.[3]?.depth).toBe('60 mm')
    expect(after).not.toHaveProperty('shop')
    expect(CHISEL.process?.[3]?.depth).toBe('35 mm')
  })

  test('of the gear changes a copy of the shop', () => {
    const { bench } = testBench(CHISEL)
    const warmer = { says: 'warm the tub', edits: [{ path: ['shop', 'baths', 0, 'temperature'], value: '40 °C' }] }
    const after = tried(CHISEL, bench.composed.value, warmer)
    expect(after.shop?.baths?.[0]).toMatchObject({ name: 'slack tub', temperature: '40 °C' })
    expect(bench.composed.value.shop?.baths?.[0]).not.toHaveProperty('temperature')
  })
})

test.each([
  ['Quench 60 mm deep', 'quench 60 mm deep'],
  ['S7 instead of W1', 'S7 instead of W1'],
  ['quench deeper', 'quench deeper'],
])('%s is tried as: %s', (written, says) => {
  expect(trySays({ says: written, edits: [] })).toBe(says)
})

describe('trying', () => {
  function offered(): TestBench {
    const made = testBench(CHISEL)
    render(
      <>
        <FindingsList bench={made.bench} />
        <TriedBar bench={made.bench} />
      </>,
    )
    act(() => made.answer(withTry))
    return made
  }
  const button = (name: string): HTMLElement => screen.getByRole('button', { name })

  test('tells what it comes to, and is taken back whole', () => {
    const { bench, answer } = offered()
    expect(screen.queryByRole('region', { name: 'Tried' })).toBeNull()
    fireEvent.click(button(`Try: ${says}`))
    expect(bench.job.value.process?.[3]?.depth).toBe('60 mm')
    expect(bench.undoSays.value).toBe(`Try: ${says}`)
    const bar = screen.getByRole('region', { name: 'Tried' })
    expect(bar.textContent).toContain('Working out what it comes to')
    expect(document.activeElement).toBe(bar)
    act(() =>
      answer({
        ...forecast,
        findings: forecast.findings.slice(1),
        zones: forecast.zones.map((zone) => ({ ...zone, chance: 0.5 })),
      }),
    )
    expect(bar.textContent).toContain('What was found is gone.')
    expect(bar.textContent).toContain('edge: chance 83 in 100 before, now 50 in 100')
    fireEvent.click(button('Take it back'))
    expect(bench.job.value).toBe(CHISEL)
    expect(screen.queryByRole('region', { name: 'Tried' })).toBeNull()
  })

  test('that helps nothing says that it is still there; kept, it stays and can be undone', () => {
    const { bench, answer } = offered()
    fireEvent.click(button(`Try: ${says}`))
    act(() => answer(forecast))
    expect(screen.getByText('Still there: The water stands at the shoulder.')).toBeTruthy()
    fireEvent.click(button('Keep it'))
    expect(screen.queryByRole('region', { name: 'Tried' })).toBeNull()
    expect(bench.job.value.process?.[3]?.depth).toBe('60 mm')
    act(() => bench.undo())
    expect(bench.job.value).toBe(CHISEL)
  })

  test('is kept by working on, and nothing is tried on a document that has moved on', () => {
    const { bench } = offered()
    fireEvent.click(button(`Try: ${says}`))
    expect(button(`Try: ${says}`)).toHaveProperty('disabled', true)
    act(() => bench.edit('name', (job) => ({ ...job, piece: 'other' })))
    expect(screen.queryByRole('region', { name: 'Tried' })).toBeNull()
  })

  test('that cannot be done says why', () => {
    const { fault } = offered()
    fireEvent.click(button(`Try: ${says}`))
    act(() => fault([{ field: 'process[3].depth', says: '"60 mm" is beyond the piece' }]))
    expect(screen.getByText('It cannot be done so: "60 mm" is beyond the piece')).toBeTruthy()
  })
})
