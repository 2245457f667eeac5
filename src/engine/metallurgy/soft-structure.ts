import { log10 } from '#engine/arithmetic/elementary.ts'
import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import type { Composition } from '#engine/materials/steel.ts'

/**
 * Ferrite and pearlite of 0.4 %C steel [HV] and what each wt% of carbon more adds, by the logarithm of the time from 800 to 500 degC [s].
 * Fitted here: the insides of 1040, 1050 and 1080 rounds in oil (Bethlehem Steel, Modern Steels and Their Properties, 7th ed., from memory)
 * for 10 to 100 s; normalised 25 mm rounds of 1030 to 1080 (ASM Metals Reference Book, from memory) at 450 s; annealed bar beyond.
 */
const BASE: Rows = [
  [1, 232],
  [1.54, 202],
  [2, 187],
  [2.65, 175],
  [4, 150],
]
const BY_CARBON: Rows = [
  [1, 470],
  [1.54, 430],
  [2, 360],
  [2.65, 300],
  [4, 120],
]
/** Beyond this carbon goes to the grain boundaries and hardens no more. */
const CARBON_COUNTS_TO = 0.82
const BASE_CARBON = 0.4

/** Hardness of a structure without martensite after cooling from 800 to 500 degC in `coolingS` [HV], carbon and low-alloy steel. */
export function softStructureHv(composition: Composition, coolingS: number): number {
  return softStructureHvAt(composition, log10(Math.max(1, coolingS)))
}

/** The same by the logarithm to base 10 of the time in seconds, at least 0: for inner loops. */
export function softStructureHvAt(composition: Composition, lg: number): number {
  const { Mn, Si, Cr, Ni, Mo } = composition
  // Solid solution and finer pearlite; levels from the same normalised bars.
  const alloy =
    40 * Math.max(0, Mn - 0.75) + 26 * Math.max(0, Si - 0.2) + 45 * Math.min(Cr, 1.5) + 10 * Ni + 60 * Math.min(Mo, 0.5)
  return interpolate(BASE, lg) + interpolate(BY_CARBON, lg) * (Math.min(composition.C, CARBON_COUNTS_TO) - BASE_CARBON) + alloy
}

/** Bainite and fine pearlite of a steel that hardens in air [HV], at 0.4 %C: normalised 4340 in 25 and 100 mm (ASM, from memory), then annealed. */
const DEEP: Rows = [
  [2.5, 385],
  [3.3, 335],
  [4.3, 240],
]

/** As `softStructureHvAt` for steels that hardly form pearlite (deep-hardening and air-hardening), which go to bainite first. */
export function deepSoftStructureHvAt(composition: Composition, lg: number): number {
  return interpolate(DEEP, lg) + 120 * (Math.min(composition.C, CARBON_COUNTS_TO) - BASE_CARBON)
}

/** Annealed bar [HV] where no sheet speaks of the grade: 4140 197 HB, 4340 223, 1095 192, H13 and S7 200, D2 255 (ASM and makers' sheets). */
export function annealedHv({ C, Mn, Cr, Ni, Mo, W }: Composition): number {
  return (
    150 +
    120 * (Math.min(C, 0.9) - BASE_CARBON) +
    20 * Math.max(0, Mn - 0.75) +
    10 * Math.min(Cr, 6) +
    25 * Ni +
    10 * Math.min(Mo + W, 3)
  )
}
