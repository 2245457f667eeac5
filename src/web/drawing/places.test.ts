import { describe, expect, test } from 'vitest'
import type { Forecast } from '#contract/answers.ts'
import { examplePieces } from '#web/bench/example-shop.ts'
import type { JobText } from '#web/job/job-text.ts'
import { bodyOfText } from './body.ts'
import { figurePlaces } from './figure-places.ts'
import { handleAt, handlesOf } from './handles.ts'
import { heightsFor } from './heights.ts'
import { problemAt, problemPlaces } from './problem-places.ts'
import { bathBelow } from './water-lines.ts'
import { zoneBandPx, zoneBandsOf } from './zone-bands.ts'

const [bottomTool, punch, chisel] = examplePieces as readonly [JobText, JobText, JobText]
const body = bodyOfText(punch)
const heights = heightsFor(body.lengthMm, body.halfWidthMm, { widthPx: 150, heightPx: 700 })

describe('figures', () => {
  test('with room, every section has its figures, none over another', () => {
    const figures = figurePlaces(punch, body, heights, 90, undefined)
    expect(figures.map(({ shown }) => shown)).toEqual([
      '19 x 22 mm',
      '60 mm',
      '5 x 16 mm',
      '⌀ 22 mm',
      '110 mm',
      '⌀ 16 mm',
      '12 mm',
      '⌀ 22 mm',
    ])
    const sorted = figures.toSorted((a, b) => a.yPx - b.yPx)
    for (const [i, figure] of sorted.slice(1).entries())
      expect(figure.yPx - sorted[i]!.yPx).toBeGreaterThanOrEqual(figure.tallPx - 0.01)
    for (const { yPx } of figures) expect(yPx).toBeGreaterThan(0)
  })

  test('on a narrow drawing only the section in hand has figures', () => {
    expect(figurePlaces(punch, body, heights, 40, undefined)).toEqual([])
    const figures = figurePlaces(punch, body, heights, 40, { kind: 'section', index: 1 })
    expect(figures.map(({ shown }) => shown)).toEqual(['⌀ 22 mm', '110 mm'])
    expect(figures[0]?.tallPx).toBeGreaterThanOrEqual(44)
  })
})

describe('handles', () => {
  const handles = handlesOf(punch, body, [-20, -20])
  const of = (key: string) => handles.find((each) => each.key === key)

  test('an even section can be taken at both ends and in the middle, a taper at its ends', () => {
    expect(of('across 1 both')).toMatchObject({ rMm: 11, xMm: 115, perR: 2, says: 'across all along' })
    expect(of('across 2 both')).toBeUndefined()
    expect(of('across 0 from')?.says).toBe('thickness at the working end')
    expect(of('width 0 from')?.rMm).toBeLessThan(0)
    expect(of('across 2 to')?.says).toBe('across at the other end')
  })

  test('a length is held at its upper joint, a zone at its ends', () => {
    expect(of('length 1')).toMatchObject({ xMm: 170, perX: 1 })
    expect(of('zone-to 0')).toMatchObject({ xMm: 40, rMm: -20, of: 'Zone working end' })
  })

  test('a fillet is held where it runs out, on the thinner side; none where nothing stands out', () => {
    expect(handlesOf(bottomTool, bodyOfText(bottomTool), []).find(({ key }) => key === 'fillet 1')).toMatchObject({
      xMm: 39.6875 + 6,
      rMm: 9.525,
      perX: 1,
    })
    expect(of('fillet 2')).toBeUndefined()
  })

  test('no two handles have the same name', () => {
    const names = handles.map(({ of: whose, says }) => `${whose} ${says}`)
    expect(new Set(names).size).toBe(names.length)
  })

  test('a finger means the nearest one, and rather one of what is in hand', () => {
    const placed = [
      { xPx: 100, yPx: 100, favoured: false },
      { xPx: 110, yPx: 100, favoured: false },
      { xPx: 114, yPx: 100, favoured: true },
    ]
    expect(handleAt(placed, 101, 100)).toBe(0)
    expect(handleAt(placed, 108, 100)).toBe(2)
    expect(handleAt(placed, 200, 100)).toBeUndefined()
  })
})

describe('zones', () => {
  test('zones that lie over each other stand side by side', () => {
    const zones = [
      { name: 'a', from: '0 mm', to: '50 mm', aim: '50 HRC' },
      { name: 'b', from: '40 mm', to: '90 mm', aim: '50 HRC' },
      { name: 'c', from: '90 mm', to: '120 mm', aim: '50 HRC' },
    ]
    const bands = zoneBandsOf({ ...punch, zones }, 182)
    expect(bands.map(({ lane }) => lane)).toEqual([0, 1, 0])
    expect(zoneBandPx({ lane: 1 }, body, heights, 200).leftPx).toBeLessThan(zoneBandPx({ lane: 0 }, body, heights, 200).leftPx)
  })

  test('what the forecast assumed stands at the other end, and goes when it is said that nothing strikes it', () => {
    const forecast = {
      length_mm: 170,
      zones: [{ name: 'struck end', aim: 'at most 45 HRC', from_mm: 150, to_mm: 170, assumed: true }],
    } as unknown as Forecast
    expect(zoneBandsOf(chisel, 180, forecast).at(-1)).toMatchObject({ name: 'struck end', fromMm: 160, toMm: 180 })
    expect(zoneBandsOf({ ...chisel, struck: false }, 180, forecast)).toHaveLength(1)
  })
})

describe('faults', () => {
  const problems = [
    { field: 'profile[1].across', says: 'too thick' },
    { field: 'profile[2].tip.radius', says: 'too blunt' },
    { field: 'zones[0].to', says: 'beyond the piece' },
    { field: 'process[1].to', says: 'too hot' },
  ]
  test('each at its height; those of other sides are left to them', () => {
    expect(
      problemPlaces(problems, punch, body).map(({ xMm, selection }) => [Math.round(xMm), selection.kind, selection.index]),
    ).toEqual([
      [115, 'section', 1],
      [182, 'section', 2],
      [40, 'zone', 0],
    ])
  })
  test('each at its field', () => {
    expect(problemAt(problems, 'profile[2].tip')).toBe('too blunt')
    expect(problemAt(problems, 'profile[1].length')).toBeUndefined()
  })
})

describe('the bath below', () => {
  test('the last quench names it; lines are of liquids only', () => {
    expect(bathBelow(bottomTool)).toEqual({
      name: 'oil drum',
      lines: [{ step: 3, bath: 'oil drum', lineMm: null, typed: 'whole' }],
    })
    expect(bathBelow(punch)).toEqual({ air: 'still air', lines: [] })
    const dipped = bathBelow({ process: [{ do: 'quench', in: 'slack tub', depth: '1-1/2 in' }] })
    expect(dipped.lines[0]?.lineMm).toBeCloseTo(38.1, 9)
    expect(bathBelow({})).toEqual({ lines: [] })
  })
})
