import { expect, test } from 'vitest'
import { randomStream } from '#engine/arithmetic/random.ts'
import { meshOf } from '#engine/geometry/axisymmetric-mesh.ts'
import { outlineFrom } from '#engine/geometry/outline.ts'
import { envelopeOf } from './envelope.ts'
import { envelopeMatrix, factor, solveWith } from './ldlt.ts'
import { meshPlan } from './mesh-plan.ts'

const plan = meshPlan(
  meshOf(
    outlineFrom(
      [
        [0, 0],
        [0, 8],
        [20, 8],
        [20, 5],
        [45, 5],
        [45, 0],
      ],
      0.001,
    ),
    'draft',
  ),
)
const n = plan.nodes

test('solves a diffusion matrix on a mesh: the product with the answer is the right-hand side', () => {
  const random = randomStream(11)
  const envelope = envelopeOf(plan)
  const matrix = envelopeMatrix(envelope)
  const diagonal = Float64Array.from({ length: n }, () => 0.1 + random.uniform())
  const weights = plan.edgeTo.map(() => random.uniform() * 100)
  const wanted = Float64Array.from({ length: n }, () => random.normal())
  // The right-hand side by edges, apart from the envelope.
  const rightSide = wanted.map((value, i) => diagonal[i]! * value)
  for (let i = 0; i < n; i++) {
    for (let edge = plan.edgeStart[i]!; edge < plan.edgeStart[i + 1]!; edge++) {
      const j = plan.edgeTo[edge]!
      const weight = weights[edge]!
      rightSide[i]! += weight * (wanted[i]! - wanted[j]!)
      rightSide[j]! += weight * (wanted[j]! - wanted[i]!)
      diagonal[i]! += weight
      diagonal[j]! += weight
      matrix.values[envelope.placeOfEdge[edge]!] = -weight
    }
  }
  for (let i = 0; i < n; i++) matrix.diagonal[envelope.rowOfNode[i]!] = diagonal[i]!
  expect(factor(matrix)).toBe(-1)
  const solution = new Float64Array(n)
  solveWith(matrix, rightSide, solution, new Float64Array(n))
  for (let i = 0; i < n; i++) expect(solution[i]!).toBeCloseTo(wanted[i]!, 9)
})

test('keeps the envelope of a long body narrow and names the row of a failed pivot', () => {
  const envelope = envelopeOf(plan)
  expect(envelope.rowStart[n]! / n).toBeLessThan(3 * Math.sqrt(n))
  const matrix = envelopeMatrix(envelope)
  matrix.diagonal.fill(1)
  matrix.diagonal[5] = -1
  expect(factor(matrix)).toBe(5)
})
