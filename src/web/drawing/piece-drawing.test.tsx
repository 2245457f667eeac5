// @vitest-environment happy-dom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, describe, expect, test } from 'vitest'
import type { Bench } from '#web/bench/bench.ts'
import { CHISEL, type TestBench, testBench } from '#web/treatment/bench.test-data.ts'
import { bodyOfText } from './body.ts'
import { heightsFor } from './heights.ts'
import { PieceDrawing } from './piece-drawing.tsx'

afterEach(cleanup)

function Stage({ bench, shaping }: { readonly bench: Bench; readonly shaping: boolean }) {
  const body = bodyOfText(bench.job.value)
  const heights = heightsFor(body.lengthMm, body.halfWidthMm, { widthPx: 150, heightPx: 600 })
  return <PieceDrawing bench={bench} body={body} heights={heights} widthPx={340} shaping={shaping} />
}

function shown(shaping = true): TestBench {
  const made = testBench(CHISEL)
  render(<Stage bench={made.bench} shaping={shaping} />)
  return made
}

const handle = (text: RegExp): HTMLElement => {
  return screen.getByRole('slider', { name: text })
}

describe('by keyboard', () => {
  test('arrows go by half a millimetre, with Shift by ten of them, one step to undo', () => {
    const { bench } = shown()
    handle(/across all along/u).focus()
    fireEvent.keyDown(handle(/across all along/u), { key: 'ArrowUp' })
    expect(handle(/across all along/u).getAttribute('aria-valuetext')).toBe('19.5 mm')
    fireEvent.keyDown(handle(/across all along/u), { key: 'ArrowUp', shiftKey: true })
    expect(bench.job.value.profile?.[1]?.across).toBe('24.5 mm')
    expect(bench.selection.value).toEqual({ kind: 'section', index: 1 })
    act(() => bench.undo())
    expect(bench.job.value).toBe(CHISEL)
  })

  test('by sixteenths where the shop works in inches', () => {
    const { bench } = shown()
    bench.device.units.value = 'inch'
    fireEvent.keyDown(handle(/across all along/u), { key: 'ArrowUp' })
    expect(bench.job.value.profile?.[1]?.across).toBe('3/4 in')
  })

  test('what stops a step is said at the handle', () => {
    const { bench } = shown()
    const edge = handle(/, upper end$/u)
    fireEvent.keyDown(edge, { key: 'ArrowDown', shiftKey: true })
    for (let i = 0; i < 5; i++) fireEvent.keyDown(handle(/, lower end$/u), { key: 'PageUp' })
    expect(bench.job.value.zones?.[0]).toMatchObject({ from: '14.5 mm', to: '15 mm' })
    expect(screen.getByText(/A zone has some length/u)).toBeTruthy()
  })

  test('Enter opens the figure for typing', () => {
    const { bench } = shown()
    fireEvent.keyDown(handle(/length, to its upper joint/u), { key: 'Enter' })
    const field = screen.getByRole('textbox')
    fireEvent.input(field, { target: { value: '1-3/4 in' } })
    fireEvent.keyDown(field, { key: 'Enter' })
    expect(bench.job.value.profile?.[0]?.length).toBe('1-3/4 in')
    expect(screen.queryByRole('textbox')).toBeNull()
  })

  test('a place in the metal is put and walked, and does not leave it', () => {
    const { bench } = shown(false)
    const place = (): HTMLElement => screen.getByRole('slider', { name: 'A place in the metal' })
    fireEvent.keyDown(place(), { key: 'Enter' })
    expect(bench.point.value?.xMm).toBeCloseTo(85, 6)
    fireEvent.keyDown(place(), { key: 'ArrowDown', shiftKey: true })
    expect(bench.point.value?.xMm).toBeCloseTo(75, 6)
    for (let i = 0; i < 30; i++) fireEvent.keyDown(place(), { key: 'ArrowRight' })
    expect(place().getAttribute('aria-valuetext')).toBe('75 mm from the working end, 9 mm from the middle')
    fireEvent.keyDown(place(), { key: 'Delete' })
    expect(bench.point.value).toBeUndefined()
  })
})

describe('figures', () => {
  test('a figure that is touched is typed over; Escape leaves it', () => {
    const { bench } = shown()
    fireEvent.click(screen.getByRole('button', { name: 'Section 2, size across, 19 mm' }))
    fireEvent.input(screen.getByRole('textbox'), { target: { value: '22 mm' } })
    fireEvent.keyDown(screen.getByRole('textbox'), { key: 'Escape' })
    expect(bench.job.value).toBe(CHISEL)
    fireEvent.click(screen.getByRole('button', { name: 'Aim of edge, 54..59 HRC' }))
    fireEvent.input(screen.getByRole('textbox'), { target: { value: '56..60 HRC' } })
    fireEvent.keyDown(screen.getByRole('textbox'), { key: 'Enter' })
    expect(bench.job.value.zones?.[0]?.aim).toBe('56..60 HRC')
  })

  test('when it is not shaped there are no handles, but the zones stay', () => {
    shown(false)
    expect(screen.getAllByRole('slider')).toHaveLength(1)
    expect(screen.getByText('54..59 HRC')).toBeTruthy()
  })

  test('a fault stands on the metal and leads to its section', () => {
    const { bench, fault } = shown()
    act(() => fault([{ field: 'profile[0].to', says: 'the thickness comes first' }]))
    fireEvent.click(screen.getByRole('button', { name: 'the thickness comes first' }))
    expect(bench.selection.value).toEqual({ kind: 'section', index: 0 })
  })
})
