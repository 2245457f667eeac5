import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Field, regionAbove, roundLevels } from './contours.ts'

/** A square of `cells` by `cells` on 0..1, two triangles a cell. */
function square(cells: number, of: (x: number, y: number) => number): Field {
  const x: number[] = []
  const y: number[] = []
  const triangles: number[] = []
  for (let i = 0; i <= cells; i++)
    for (let j = 0; j <= cells; j++) {
      x.push(i / cells)
      y.push(j / cells)
      if (i === cells || j === cells) continue
      const a = i * (cells + 1) + j
      triangles.push(a, a + 1, a + cells + 1, a + 1, a + cells + 2, a + cells + 1)
    }
  return { x, y, triangles, value: x.map((each, i) => of(each, y[i] ?? 0)) }
}

function area(loop: readonly (readonly [number, number])[]): number {
  return loop.reduce((sum, [x, y], i) => {
    const [x1, y1] = loop[(i + 1) % loop.length] ?? [0, 0]
    return sum + (x * y1 - x1 * y) / 2
  }, 0)
}

const areaOf = (loops: readonly (readonly (readonly [number, number])[])[]) =>
  Math.abs(loops.reduce((sum, loop) => sum + area(loop), 0))

describe('regionAbove', () => {
  test('a plane: the part above the level has the area of geometry, and its contour is the straight line', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.95, noNaN: true }), (level) => {
        const { loops, lines } = regionAbove(
          square(7, (x) => x),
          level,
        )
        expect(areaOf(loops)).toBeCloseTo(1 - level, 9)
        expect(lines).toHaveLength(1)
        for (const [x] of lines.flat()) expect(x).toBeCloseTo(level, 9)
      }),
    )
  })

  test('a level below everything gives the whole outline and no contour; above everything nothing', () => {
    const field = square(5, (x, y) => x + y)
    expect(areaOf(regionAbove(field, -1).loops)).toBeCloseTo(1, 9)
    expect(regionAbove(field, -1).lines).toEqual([])
    expect(regionAbove(field, 3).loops).toEqual([])
  })

  test('a hill in the middle gives one closed line', () => {
    const { lines, loops } = regionAbove(
      square(20, (x, y) => 1 - Math.hypot(x - 0.5, y - 0.5)),
      0.7,
    )
    expect(lines).toHaveLength(1)
    expect(lines[0]?.[0]).toEqual(lines[0]?.at(-1))
    expect(areaOf(loops)).toBeCloseTo(Math.PI * 0.09, 2) // 20 cells: the polygon lies inside the circle by 1 %
  })

  test('triangles given clockwise make no difference', () => {
    const field = square(6, (x, y) => x * y)
    const turned = {
      ...field,
      triangles: field.triangles.flatMap((_, i, all) => (i % 3 === 0 ? [all[i]!, all[i + 2]!, all[i + 1]!] : [])),
    }
    expect(areaOf(regionAbove(turned, 0.3).loops)).toBeCloseTo(areaOf(regionAbove(field, 0.3).loops), 9)
  })
})

test('levels are few, round and strictly between', () => {
  expect(roundLevels(24.2, 49.1)).toEqual([25, 30, 35, 40, 45])
  expect(roundLevels(55.2, 58.4)).toEqual([56, 57, 58])
  fc.assert(
    fc.property(fc.double({ min: 0, max: 66, noNaN: true }), fc.double({ min: 0, max: 40, noNaN: true }), (low, span) => {
      const levels = roundLevels(low, low + span)
      expect(levels.length).toBeLessThanOrEqual(5)
      for (const level of levels) {
        expect(Number.isInteger(level)).toBe(true)
        expect(level > low && level < low + span).toBe(true)
      }
    }),
  )
})
