import { type CaseAnswer, solveThermalCase } from './solve-case.ts'
import type { ThermalCase } from './thermal-case.ts'

/** An answer carried on from two meshes, with how far the carrying went at each probe and time [K]. */
export interface ExtrapolatedAnswer extends Omit<CaseAnswer, 'grade' | 'probes'> {
  readonly grade: 'extrapolated' | 'extrapolated-fine'
  readonly probes: readonly {
    readonly name: string
    readonly temperature_C: readonly number[]
    /** What was added to the answer of the finer mesh; about the error that it had. */
    readonly carried_K: readonly number[]
  }[]
}

/** Pairs of meshes to carry on from: the first is within 1 K on cases A, B and C, the second within 0.3 K in three times as long. */
const PAIRS = { extrapolated: ['draft', 'normal'], 'extrapolated-fine': ['normal', 'fine'] } as const

/**
 * Solves a case on a coarse and on a finer mesh and carries the answers on to cells of no size (Richardson): the scheme is of
 * second order, and in two dimensions the ratio of cell sizes is the root of the ratio of nodes.
 */
export function solveOnTwoMeshes(given: ThermalCase, toleranceK: number, pair: keyof typeof PAIRS): ExtrapolatedAnswer {
  const [coarseGrade, fineGrade] = PAIRS[pair]
  const coarse = solveThermalCase(given, { grade: coarseGrade, toleranceK })
  const fine = solveThermalCase(given, { grade: fineGrade, toleranceK })
  // A thin or tiny body may get nearly the same mesh twice; then the finer answer stands as it is.
  const share = fine.nodes > 1.2 * coarse.nodes ? 1 / (fine.nodes / coarse.nodes - 1) : 0
  return {
    ...fine,
    grade: pair,
    seconds: coarse.seconds + fine.seconds,
    meshSeconds: coarse.meshSeconds + fine.meshSeconds,
    probes: fine.probes.map(({ name, temperature_C }, p) => {
      const carried_K = temperature_C.map((t, i) => round(share * (t - coarse.probes[p]!.temperature_C[i]!)))
      return { name, temperature_C: temperature_C.map((t, i) => round(t + carried_K[i]!)), carried_K }
    }),
  }
}

function round(value: number): number {
  return Math.round(value * 1e4) / 1e4
}
