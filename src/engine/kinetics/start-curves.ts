import { exp, pow } from '#engine/arithmetic/elementary.ts'
import type { Composition } from '#engine/materials/steel.ts'
import { martensiteStartK } from '#engine/metallurgy/critical-temperatures.ts'

/** How fast austenite of one composition turns at a temperature, by product: the reciprocal of the time to the first per cent [1/s]. */
export interface StartRates {
  readonly ferrite: number
  readonly pearlite: number
  readonly bainite: number
}

/** Where each product ends [K]. */
export interface StartLimits {
  readonly ae1K: number
  readonly ae3K: number
  readonly bainiteK: number
  readonly martensiteK: number
}

/** Gas constant [cal/(mol K)], as the source has it, and its activation energy for all three products [cal/mol]. */
const R_CAL = 1.987
const ACTIVATION_CAL = 27500
/** The sigmoid integral of the source from nothing to one per cent. */
const FIRST_PER_CENT = 0.1042
/** Ferrite and pearlite of a steel richer than this start at carbide, not at ferrite [wt%]. */
const NO_FERRITE_FROM_WT_PCT = 0.7

/**
 * Limits of the three reactions: Ae1 and Ae3 by R.A. Grange, Metal Progress 79(4) (1961) 73; start of bainite by Li et al. 1998. Fahrenheit in
 * the first, so that the digits can be compared.
 */
export function startLimits(austenite: Composition): StartLimits {
  const { C, Mn, Si, Ni, Cr, Mo } = austenite
  const fromFahrenheit = (f: number): number => (f - 32) / 1.8 + 273.15
  return {
    ae1K: fromFahrenheit(1333 - 25 * Mn + 40 * Si + 42 * Cr - 26 * Ni),
    ae3K: fromFahrenheit(1570 - 323 * Math.min(C, 0.77) - 25 * Mn + 80 * Si - 3 * Cr - 32 * Ni),
    bainiteK: 637 - 58 * C - 35 * Mn - 15 * Ni - 34 * Cr - 41 * Mo + 273.15,
    martensiteK: martensiteStartK(austenite),
  }
}

/** How freely atoms move at a temperature, the same for all three products of the source [1]. */
export function mobilityAt(temperatureK: number): number {
  return exp(-ACTIVATION_CAL / (R_CAL * temperatureK))
}

/**
 * Starting rates of ferrite, pearlite and bainite by Li, Niebuhr, Meekisho & Atteridge, Metall. Mater. Trans. B 29 (1998) 661.
 * Whoever asks often at the same temperatures gives their `mobilityAt` along. Stated for 0.1..0.5 C, Si < 1, Mn < 2, Ni < 4, Cr < 3, Mo < 1 wt%; a mere trend beyond. `grainSize`: ASTM number.
 */
export function startRates(austenite: Composition, grainSize: number): (temperatureK: number, mobility?: number) => StartRates {
  const { C, Mn, Si, Ni, Cr, Mo } = austenite
  const { ae1K, ae3K, bainiteK, martensiteK } = startLimits(austenite)
  const ferriteS = exp(1 + 6.31 * C + 1.78 * Mn + 0.31 * Si + 1.12 * Ni + 2.7 * Cr + 4.06 * Mo) * FIRST_PER_CENT
  const pearliteS = exp(-4.25 + 4.12 * C + 4.36 * Mn + 0.44 * Si + 1.71 * Ni + 3.33 * Cr + 5.19 * Math.sqrt(Mo)) * FIRST_PER_CENT
  const bainiteS = exp(-10.23 + 10.18 * C + 0.85 * Mn + 0.55 * Ni + 0.9 * Cr + 0.36 * Mo) * FIRST_PER_CENT
  const byGrain = { ferrite: pow(2, 0.41 * grainSize), pearlite: pow(2, 0.32 * grainSize), bainite: pow(2, 0.29 * grainSize) }
  return (temperatureK, mobility = mobilityAt(temperatureK)) => {
    const f = Math.max(0, ae3K - temperatureK)
    const p = Math.max(0, ae1K - temperatureK)
    const b = Math.max(0, bainiteK - temperatureK)
    return {
      ferrite: C < NO_FERRITE_FROM_WT_PCT ? (byGrain.ferrite * f * f * f * mobility) / ferriteS : 0,
      pearlite: (byGrain.pearlite * p * p * p * mobility) / pearliteS,
      bainite: temperatureK > martensiteK ? (byGrain.bainite * b * b * mobility) / bainiteS : 0,
    }
  }
}

/** Noses of a published isothermal diagram; a time that is only known to be longer stands as its least. */
export interface PublishedNoses {
  /** To the first per cent of pearlite [s]. */
  readonly pearliteS: number
  readonly bainite: { readonly atK: number; readonly startS: number }
  readonly source: string
}

const ATLAS = 'ASM atlas of isothermal diagrams (memory)'

/** Steels that no composition formula reaches. */
const NOSES: Readonly<Record<string, PublishedNoses>> = {
  O1: { pearliteS: 8, bainite: { atK: 573, startS: 80 }, source: ATLAS },
  L6: { pearliteS: 25, bainite: { atK: 573, startS: 100 }, source: ATLAS },
  S1: { pearliteS: 10, bainite: { atK: 673, startS: 20 }, source: ATLAS },
  S5: { pearliteS: 10, bainite: { atK: 653, startS: 20 }, source: ATLAS },
  S7: { pearliteS: 600, bainite: { atK: 673, startS: 220 }, source: ATLAS },
  A2: { pearliteS: 600, bainite: { atK: 573, startS: 3000 }, source: ATLAS },
  D2: { pearliteS: 600, bainite: { atK: 573, startS: 3600 }, source: ATLAS },
  H13: { pearliteS: 1000, bainite: { atK: 603, startS: 250 }, source: ATLAS },
}

export function publishedNoses(gradeId: string | undefined): PublishedNoses | undefined {
  return gradeId === undefined ? undefined : NOSES[gradeId]
}
