import { type CaseAnswer, solveThermalCase } from './solve-case.ts'
import type { ThermalCase } from './thermal-case.ts'

/** An answer carried on from two meshes, with how far the carrying went at each probe and time [K]. */
export interface ExtrapolatedAnswer extends Omit<CaseAnswer, 'grade' | 'probes'> {
  readonly grade: 'extrapolated'
  readonly probes: readonly {
    readonly name: string
    readonly temperature_C: readonly number[]
    /** What was added to the answer of the fine mesh; about the error that it had. */
    readonly carried_K: readonly number[]
  }[]
}

/**
 * Solves a case on the normal and on the fine mesh and carries the answers on to cells of no size (Richardson): the scheme is of
 * second order, and in two dimensions the ratio of cell sizes is the root of the ratio of nodes.
 */
export function solveOnTwoMeshes(given: ThermalCase, toleranceK: number): ExtrapolatedAnswer {
  const normal = solveThermalCase(given, { grade: 'normal', toleranceK })
  const fine = solveThermalCase(given, { grade: 'fine', toleranceK })
  // A thin or tiny body may get nearly the same mesh twice; then the fine answer stands as it is.
  const share = fine.nodes > 1.2 * normal.nodes ? 1 / (fine.nodes / normal.nodes - 1) : 0
  return {
    ...fine,
    grade: 'extrapolated',
    seconds: normal.seconds + fine.seconds,
    meshSeconds: normal.meshSeconds + fine.meshSeconds,
    probes: fine.probes.map(({ name, temperature_C }, p) => {
      const carried_K = temperature_C.map((t, i) => round(share * (t - normal.probes[p]!.temperature_C[i]!)))
      return { name, temperature_C: temperature_C.map((t, i) => round(t + carried_K[i]!)), carried_K }
    }),
  }
}

function round(value: number): number {
  return Math.round(value * 1e4) / 1e4
}
