import type { Job } from '#engine/simulation/job.ts'
import type { Fire } from '#engine/surface-heat/gear.ts'
import { heatTimer } from './fires.ts'
import { type Rounding, wholeMinutes } from './rounding.ts'
import type { SteelPractice } from './steel-practice.ts'
import type { Tried } from './trials.ts'

/** A box of ashes or a shut forge cools a small piece no slower; rich steel wants a furnace with a clock [K/s]. */
const FURNACE_K_PER_S = 15 / 3600
const OVER_AC3_K = 30
const SOAK_S = 600

/** Where nothing must be hard: annealed. Steel that hardens in air needs a muffle for it; undefined without one. */
export function annealed(
  job: Job,
  practice: SteelPractice,
  fires: readonly Fire[],
  thickestM: number,
  rounding: Rounding,
): Tried | undefined {
  const fire = practice.hardensInAir ? fires.find(({ kind }) => kind === 'muffle') : fires[0]
  if (fire === undefined) return undefined
  const { ac1K, ac3K } = practice.facts.critical
  const overK = practice.facts.composition.C >= 0.75 ? ac1K + OVER_AC3_K : ac3K + OVER_AC3_K
  const toK = rounding.temperatureK(practice.annealK ?? overK)
  const upS = heatTimer(job, thickestM)(fire, toK, undefined)
  if (!upS.reached) return undefined
  return {
    says: `annealed in the ${fire.name}, left unhardened`,
    process: [
      {
        do: 'anneal',
        in: fire.name,
        toK,
        holdS: wholeMinutes((upS.middleUpS ?? 0) + SOAK_S),
        ...(practice.hardensInAir ? { coolKPerS: FURNACE_K_PER_S } : {}),
      },
    ],
    chance: 1,
    missHrc: 0,
    quenched: 1,
    fierceness: 0,
    fuss: 0,
  }
}
