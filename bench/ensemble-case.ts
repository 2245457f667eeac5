import { exp } from '#engine/arithmetic/elementary.ts'
import { randomStream } from '#engine/arithmetic/random.ts'
import type { Rows } from '#engine/arithmetic/table.ts'
import { runRadialStage } from '#engine/conduction/radial.ts'
import type { ThermalCase } from './thermal-case.ts'

/**
 * Case D: a bar of 25 mm without ends, else as case A, with 1000 members that differ in conductivity, heat capacity and film.
 * Reference of the base member: computed for this project by other programs, +-0.03 K.
 */
export const ensembleReference = [
  { time_s: 5, core_C: 823.86, side_C: 642.53 },
  { time_s: 10, core_C: 681.79, side_C: 415.85 },
  { time_s: 20, core_C: 443.35, side_C: 339.47 },
  { time_s: 60, core_C: 280.59, side_C: 251.83 },
] as const

const CELLS = 60

export interface EnsembleAnswer {
  readonly members: number
  readonly toleranceK: number
  readonly seconds: number
  /** Temperature of core and side in the base member at the times of the reference [degC]. */
  readonly base: readonly { readonly time_s: number; readonly core_C: number; readonly side_C: number }[]
  readonly steps: number
}

export function solveEnsemble(cylinder: ThermalCase, members: number, toleranceK: number): EnsembleAnswer {
  const base: { time_s: number; core_C: number; side_C: number }[] = []
  const times = ensembleReference.map(({ time_s }) => time_s)
  const scaled = (rows: Rows, by: number): Rows => rows.map(([x, y]) => [x, y * by] as const)
  const run = (k: number, cp: number, film: number, note: boolean): number =>
    runRadialStage({
      shape: 'cylinder',
      radiusM: 0.0125,
      cells: CELLS,
      materials: [
        {
          densityKgPerM3: cylinder.material.densityKgPerM3,
          conductivity: scaled(cylinder.material.conductivity, k),
          specificHeat: scaled(cylinder.material.specificHeat, cp),
        },
      ],
      temperatureK: cylinder.startK,
      contact: { ...cylinder.surroundings.covered, film: scaled(cylinder.surroundings.covered.film, film) },
      endS: 60,
      toleranceK,
      ...(note ? { landOnS: times } : {}),
      observe: (timeS, t) => {
        const time = times.find((each) => each === timeS)
        if (note && time !== undefined) base.push({ time_s: time, core_C: t[0]! - 273.15, side_C: t[CELLS]! - 273.15 })
      },
    }).steps
  const steps = run(1, 1, 1, true)
  const random = randomStream(7)
  const start = performance.now()
  for (let m = 0; m < members; m++) {
    run(0.9 + 0.2 * random.uniform(), 0.95 + 0.1 * random.uniform(), exp(0.6 * (random.uniform() - 0.5)), false)
  }
  return { members, toleranceK, seconds: (performance.now() - start) / 1000, base, steps }
}
