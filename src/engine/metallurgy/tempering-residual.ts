import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import { hollomonJaffe } from './tempering-parameter.ts'
import type { TemperingSource } from './tempering-sources.ts'

/** How far published tables of one steel lie from the additive model: Vickers to add to it, by parameter [K]. */
export type TemperingResidual = (parameterK: number) => number

/** Width over which a table that ends hands over to the others [K of parameter]. */
const FADE_K = 500
/** A table from memory beside print counts so much: it says how the curve goes on where the print ends. */
const MEMORY_COUNTS = 0.25
const SAMPLED_FROM_K = 6000
const SAMPLED_EVERY_K = 50
const SAMPLES = 361

/**
 * Mean over `sources` of (table - `modelHv`), each linear between its points and held beyond its ends, where it counts less and less:
 * tables that overlap are pooled without a jump at the end of one. The model itself has the weight of `modelCounts` tables.
 */
export function poolResidual(
  sources: readonly TemperingSource[],
  constant: number,
  modelCounts: number,
  modelHv: (source: TemperingSource, parameterK: number) => number,
): TemperingResidual {
  const rows = sources.map(
    (source): Rows =>
      source.points
        .map(({ temperK, totalS, hv }) => {
          const parameterK = hollomonJaffe.evaluate({ temperatureK: temperK, durationS: totalS, constant })
          return [parameterK, hv - modelHv(source, parameterK)] as const
        })
        .sort((a, b) => a[0] - b[0]),
  )
  const ends = rows.map((table) => [table[0]![0], table[table.length - 1]![0]] as const)
  const printed = sources.some(({ basis }) => basis === 'published')
  const counts = sources.map(({ basis }) => (printed && basis === 'memory' ? MEMORY_COUNTS : 1))
  const pooled = (parameterK: number): number => {
    let sum = 0
    let weights = 0
    rows.forEach((table, i) => {
      const [from, to] = ends[i]!
      const outside = Math.max(0, from - parameterK, parameterK - to) / FADE_K
      const weight = counts[i]! / (1 + outside * outside * outside * outside)
      sum += weight * interpolate(table, parameterK)
      weights += weight
    })
    return sum / (weights + modelCounts)
  }
  // Sampled once, since an ensemble asks for it a hundred thousand times.
  const sampled: Rows = Array.from({ length: SAMPLES }, (_, i) => {
    const parameterK = SAMPLED_FROM_K + i * SAMPLED_EVERY_K
    return [parameterK, pooled(parameterK)] as const
  })
  return (parameterK) => interpolate(sampled, parameterK)
}
