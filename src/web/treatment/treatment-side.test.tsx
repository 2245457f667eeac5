// @vitest-environment happy-dom
import { act, cleanup, fireEvent, render, screen, within } from '@testing-library/preact'
import { LocationProvider } from 'preact-iso'
import { afterEach, describe, expect, test } from 'vitest'
import { chiselForecast } from '#web/findings/forecast.test-data.ts'
import type { JobText } from '#web/job/job-text.ts'
import { CHISEL, type TestBench, testBench } from './bench.test-data.ts'
import { TreatmentSide } from './treatment-side.tsx'

afterEach(cleanup)

function shown(job: JobText = CHISEL): TestBench {
  const made = testBench(job)
  render(
    <LocationProvider>
      <TreatmentSide bench={made.bench} />
    </LocationProvider>,
  )
  return made
}

const row = (name: RegExp): HTMLElement => screen.getByRole('button', { name })
const order = ({ bench }: TestBench): readonly string[] | undefined => bench.job.value.process?.map((step) => step.do)

describe('the steps of a treatment', () => {
  test('stand in order, with their clock and what was found at them', () => {
    const { answer } = shown()
    act(() => answer(chiselForecast()))
    expect(row(/Quench slack tub, 35 mm deep, 2 min/u).textContent).toContain('after 2 h 23 min, 2 min')
    expect(within(row(/Quench/u)).getByRole('img', { name: 'Take care' })).toBeTruthy()
  })

  test('one that is touched opens, and the time line goes to its end', () => {
    const { bench, answer } = shown()
    act(() => answer(chiselForecast()))
    fireEvent.click(row(/Heat/u))
    expect(bench.selection.value).toEqual({ kind: 'step', index: 1 })
    expect(bench.instantS.value).toBe(8600)
    expect(screen.getByText('Mind the heat.')).toBeTruthy()
    fireEvent.click(row(/Heat/u))
    expect(bench.instantS.value).toBe(Number.POSITIVE_INFINITY)
  })

  test('are typed over and stepped with the arrow keys, all steps of one key one step to undo', () => {
    const { bench } = shown()
    fireEvent.click(row(/Temper/u))
    const at = screen.getByLabelText('At')
    fireEvent.keyDown(at, { key: 'ArrowUp' })
    fireEvent.keyDown(at, { key: 'ArrowUp' })
    expect(bench.job.value.process?.[4]?.at).toBe('230 °C')
    act(() => bench.undo())
    expect(bench.job.value).toEqual(CHISEL)
    fireEvent.input(at, { target: { value: '210 °C' } })
    fireEvent.change(at)
    expect(bench.job.value.process?.[4]?.at).toBe('210 °C')
  })

  test('take gear by the names of the shop, and part of the piece by its ends', () => {
    const { bench } = shown()
    fireEvent.click(row(/Quench/u))
    fireEvent.change(screen.getByLabelText('In'), { target: { value: 'still air' } })
    expect(bench.job.value.process?.[3]?.in).toBe('still air')
    fireEvent.click(row(/Heat/u))
    fireEvent.change(screen.getByLabelText('How much of it'), { target: { value: 'part' } })
    expect(bench.job.value.process?.[1]?.part).toEqual({ from: '0 mm', to: '85 mm' })
    fireEvent.change(screen.getByLabelText('How much of it'), { target: { value: 'all' } })
    expect(bench.job.value.process?.[1]).not.toHaveProperty('part')
  })

  test('offer the air about the piece and what it cools in; what counts unsaid is said and writes nothing', () => {
    const { bench } = shown()
    fireEvent.click(row(/Normalise/u))
    const air = screen.getByLabelText<HTMLSelectElement>('Air about it')
    expect(air.selectedOptions[0]?.textContent).toBe('as the fire: neutral')
    fireEvent.change(air, { target: { value: 'packed' } })
    expect(bench.job.value.process?.[0]?.atmosphere).toBe('packed')
    fireEvent.change(screen.getByLabelText('Air about it'), { target: { value: '' } })
    expect(bench.job.value.process?.[0]).not.toHaveProperty('atmosphere')
    fireEvent.change(screen.getByLabelText('Cool in'), { target: { value: 'vermiculite' } })
    expect(bench.job.value.process?.[0]?.cool).toBe('vermiculite')
    expect(row(/Normalise .*twice, cooled in vermiculite/u)).toBeTruthy()
  })

  test('are moved, taken out and put in where they belong', () => {
    const made = shown()
    fireEvent.click(row(/Normalise/u))
    fireEvent.click(screen.getByRole('button', { name: 'Later' }))
    expect(order(made)).toEqual(['heat', 'normalise', 'carry', 'quench', 'temper'])
    expect(made.bench.selection.value).toEqual({ kind: 'step', index: 1 })
    fireEvent.click(screen.getByRole('button', { name: 'Take out' }))
    expect(order(made)).toEqual(['heat', 'carry', 'quench', 'temper'])
    fireEvent.change(screen.getByLabelText('One more step'), { target: { value: 'normalise' } })
    fireEvent.click(screen.getByRole('button', { name: 'Put it in' }))
    expect(order(made)).toEqual(['normalise', 'heat', 'carry', 'quench', 'temper'])
  })

  test('say at their field what is wrong, and at the step what belongs to no field', () => {
    const { fault } = shown()
    fireEvent.click(row(/Temper/u))
    act(() =>
      fault([
        { field: 'process[4].at', says: '"hot": no figure in it' },
        { field: 'process[4]', says: 'temper: the piece is still hot from the heat' },
        { field: 'profile[0].length', says: 'missing' },
      ]),
    )
    expect(screen.getByLabelText('At').getAttribute('aria-invalid')).toBe('true')
    expect(screen.getByText('"hot": no figure in it')).toBeTruthy()
    expect(screen.getByText('temper: the piece is still hot from the heat')).toBeTruthy()
    expect(screen.getByText('profile[0].length: missing')).toBeTruthy()
  })

  test('tell what the last change costs', () => {
    const { bench, answer } = shown()
    const before = chiselForecast()
    act(() => answer(before))
    fireEvent.click(row(/Quench/u))
    const depth = screen.getByLabelText('How deep')
    fireEvent.input(depth, { target: { value: '60 mm' } })
    fireEvent.change(depth)
    expect(bench.job.value.process?.[3]?.depth).toBe('60 mm')
    act(() =>
      answer({
        ...before,
        findings: before.findings.slice(1),
        zones: before.zones.map((zone) => ({ ...zone, chance: zone.name === 'edge' ? 0.3 : zone.chance })),
      }),
    )
    const note = screen.getByText('The last change').closest('aside')
    expect(note?.textContent).toContain('Quench, how deep: 60 mm instead of 35 mm')
    expect(note?.textContent).toContain('edge: chance 83 in 100 before, now 30 in 100')
    expect(note?.textContent).toContain('Gone: The water stands at the shoulder.')
  })
})

describe('no treatment yet', () => {
  test('one is begun by hand with a heat, a walk, a bath and a temper', () => {
    const { process: _, ...bare } = CHISEL
    const made = shown(bare)
    expect(screen.getByText('No treatment yet')).toBeTruthy()
    fireEvent.click(screen.getByRole('button', { name: 'Write one by hand' }))
    expect(order(made)).toEqual(['heat', 'carry', 'quench', 'temper'])
    expect(made.bench.undoSays.value).toBe('write a treatment')
  })
})
