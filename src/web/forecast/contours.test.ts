import { describe, expect, test } from 'vitest'
import { contourLines, roundLevels } from './contours.ts'
import { squareMesh } from './square-mesh.test-data.ts'

describe('lines of equal value', () => {
  const mesh = squareMesh(10)

  test('over a slope they are straight, from edge to edge, where the value is', () => {
    const lines = contourLines(mesh, mesh.xPx, [25])
    expect(lines).toHaveLength(1)
    expect(lines[0]?.lengthPx).toBeCloseTo(100)
    for (let i = 0; i < lines[0]!.points.length; i += 2) expect(lines[0]?.points[i]).toBeCloseTo(25)
  })

  test('about a hill they close', () => {
    const hill = Float32Array.from(mesh.xPx, (x, i) => 50 - Math.hypot(x - 50, mesh.yPx[i]! - 50))
    const [ring] = contourLines(mesh, hill, [20])
    const { points } = ring!
    expect(points[0]).toBeCloseTo(points[points.length - 2]!)
    expect(points[1]).toBeCloseTo(points[points.length - 1]!)
    expect(ring!.lengthPx).toBeGreaterThan(170)
    expect(ring!.lengthPx).toBeLessThan(2 * Math.PI * 31)
  })

  test('a level that runs through corners gives no loose ends', () => {
    const lines = contourLines(mesh, mesh.xPx, [30])
    expect(lines.reduce((sum, { lengthPx }) => sum + lengthPx, 0)).toBeCloseTo(100)
  })

  test('none where the value is not', () => {
    expect(contourLines(mesh, mesh.xPx, [-5, 120])).toEqual([])
  })
})

describe('round figures', () => {
  test('the finest step that gives few enough', () => {
    expect(roundLevels(669, 854, 6, [2, 5, 10, 20, 50, 100])).toEqual([700, 750, 800, 850])
    expect(roundLevels(51.2, 52.4, 6, [1, 2, 5])).toEqual([52])
  })

  test('none between equal figures, or where even the coarsest step gives too many', () => {
    expect(roundLevels(20, 20, 6, [1, 2])).toEqual([])
    expect(roundLevels(0, 1000, 6, [1, 2])).toEqual([])
  })
})
