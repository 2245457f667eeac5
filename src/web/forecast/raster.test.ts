import { describe, expect, test } from 'vitest'
import { paintSkin, paintValues, reachOf, valueImage } from './raster.ts'
import type { Scale } from './scales.ts'
import { squareMesh } from './square-mesh.test-data.ts'

const mesh = squareMesh(10)
const size = { width: 120, height: 110 }

describe('values over pixels', () => {
  test('are linear between the corners and leave no seam', () => {
    const image = valueImage(mesh, mesh.xPx, size)
    for (let y = 0; y < 100; y++) for (let x = 0; x < 100; x++) expect(image.values[y * 120 + x]).toBeCloseTo(x + 0.5, 3)
    expect(image.values[50 * 120 + 110]).toBeNaN()
    expect(image.values[105 * 120 + 50]).toBeNaN()
  })

  test('of unlike kinds: the nearest counts', () => {
    const kinds = Float32Array.from(mesh.xPx, (x) => (x < 50 ? 0 : 3))
    const image = valueImage(mesh, kinds, size, 'nearest')
    expect(new Set(image.values.filter((value) => !Number.isNaN(value)))).toEqual(new Set([0, 3]))
  })

  test('what lies beyond the picture is left out', () => {
    expect(() => valueImage(mesh, mesh.xPx, { width: 30, height: 20 })).not.toThrow()
  })
})

test('the reach of every row', () => {
  const reach = reachOf(valueImage(mesh, mesh.xPx, size))
  expect(reach[50]).toBe(99)
  expect(reach[108]).toBe(-1)
})

test('colours follow the values, and beyond the ends of a scale its last colour stands', () => {
  const scale: Scale = { low: 20, high: 60, ramp: Uint32Array.from({ length: 256 }, (_, i) => i + 1) }
  const image = valueImage(mesh, mesh.xPx, size)
  const pixels = new Uint32Array(size.width * size.height)
  paintValues(image, scale, pixels)
  const row = 50 * 120
  expect(pixels[row + 5]).toBe(1)
  expect(pixels[row + 40]).toBeGreaterThan(120)
  expect(pixels[row + 90]).toBe(256)
  expect(pixels[row + 110]).toBe(0)
  const skin = new Uint32Array(size.width * size.height)
  paintSkin(image, reachOf(image), scale, skin)
  expect(skin[row]).toBe(256)
  expect(skin[row + 99]).toBe(256)
  expect(skin[row + 100]).toBe(0)
})
