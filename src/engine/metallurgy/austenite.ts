import { exp, pow } from '#engine/arithmetic/elementary.ts'
import type { Composition, Steel } from '#engine/materials/steel.ts'
import { criticalTemperatures, martensiteRate, martensiteStartK } from './critical-temperatures.ts'
import { dissolvedComposition } from './dissolved-composition.ts'
import { DISSOLVING_S, type PriorStructure } from './prior-structure.ts'

/** The austenite that a heat has made. */
export interface Austenite {
  /** Share of the piece that is austenite at the end of the hold, 0..1. */
  readonly fraction: number
  /** What is in solution in it [wt%]; meaningful where `fraction` > 0. */
  readonly composition: Composition
  /** More than 0.03 wt% of the carbon is still in carbides. */
  readonly carbideLeft: boolean
  readonly source: string
}

const SOURCE =
  'lever rule between Ac1 and Ac3; solubility after the Acm line (ASM Alloy Phase Diagrams) and published matrix compositions; first-order dissolution (memory, order of magnitude)'

/** The times of `DISSOLVING_S` hold so far over Ac1 [K], and for each wt% of chromium further up, whose carbides are slow; they halve every 25 K. */
const TIMED_OVER_AC1_K = 60
const TIMED_PER_CHROMIUM_K = 18
const MOST_CHROMIUM_WT_PCT = 5
const HALVES_PER_K = 25
/** No quicker than after so many halvings. */
const MOST_OVER_K = 190
const CARBIDE_LEFT_WT_PCT = 0.03

/**
 * What is austenite after reaching `peakK` and holding there for `holdS`, and what it has in solution.
 *
 * - 0 below Ac1; between Ac1 and Ac3 the share that balance would give, and of it as much as the time allows
 * - carbon beside ferrite is richer than the bulk; beside carbides it stops at the solubility line of that temperature
 * - dissolution is first order; a hold of 0 s still counts a few seconds around the peak
 *
 * Smooth in temperature and in time: an ensemble may sample both. Rapid heating (over 1 K/s) is covered by the time law.
 */
export function austeniteAt(steel: Steel, peakK: number, holdS: number, prior: PriorStructure = 'fine'): Austenite {
  const found = criticalTemperatures(steel.composition, steel.gradeId === undefined ? {} : { gradeId: steel.gradeId })
  const ac1K = found.ac1K.value
  return austeniteBetween(steel.composition, ac1K, Math.max(found.ac3K.value, ac1K + 5), peakK, holdS, prior)
}

/** As `austeniteAt`, with the critical temperatures already known: for inner loops. */
export function austeniteBetween(
  bulk: Composition,
  ac1K: number,
  ac3K: number,
  peakK: number,
  holdS: number,
  prior: PriorStructure = 'fine',
): Austenite {
  if (peakK <= ac1K) return { fraction: 0, composition: bulk, carbideLeft: true, source: SOURCE }
  const timedAtK = ac1K + TIMED_OVER_AC1_K + TIMED_PER_CHROMIUM_K * Math.min(bulk.Cr, MOST_CHROMIUM_WT_PCT)
  const reach = progress(peakK - timedAtK, holdS, DISSOLVING_S[prior])
  // Ferrite goes faster than carbide: a fifth of the time.
  const turned = progress(peakK - timedAtK, holdS, DISSOLVING_S[prior] / 5)
  const fraction = balanceFraction(peakK, ac1K, ac3K) * turned
  const balanced = dissolvedComposition(bulk, Math.max(peakK, ac1K))
  // The first austenite takes its carbon from fine carbide beside it; short holds leave the bulk of coarse carbide behind.
  const opening = Math.min(balanced.C, 0.6 * Math.min(bulk.C, 0.8))
  const dissolvedC = opening + (balanced.C - opening) * reach
  // Beside ferrite the carbon of the piece gathers in the austenite there is, up to 0.8 wt%.
  const gathered = bulk.C < 0.77 ? Math.min(0.77, dissolvedC / Math.max(balanceFraction(peakK, ac1K, ac3K), 0.05)) : dissolvedC
  const share = dissolvedC > 0 ? Math.min(1, dissolvedC / Math.max(balanced.C, 1e-6)) : 0
  const composition: Composition = {
    ...bulk,
    C: Math.max(gathered, dissolvedC),
    Cr: balanced.Cr * (0.7 + 0.3 * share),
    Mo: balanced.Mo * (0.5 + 0.5 * share),
    W: balanced.W * (0.5 + 0.5 * share),
    V: balanced.V * (0.3 + 0.7 * share),
    Mn: balanced.Mn * (0.9 + 0.1 * share),
  }
  return { fraction, composition, carbideLeft: bulk.C - dissolvedC > CARBIDE_LEFT_WT_PCT, source: SOURCE }
}

/** Share of the piece that would be austenite in balance: pearlite's share at Ac1, all of it at Ac3. */
function balanceFraction(peakK: number, ac1K: number, ac3K: number): number {
  const u = Math.min(1, Math.max(0, (peakK - ac1K) / (ac3K - ac1K)))
  return u * (2 - u)
}

/** How much of a change is done, 0..1: first order in time, `overK` above the heat that its time constant is given for. */
function progress(overK: number, holdS: number, timeConstantS: number): number {
  const timeS = timeConstantS * pow(2, -Math.min(overK, MOST_OVER_K) / HALVES_PER_K)
  const spentS = Math.max(0, holdS) + 3
  return 1 - exp(-pow(spentS / timeS, 0.7))
}

/** Share of the austenite that is left after cooling to `minK` (0..1): Koistinen & Marburger with `martensiteRate`. */
export function retainedAusteniteFraction(austenite: Composition, minK: number): number {
  return retention(austenite)(minK)
}

/** The same for one austenite and many temperatures [K]. */
export function retention(austenite: Composition): (minK: number) => number {
  const startK = martensiteStartK(austenite)
  const rate = martensiteRate(austenite)
  return (minK) => (startK > minK ? exp(-rate * (startK - minK)) : 1)
}
