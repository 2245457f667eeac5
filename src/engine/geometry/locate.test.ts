import { expect, test } from 'vitest'
import { meshOf } from './axisymmetric-mesh.ts'
import { locateIn } from './locate.ts'
import { outlineOf } from './outline.ts'

const bar = meshOf(
  outlineOf({ sections: [{ shape: 'round', from: { acrossM: 0.03 }, to: { acrossM: 0.018 }, lengthM: 0.07 }] }),
  'draft',
)

function read(xM: number, rM: number): { xM: number; rM: number } {
  const { nodes, weights } = locateIn(bar, xM, rM)
  expect(weights[0] + weights[1] + weights[2]).toBeCloseTo(1, 12)
  expect(Math.min(...weights)).toBeGreaterThanOrEqual(0)
  const of = (values: Float64Array) => nodes.reduce((sum, node, k) => sum + weights[k]! * values[node]!, 0)
  return { xM: of(bar.xM), rM: of(bar.rM) }
}

test('a linear field is read exactly inside', () => {
  for (const [xM, rM] of [
    [0.013, 0.0071],
    [0.052, 0.0002],
    [0.033, 0],
  ] as const) {
    const there = read(xM, rM)
    expect(there.xM).toBeCloseTo(xM, 10)
    expect(there.rM).toBeCloseTo(rM, 10)
  }
})

test('outside it reads the nearest place on the surface, below the axis the mirror image', () => {
  const beyond = read(0.08, 0.004)
  expect(beyond.xM).toBeCloseTo(0.07, 10)
  expect(beyond.rM).toBeCloseTo(0.004, 10)
  expect(read(0.02, -0.003).rM).toBeCloseTo(0.003, 10)
})

test('what is no place is refused', () => {
  expect(() => locateIn(bar, Number.NaN, 0)).toThrow('no point')
})
