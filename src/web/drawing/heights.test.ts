import { expect, test } from 'vitest'
import { heightsFor } from './heights.ts'

test('the working end hangs lowest, and heights go there and back', () => {
  const heights = heightsFor(200, 15, { widthPx: 200, heightPx: 600 })
  expect(heights.yOf(0)).toBeGreaterThan(heights.yOf(200))
  expect(heights.xAt(heights.yOf(70))).toBeCloseTo(70)
})

test('nothing leaves the box, long and thin or short and wide', () => {
  for (const [length, half] of [
    [400, 4],
    [30, 80],
  ] as const) {
    const heights = heightsFor(length, half, { widthPx: 180, heightPx: 500 })
    expect(heights.yOf(length)).toBeGreaterThan(0)
    expect(heights.yOf(0)).toBeLessThan(500)
    expect(2 * half * heights.pxPerMm).toBeLessThanOrEqual(180)
  }
})
