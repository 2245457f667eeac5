// @vitest-environment happy-dom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, describe, expect, test } from 'vitest'
import { heightsFor } from '#web/drawing/heights.ts'
import { CHISEL, testBench } from '#web/treatment/bench.test-data.ts'
import { FindingFlags } from './finding-flags.tsx'
import { followed } from './follow.ts'
import { chiselForecast } from './forecast.test-data.ts'
import { openTrial, outcomeOf } from './trial.ts'

afterEach(cleanup)

const heights = heightsFor(170, 10, { widthPx: 200, heightPx: 500 })
const forecast = chiselForecast()

describe('flags beside the piece', () => {
  test('are opened with their figures and closed again, and the focus goes back to the flag', () => {
    const { bench, answer } = testBench(CHISEL)
    act(() => answer(forecast))
    render(<FindingFlags bench={bench} heights={heights} />)
    const flag = screen.getByRole('button', { name: /The struck end is too hard/u })
    expect(screen.queryByText(/It should be softer than the hammer/u)).toBeNull()
    fireEvent.click(flag)
    expect(bench.selection.value).toEqual({ kind: 'finding', index: 1 })
    const panel = screen.getByRole('dialog')
    expect(panel.textContent).toContain('It should be softer than the hammer: 45 HRC at most.')
    expect(panel.textContent).toContain('Eye protection for you and for all near.')
    expect(document.activeElement).toBe(panel)
    fireEvent.keyDown(panel, { key: 'Escape' })
    expect(bench.selection.value).toBeUndefined()
    expect(document.activeElement).toBe(flag)
  })

  test('a quiet forecast says so', () => {
    const { bench, answer } = testBench(CHISEL)
    act(() => answer({ ...forecast, findings: [] }))
    render(<FindingFlags bench={bench} heights={heights} />)
    expect(screen.getByText('Nothing stands against it.')).toBeTruthy()
  })

  test('no treatment, nothing found', () => {
    const { process: _, ...bare } = CHISEL
    render(<FindingFlags bench={testBench(bare).bench} heights={heights} />)
    expect(screen.getByText(/Without a treatment nothing is found/u)).toBeTruthy()
  })
})

describe('a finding in the next forecast', () => {
  test('is followed to its new number, and let go when it is not raised any more', () => {
    const next = { ...forecast, findings: forecast.findings.toReversed() }
    expect(followed(0, forecast, next)).toBe(2)
    expect(followed(1, forecast, { ...forecast, findings: forecast.findings.slice(0, 1) })).toBeUndefined()
  })
})

describe('what a trial came to', () => {
  test('the finding is gone or still there', () => {
    const [finding] = forecast.findings
    if (finding === undefined) throw new Error('the forecast of the tests has findings')
    expect(outcomeOf({ finding, of: forecast }, forecast).gone).toBe(false)
    expect(outcomeOf({ finding, of: forecast }, { ...forecast, findings: forecast.findings.slice(1) }).gone).toBe(true)
    // One that was shown from a sketch stands in no full answer as the same object.
    expect(outcomeOf({ finding: { ...finding }, of: forecast }, forecast).gone).toBe(false)
  })

  test('nothing is tried until something is', () => {
    expect(openTrial(testBench(CHISEL).bench).value).toBeUndefined()
  })
})
