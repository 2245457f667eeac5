import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import type { Composition } from '#engine/materials/steel.ts'

/**
 * What fine pearlite and ferrite still have of their hardness over annealed bar, by Grange-Baughman parameter: 1080 and 1040 rounds that did not
 * harden in oil stand at 388 and 262 HB after one hour at 205 degC, 388 at 315, 375 and 241 at 425, 321 at 540, 255 and 192 at 650, 183 HB at 704 degC
 * (ASM Metals Reference Book, from memory). Coarse pearlite has little to lose, and the same share of it: it is hardly softer below 600 degC.
 */
const PEARLITE_KEEPS: Rows = [
  [20, 1],
  [22.7, 0.88],
  [26.4, 0.68],
  [30, 0.39],
  [32, 0.3],
]
/** Softening of bainite against that of martensite of the same hardness: 0.3 below 500 degC (memory), nearly all of it at 650. */
const BAINITE_SHARE: Rows = [
  [24, 0.3],
  [31, 0.9],
]

/** Between these the soft part of a steel that is cooled too slowly goes from pearlite to bainite [wt% Mo, a twelfth of the nickel with it]. */
const BAINITE_FROM = 0.05
const BAINITE_TO = 0.2

/** Share of bainite in what does not turn to martensite, where nothing better is known: molybdenum and nickel hold pearlite back. */
export function usualBainiteShare({ Mo, Ni }: Composition): number {
  return Math.min(1, Math.max(0, (Mo + Ni / 12 - BAINITE_FROM) / (BAINITE_TO - BAINITE_FROM)))
}

/** Fine pearlite is no softer than this over annealed bar: where a mixture would need softer, its martensite is the softer [share]. */
export const FINE_OVER_ANNEALED = 1.35

/** Hardness after tempering of what is not martensite [HV], of which `bainite` is bainite; `martensiteHv` is tempered martensite of the same steel. */
export function temperedRestHv(
  restHv: number,
  { bainite, martensiteHv, annealed, parameter }: { bainite: number; martensiteHv: number; annealed: number; parameter: number },
): number {
  const pearliteHv = Math.min(restHv, annealed + Math.max(0, restHv - annealed) * interpolate(PEARLITE_KEEPS, parameter))
  const bainiteHv = restHv - interpolate(BAINITE_SHARE, parameter) * Math.max(0, restHv - martensiteHv)
  return bainite * bainiteHv + (1 - bainite) * pearliteHv
}
