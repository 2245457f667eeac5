import { describe, expect, test } from 'vitest'
import { examplePieces } from '#web/bench/example-shop.ts'
import type { JobText } from '#web/job/job-text.ts'
import { bodyOfText, fieldRadiusMm, trueRadiusMm } from './body.ts'
import { heightsFor } from './heights.ts'
import { halfAcrossMm, isMetal, sectionAt } from './metal.ts'
import { edgePath, halfPath } from './outline-path.ts'
import { heldStill } from './still-heights.ts'

const [bottomTool, punch, chisel] = examplePieces as readonly [JobText, JobText, JobText]

describe('the piece as drawn', () => {
  test('true sizes: a flat by its thickness, with its width beside it', () => {
    const body = bodyOfText(punch)
    expect(body.sections[0]).toMatchObject({ acrossMm: [5, 19], widthMm: [16, 22], fromMm: 0, lengthMm: 60 })
    expect(body.lengthMm).toBeCloseTo(182, 9)
    expect(body.halfWidthMm).toBeCloseTo(11, 9)
    expect(halfAcrossMm(body, 30)).toBeCloseTo(6, 6)
  })

  test('made once for each list of sections', () => {
    expect(bodyOfText(punch)).toBe(bodyOfText({ ...punch, piece: 'another name' }))
  })

  test('a section that cannot be read leaves the others where they are', () => {
    const body = bodyOfText({ ...punch, profile: punch.profile!.with(1, { ...punch.profile![1]!, across: 'thick' }) })
    expect(body.sections.map(({ sound }) => sound)).toEqual([true, false, true])
    expect(body.lengthMm).toBeCloseTo(182, 9)
    expect(body.outline).toBeUndefined()
  })

  test('metal is where there is metal: not in the dish, not off the piece', () => {
    const body = bodyOfText(bottomTool)
    expect(isMetal(body, 3, 0)).toBe(false)
    expect(isMetal(body, 3, 15)).toBe(true)
    expect(isMetal(body, 7, 0)).toBe(true)
    expect(isMetal(body, 80, -9)).toBe(true)
    expect(isMetal(body, 80, 12)).toBe(false)
    expect(isMetal(body, 200, 0)).toBe(false)
  })

  test('a joint belongs to the section above it', () => {
    expect(sectionAt(bodyOfText(punch), 60)).toBe(1)
    expect(sectionAt(bodyOfText(punch), 59.9)).toBe(0)
    expect(sectionAt(bodyOfText(punch), 200)).toBeUndefined()
  })

  test('fields lie on equivalent rounds; they are drawn in the true sizes, there and back', () => {
    const body = bodyOfText(chisel)
    const section = body.sections[1]!
    expect(section.equivalentMm[0]).toBeGreaterThan(section.acrossMm[0])
    expect(trueRadiusMm(body, 100, section.equivalentMm[0] / 2)).toBeCloseTo(section.acrossMm[0] / 2, 9)
    expect(fieldRadiusMm(body, 20, trueRadiusMm(body, 20, 4))).toBeCloseTo(4, 9)
    expect(trueRadiusMm(bodyOfText(bottomTool), 20, 7)).toBe(7)
  })
})

describe('paths', () => {
  const body = bodyOfText(bottomTool)
  const heights = heightsFor(body.lengthMm, body.halfWidthMm, { widthPx: 200, heightPx: 600 })

  test('the two halves mirror each other; the cut one has the dish', () => {
    const right = edgePath(body, body.outside, heights, { axisPx: 100, side: 1 })
    const left = edgePath(body, body.outside, heights, { axisPx: 100, side: -1 })
    expect(left.match(/A/gu)).toHaveLength(right.match(/A/gu)?.length ?? -1)
    expect(edgePath(body, body.outline, heights, { axisPx: 100, side: 1 }).match(/A/gu)).toHaveLength(2)
    const xs = (path: string): number[] => [...path.matchAll(/[ML ](-?[\d.]+) -?[\d.]+(?=[A-Z]|$)/gu)].map(([, x]) => Number(x))
    expect(Math.max(...xs(right)) + Math.min(...xs(left))).toBeCloseTo(200, 1)
  })

  test('a half is closed along the axis', () => {
    expect(halfPath(body, body.outline, heights, { axisPx: 100, side: 1 })).toMatch(/L100 [\d.]+L100 [\d.]+Z$/u)
    expect(halfPath({ lengthMm: 0, halfWidthMm: 1, sections: [] }, undefined, heights, { axisPx: 100, side: 1 })).toBe('')
  })

  test('while it is held, the picture keeps its scale', () => {
    const longer = heightsFor(300, body.halfWidthMm, { widthPx: 200, heightPx: 600 })
    const still = heldStill(heights, longer)
    expect(still.yOf(50)).toBeCloseTo(heights.yOf(50), 9)
    expect(still.xAt(still.yOf(120))).toBeCloseTo(120, 9)
    expect(still.lengthMm).toBe(300)
    expect(heldStill(heights, heights)).toBe(heights)
  })
})
