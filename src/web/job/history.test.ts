import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { begun, changed, redone, settled, undone } from './history.ts'

describe('history', () => {
  test('undo to the start, redo to the end, whatever was done', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.integer(), fc.constantFrom(undefined, 'drag', 'type')), { maxLength: 60 }), (changes) => {
        let history = begun<{ value: number }>({ value: 0 })
        const start = history.now
        for (const [value, merge] of changes) history = changed(history, { value }, 'change', merge)
        const end = history.now
        const steps = history.past.length
        for (let i = 0; i < steps; i++) history = undone(history)
        expect(history.now).toBe(start)
        expect(history.past).toHaveLength(0)
        for (let i = 0; i < steps; i++) history = redone(history)
        expect(history.now).toBe(end)
      }),
    )
  })

  test('a drag is one step, the next drag another', () => {
    let history = begun(0)
    for (const each of [1, 2, 3]) history = changed(history, each, 'drag', 'handle')
    history = settled(history)
    for (const each of [4, 5]) history = changed(history, each, 'drag', 'handle')
    expect(history.past.map(({ document }) => document)).toEqual([0, 3])
  })

  test('a drag that is taken back leaves no step', () => {
    const before = changed(begun('a'), 'b', 'one')
    const dragged = changed(changed(before, 'c', 'drag', 'handle'), 'd', 'drag', 'handle')
    expect(changed(dragged, 'b', 'drag', 'handle')).toEqual({ past: before.past, now: 'b', future: [] })
  })

  test('a change after undo forgets what was undone; the same document is no change', () => {
    const two = changed(changed(begun('a'), 'b', 'one'), 'c', 'two')
    const back = undone(two)
    expect(redone(changed(back, 'd', 'other')).now).toBe('d')
    expect(changed(back, 'b', 'nothing')).toBe(back)
  })
})
