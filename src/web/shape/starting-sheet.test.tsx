// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, beforeAll, describe, expect, test } from 'vitest'
import { startingPieces } from '#contract/starting-pieces.ts'
import type { JobText } from '#web/job/job-text.ts'
import { CHISEL, testBench } from '#web/treatment/bench.test-data.ts'
import { madeOf, withShapeOf } from './starting-choice.ts'
import { StartingSheet } from './starting-sheet.tsx'

afterEach(cleanup)
beforeAll(() => {
  // The test page has no top layer.
  HTMLDialogElement.prototype.showModal = function showModal() {
    this.open = true
  }
})

describe('the shapes to start from', () => {
  test.each(['metric', 'inch'] as const)('each can be drawn and worked out as it stands (%s)', (units) => {
    const pieces = startingPieces(units)
    expect(pieces.length).toBeGreaterThan(5)
    for (const piece of pieces) expect(madeOf(piece, {}).problems, piece.kind).toBeUndefined()
  })

  test('one is chosen, a size is changed, and it is taken once', async () => {
    const { bench } = testBench(CHISEL)
    const taken: JobText[] = []
    render(<StartingSheet bench={bench} onChosen={(job) => taken.push(job)} onClose={() => undefined} />)
    fireEvent.click(await screen.findByRole('button', { name: 'cold chisel' }))
    const length = screen.getByLabelText('Length over all')
    const type = (value: string): void => {
      fireEvent.input(length, { target: { value } })
      fireEvent.keyDown(length, { key: 'Enter' })
    }
    const take = (): HTMLButtonElement => screen.getByRole('button', { name: 'Take this shape' })
    type('3 m')
    expect(length.getAttribute('aria-invalid')).toBe('true')
    expect(take().disabled).toBe(true)
    type('200 mm')
    fireEvent.click(take())
    expect(taken).toHaveLength(1)
    const lengths = taken[0]?.profile?.map((section) => Number.parseFloat(section.length)) ?? []
    expect(lengths.reduce((sum, each) => sum + each, 0)).toBeCloseTo(200, 6)
  })

  test('the shape, its zones and the struck end are replaced; steel and treatment stay and reach no further than the piece', () => {
    const deep: JobText = { ...CHISEL, process: [{ do: 'quench', in: 'slack tub', depth: '165 mm' }] }
    const next = withShapeOf(deep, {
      piece: 'stub',
      steel: { grade: '1045' },
      struck: false,
      profile: [{ shape: 'round', across: '20 mm', length: '80 mm' }],
    })
    expect(next).toMatchObject({ piece: 'cold chisel', steel: { grade: 'W1' }, struck: false })
    expect(next).not.toHaveProperty('zones')
    expect(next.process?.[0]).toMatchObject({ depth: '80 mm' })
  })
})
