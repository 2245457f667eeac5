import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { steppedTool } from './fixture.test-data.ts'
import { heightScaleFor, radiusAt } from './height-scale.ts'
import { brokenIntoLines, spreadLabels } from './label-places.ts'
import { cornersOf, hollowsOf, runsOf } from './outline-shape.ts'
import { clockTicks, stepClock } from './step-clock.ts'

const anyWishes = fc.array(
  fc.record({ atPx: fc.double({ min: -50, max: 450, noNaN: true }), tallPx: fc.double({ min: 8, max: 40, noNaN: true }) }),
  { maxLength: 12 },
)

describe('spreadLabels', () => {
  test('no two labels overlap, whatever they wish', () => {
    fc.assert(
      fc.property(anyWishes, (wishes) => {
        const placed = spreadLabels(wishes, 0, 400)
          .map((middle, i) => ({ middle, tall: wishes[i]!.tallPx }))
          .sort((a, b) => a.middle - b.middle)
        for (const [i, each] of placed.entries()) {
          const above = placed[i - 1]
          if (above !== undefined) expect(each.middle - above.middle).toBeGreaterThanOrEqual((each.tall + above.tall) / 2 - 1e-6)
        }
      }),
    )
  })

  test('labels that fit stay inside, and those with room stay where they wish', () => {
    fc.assert(
      fc.property(anyWishes, (wishes) => {
        fc.pre(wishes.reduce((sum, { tallPx }) => sum + tallPx, 0) <= 400)
        for (const [i, middle] of spreadLabels(wishes, 0, 400).entries()) {
          expect(middle - wishes[i]!.tallPx / 2).toBeGreaterThanOrEqual(-1e-6)
          expect(middle + wishes[i]!.tallPx / 2).toBeLessThanOrEqual(400 + 1e-6)
        }
      }),
    )
    expect(
      spreadLabels(
        [
          { atPx: 300, tallPx: 10 },
          { atPx: 70, tallPx: 10 },
        ],
        0,
        400,
      ),
    ).toEqual([300, 70])
  })
})

test('words are broken into lines no longer than asked, and cut where there are too many', () => {
  expect(brokenIntoLines('working end of the punch', 11, 4)).toEqual(['working end', 'of the', 'punch'])
  fc.assert(
    fc.property(fc.string({ maxLength: 80 }), fc.integer({ min: 6, max: 20 }), (text, letters) => {
      const lines = brokenIntoLines(text, letters, 3)
      expect(lines.length).toBeLessThanOrEqual(3)
      for (const line of lines) expect(line.length).toBeLessThanOrEqual(letters)
    }),
  )
})

describe('the outline as a draughtsman measures it', () => {
  const { outline_mm } = steppedTool()

  test('corners: both ends and the shoulder, not the points of the fillet or the dish', () => {
    expect([...new Set(cornersOf(outline_mm).map(([x]) => x))]).toEqual([0, 40, 100])
  })

  test('straight stretches: head and shank with their radii', () => {
    expect(runsOf(outline_mm)).toEqual([
      { fromMm: 0, toMm: 40, fromRadiusMm: 19, toRadiusMm: 19 },
      { fromMm: 46, toMm: 100, fromRadiusMm: 9.5, toRadiusMm: 9.5 },
    ])
  })

  test('the dish is the one hollow; a side cut into half millimetres measures the same', () => {
    expect(hollowsOf(outline_mm)).toHaveLength(1)
    const fine = outline_mm.flatMap(([x, r], i): [number, number][] => {
      const [x0, r0] = outline_mm[i - 1] ?? [x, r]
      const parts = Math.max(1, Math.ceil(Math.hypot(x - x0, r - r0) / 0.5))
      return Array.from({ length: parts }, (_, k): [number, number] => [
        x0 + ((k + 1) / parts) * (x - x0),
        r0 + ((k + 1) / parts) * (r - r0),
      ])
    })
    expect(cornersOf(fine).map(([x]) => Math.round(x))).toEqual(cornersOf(outline_mm).map(([x]) => x))
    expect(radiusAt(fine, 70)).toBeCloseTo(9.5, 9)
  })

  test('to scale along and across, and never larger than its room', () => {
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 400 }), fc.integer({ min: 60, max: 600 }), (acrossPx, tallPx) => {
        const scale = heightScaleFor(steppedTool(), { acrossPx, tallPx })
        expect(scale.pxPerMm * 38).toBeLessThanOrEqual(acrossPx + 1e-9)
        expect(scale.bottomPx - scale.topPx).toBeLessThanOrEqual(tallPx + 1e-9)
        expect(scale.y(0) - scale.y(100)).toBeCloseTo(100 * scale.pxPerMm, 9)
      }),
    )
  })
})

describe('stepClock', () => {
  const steps = steppedTool().steps
  const clock = stepClock(steps, 60, 1100, 28)

  test('time never runs backwards, and every step has its room', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 20_000, noNaN: true }), fc.double({ min: 0, max: 20_000, noNaN: true }), (a, b) => {
        expect(clock.x(Math.min(a, b))).toBeLessThanOrEqual(clock.x(Math.max(a, b)))
      }),
    )
    for (const { fromPx, toPx } of clock.spans) expect(toPx - fromPx).toBeGreaterThanOrEqual(28)
    expect(clock.spans.at(-1)?.toPx).toBeCloseTo(1100, 6)
  })

  test('a three-second walk and a four-hour temper both show', () => {
    const [walk, temper] = [clock.spans[2]!, clock.spans[4]!]
    expect(walk.toPx - walk.fromPx).toBeGreaterThan(40)
    expect((temper.toPx - temper.fromPx) / (walk.toPx - walk.fromPx)).toBeLessThan(8)
  })

  test('labels of ticks lie in their step and clear of each other', () => {
    for (const span of clock.spans) {
      const ticks = clockTicks(clock, span, () => 40).map(({ xPx }) => xPx)
      expect(ticks.length).toBeGreaterThan(0)
      for (const [i, x] of ticks.sort((a, b) => a - b).entries()) {
        expect(x - 20 > span.fromPx && x + 20 < span.toPx).toBe(true)
        if (i > 0) expect(x - ticks[i - 1]!).toBeGreaterThan(40)
      }
    }
  })
})
