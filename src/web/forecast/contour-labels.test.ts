import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type ContourLabel, contourLabels } from './contour-labels.ts'
import type { ContourLine } from './contours.ts'

const across = (level: number, yPx: number, fromPx: number, toPx: number): ContourLine => ({
  level,
  points: Float32Array.from(Array.from({ length: 20 }, (_, i) => [fromPx + ((toPx - fromPx) * i) / 19, yPx]).flat()),
  lengthPx: toPx - fromPx,
})
const room = (reachPx: number) => ({
  reachAt: (yPx: number) => (yPx >= 0 && yPx <= 400 ? reachPx : -1),
  textPx: (text: string) => 8 * text.length,
  heightPx: 16,
  textOf: (level: number) => String(level),
})
const overlap = (a: ContourLabel, b: ContourLabel): boolean =>
  Math.abs(a.xPx - b.xPx) < (a.widthPx + b.widthPx) / 2 && Math.abs(a.yPx - b.yPx) < (a.heightPx + b.heightPx) / 2

describe('figures on their lines', () => {
  test('in the cut half, on the line, one for each level', () => {
    const labels = contourLabels([across(500, 100, 0, 80), across(600, 200, 0, 80)], room(80))
    expect(labels.map(({ text }) => text)).toEqual(['500', '600'])
    for (const { xPx, widthPx } of labels) expect(xPx - widthPx / 2).toBeGreaterThan(0)
  })

  test('never over each other, however close the lines', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 10, max: 390 }), fc.integer({ min: 20, max: 90 })), { maxLength: 14 }),
        (list) => {
          const labels = contourLabels(
            list.map(([yPx, wide], i) => across(100 + i, yPx, 0, wide)),
            room(90),
          )
          for (const [i, label] of labels.entries()) {
            for (const other of labels.slice(i + 1)) expect(overlap(label, other)).toBe(false)
            expect(Math.abs(label.xPx) + label.widthPx / 2).toBeLessThanOrEqual(90)
          }
        },
      ),
    )
  })

  test('on a thin piece across the axis; on one that is thinner than the figure not at all', () => {
    const [label] = contourLabels([across(500, 100, 0, 18)], room(18))
    expect(Math.abs(label!.xPx) + label!.widthPx / 2).toBeLessThanOrEqual(18)
    expect(contourLabels([across(500, 100, 0, 18)], room(10))).toEqual([])
  })

  test('not where the metal ends', () => {
    expect(contourLabels([across(500, 398, 0, 80)], room(80))).toEqual([])
  })
})
