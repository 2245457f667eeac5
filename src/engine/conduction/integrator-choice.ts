import { envelopeOf } from './envelope.ts'
import type { MeshPlan } from './mesh-plan.ts'

/** The two ways of stepping: RKL2 with many cheap stages, TR-BDF2 with a few solves. */
export type Integrator = 'explicit' | 'implicit'

/** Passes of Newton and error solve in an average implicit step. */
const SOLVES_A_STEP = 6
/** Explicit stages are never more than this: beyond it rounding and rejected steps cost more than a factor. */
const MOST_STAGES = 141

/**
 * Stages beyond which an explicit step costs more than an implicit one on this mesh. Weights are nanoseconds an item, measured
 * with these kernels in Node 20 on one core; only their ratios matter.
 */
export function dearestStages(plan: MeshPlan): number {
  const n = plan.nodes
  const evaluation = 5 * n + 3 * plan.edgeTo.length + 12 * plan.surfaceNode.length
  const envelope = envelopeOf(plan)
  const solve = 2.4 * envelope.rowStart[n]! + 12 * n
  const factoring = 0.75 * envelope.work + 2 * envelope.rowStart[n]!
  return Math.min(MOST_STAGES, (SOLVES_A_STEP * (solve + evaluation) + factoring) / evaluation)
}

/** Stays with the integrator in use until the other is clearly cheaper. */
export function choose(stages: number, dearest: number, last: Integrator): Integrator {
  return stages > (last === 'explicit' ? 1.2 : 0.8) * dearest ? 'implicit' : 'explicit'
}
