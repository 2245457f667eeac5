import { runStage } from '#engine/conduction/stage.ts'
import { meshOf } from '#engine/geometry/axisymmetric-mesh.ts'
import type { MeshGrade } from '#engine/geometry/mesh.ts'
import type { ThermalCase } from './thermal-case.ts'

export interface CaseAnswer {
  readonly name: string
  /** Of the solve, after the mesh and before the answer is written: the compiler's warming up is in it. */
  readonly seconds: number
  readonly steps: number
  readonly nodes: number
  readonly probes: readonly { readonly name: string; readonly temperature_C: readonly number[] }[]
  readonly meshSeconds: number
  readonly grade: MeshGrade
  readonly tolerance_K: number
  readonly method: string
  /** Heat through the surface over change of enthalpy, less 1. */
  readonly imbalance: number
}

/** How well a case is to be solved. */
export interface Effort {
  readonly grade: MeshGrade
  readonly toleranceK: number
}

/** Solves a case on a mesh that has a node at every probe. */
export function solveThermalCase(given: ThermalCase, { grade, toleranceK }: Effort): CaseAnswer {
  const meshStart = performance.now()
  const mesh = meshOf(given.outline, grade, { points: given.probes, waterlinesM: given.waterlinesM })
  const meshSeconds = (performance.now() - meshStart) / 1000
  const nodes = mesh.xM.length
  const readings = new Map<number, number[]>()
  const start = performance.now()
  const outcome = runStage({
    mesh,
    materials: [given.material],
    materialOfNode: new Uint8Array(nodes),
    temperatureK: new Float64Array(nodes).fill(given.startK),
    surroundings: given.surroundings,
    endS: given.endS,
    toleranceK,
    landOnS: given.timesS,
    observe: (timeS, temperatureK) => {
      if (!given.timesS.includes(timeS)) return
      readings.set(
        timeS,
        Array.from(mesh.askedNode, (node) => temperatureK[node]! - 273.15),
      )
    },
  })
  const seconds = (performance.now() - start) / 1000
  return {
    name: given.name,
    seconds,
    steps: outcome.steps,
    nodes,
    probes: given.probes.map(({ name }, p) => ({
      name,
      temperature_C: given.timesS.map((timeS) => {
        const reading = readings.get(timeS)?.[p]
        if (reading === undefined) throw new Error(`case ${given.name}: no step ended at ${timeS} s`)
        return Math.round(reading * 1e4) / 1e4
      }),
    })),
    meshSeconds,
    grade,
    tolerance_K: toleranceK,
    method: outcome.method,
    imbalance: (outcome.heatFromCoveredJ + outcome.heatFromRestJ) / outcome.enthalpyChangeJ - 1,
  }
}
