import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { findingsOfStep, type PlacedFinding, placedFindings } from './finding-places.ts'
import { flagLayout } from './flag-layout.ts'
import { chiselForecast } from './forecast.test-data.ts'

const [finding] = chiselForecast().findings
if (finding === undefined) throw new Error('the forecast of the tests has findings')
const at = (index: number, heightMm?: number, end: 'top' | 'foot' = 'top'): PlacedFinding => ({
  finding,
  index,
  end,
  ...(heightMm === undefined ? {} : { heightMm }),
})
const column = { heightPx: 420, flagPx: 52, gapPx: 4, yOf: (xMm: number) => 380 - 2 * xMm }

describe('where findings stand', () => {
  test('at their height, else at that of their zone, the gravest first', () => {
    const placed = placedFindings(chiselForecast())
    expect(placed.map(({ index, heightMm }) => [index, heightMm])).toEqual([
      [1, 160],
      [0, 46],
      [2, undefined],
    ])
    expect(findingsOfStep(chiselForecast(), 3).map(({ index }) => index)).toEqual([0])
  })
})

describe('flags', () => {
  test('one alone stands straight beside its height', () => {
    const [flag] = flagLayout([at(0, 60)], column).flags
    expect((flag?.topPx ?? 0) + 26).toBeCloseTo(260)
    expect(flag?.anchorPx).toBe(260)
  })

  test('two at one height stand about it, in order', () => {
    const tops = flagLayout([at(0, 60), at(1, 61)], column).flags.map(({ placed, topPx }) => [placed.index, topPx + 26])
    expect(tops.map(([index]) => index)).toEqual([1, 0])
    expect((Number(tops[0]?.[1]) + Number(tops[1]?.[1])) / 2).toBeCloseTo(259)
  })

  test('those of the whole piece stand at the top, those of the bath at the foot', () => {
    const { flags } = flagLayout([at(0), at(1, 100), at(2, undefined, 'foot'), at(3)], column)
    expect(flags.map(({ placed }) => placed.index)).toEqual([0, 3, 1, 2])
    expect(flags.at(-1)?.topPx).toBe(420 - 52)
  })

  test('the least grave are left out when there is no room, and said', () => {
    const { flags, left, leftTopPx } = flagLayout(
      Array.from({ length: 12 }, (_, i) => at(i, i * 10)),
      column,
    )
    expect(flags).toHaveLength(6)
    expect(left.map(({ index }) => index)).toEqual([6, 7, 8, 9, 10, 11])
    expect(leftTopPx).toBe(368)
    expect(Math.max(...flags.map(({ topPx }) => topPx)) + 52).toBeLessThanOrEqual(368)
  })

  test('never overlap, never leave the column, keep the order of the heights', () => {
    const any = fc.record({
      heightMm: fc.option(fc.double({ min: 0, max: 190, noNaN: true }), { nil: undefined }),
      end: fc.constantFrom('top' as const, 'foot' as const),
    })
    fc.assert(
      fc.property(fc.array(any, { maxLength: 16 }), fc.integer({ min: 120, max: 900 }), (some, heightPx) => {
        const { flags, left, leftTopPx } = flagLayout(
          some.map(({ heightMm, end }, i) => at(i, heightMm, end)),
          { ...column, heightPx },
        )
        expect(flags.length + left.length).toBe(some.length)
        const tops = [...flags.map(({ topPx }) => topPx), ...(leftTopPx === undefined ? [] : [leftTopPx])]
        for (const [i, top] of tops.entries()) {
          expect(top).toBeGreaterThanOrEqual(-1e-6)
          expect(top + column.flagPx).toBeLessThanOrEqual(heightPx + 1e-6)
          expect((tops[i + 1] ?? Number.POSITIVE_INFINITY) - top).toBeGreaterThanOrEqual(column.flagPx + column.gapPx - 1e-6)
        }
        const anchors = flags.flatMap(({ anchorPx }) => (anchorPx === undefined ? [] : [anchorPx]))
        expect(anchors).toEqual(anchors.toSorted((a, b) => a - b))
      }),
    )
  })
})
