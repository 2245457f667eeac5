import { exp, ln, pow } from '#engine/arithmetic/elementary.ts'
import type { Composition } from '#engine/materials/steel.ts'
import { dissolvedComposition } from '#engine/metallurgy/dissolved-composition.ts'

/** Which phases carbon meets at one temperature, as total carbon [wt%] rises: ferrite, both, austenite, austenite beside carbide. */
export interface CarbonPhases {
  /** Most that ferrite holds. */
  readonly ferrite: number
  /** Least that austenite holds; Infinity under Ac1, where ferrite lies beside carbide at once. */
  readonly austenite: number
  /** Most that austenite holds beside carbide; Infinity where the steel has none. */
  readonly carbide: number
}

const A1_K = 1000.15
/** Ac3 of iron without carbon [K], and what each wt% moves it by: K.W. Andrews, JISI 203 (1965) 721, with copper and manganese as printed. */
const IRON_K = 1185
const EUTECTOID_WT_PCT = 0.77
/** Shape of the boundary of ferrite in plain iron: 0.2, 0.4, 0.6 C at 837, 787, 750 degC (ASM Alloy Phase Diagrams, memory). */
const SHAPE = 1.6

/** The boundaries for one steel: those of iron and carbon, moved so that they pass through this steel's Ac1 and Ac3 [K]. */
export interface CarbonLines {
  readonly bulkWtPct: number
  at(temperatureK: number): CarbonPhases
}

export function carbonLines(composition: Composition, ac1K: number, ac3K: number): CarbonLines {
  const { C, Mn, Si, Cr, Ni, Mo, V, W, Cu } = composition
  const shifted = IRON_K + 44.7 * Si + 104 * Math.min(V, 0.5) + 31.5 * Math.min(Mo, 2) + 13.1 * Math.min(W, 4) - 15.2 * Ni
  const ironK = Math.max(ac1K + 60, ac3K + 20, shifted - 30 * Mn - 11 * Math.min(Cr, 3) - 20 * Cu)
  // Through (Ac3, C) where the steel has ferrite to lose.
  const own =
    C > 0.15 && C < 0.65 && ac3K > ac1K + 10 ? ln(C / EUTECTOID_WT_PCT) / ln((ironK - ac3K) / (ironK - ac1K)) : Number.NaN
  const shape = own > 1 && own < 3 ? own : SHAPE
  return {
    bulkWtPct: C,
    at(temperatureK) {
      if (temperatureK < ac1K)
        return {
          ferrite: 0.0218 * exp(-4871 * (1 / Math.max(temperatureK, 500) - 1 / A1_K)),
          austenite: Number.POSITIVE_INFINITY,
          carbide: Number.POSITIVE_INFINITY,
        }
      const down = Math.max(0, (ironK - temperatureK) / (ironK - ac1K))
      const dissolved = dissolvedComposition(composition, temperatureK).C
      return {
        ferrite: 0.0218 * down,
        austenite: EUTECTOID_WT_PCT * pow(down, shape),
        carbide: dissolved < C - 0.01 ? Math.max(dissolved, EUTECTOID_WT_PCT * pow(down, shape)) : Number.POSITIVE_INFINITY,
      }
    },
  }
}
