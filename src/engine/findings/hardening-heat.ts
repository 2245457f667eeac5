import { exp, ln } from '#engine/arithmetic/elementary.ts'
import type { ProcessStep } from '#engine/simulation/process.ts'
import type { HeatRecord, StepRecord } from '#engine/simulation/records.ts'
import { atmosphereOf } from '#engine/surface-heat/atmosphere.ts'
import { isLowAlloy, isPlain, type SteelFacts } from './steel-facts.ts'

/** What a hardening heat must give this steel, and what it gave. Nothing here is said to the smith; the rules say it. */

/** A fire is steered no better than this; the sheets' ranges are not meant to the degree [K]. the shop sigma is 15..25. */
const UNDER_MARGIN_K = 15

/**
 * Least heat that hardens it fully [K]: the published range less what a fire cannot be held to, and never less than what
 * austenite itself needs (Ac1 and a little for steel at or above the eutectoid carbon, Ac3 less the error of its formula below).
 * Water takes some steels from a cooler heat than oil or air does: `intoWater`, or where the bath is not known.
 */
export function leastHeatK({ hardening, critical, composition }: SteelFacts, intoWater = true): number {
  const austenite = composition.C >= 0.75 ? critical.ac1K + 15 : critical.ac3K - 20
  const fromK = intoWater ? hardening.fromK : (hardening.inOilFromK ?? hardening.fromK)
  return Math.max(fromK - UNDER_MARGIN_K, austenite)
}

/** Time in the hold until the slowest place was within `gapK` of the heat [s], if the gap closes exponentially. */
export function timeToGapS({ toK, coldestK, widestGapK, holdS, middleUpS }: HeatRecord, gapK: number): number {
  if (middleUpS !== null && gapK >= 15) return middleUpS
  const endGapK = Math.max(1, toK - coldestK)
  const startGapK = Math.max(widestGapK, endGapK)
  if (startGapK <= gapK) return 0
  const tauS = startGapK > endGapK * 1.05 && holdS > 0 ? holdS / ln(startGapK / endGapK) : Number.POSITIVE_INFINITY
  return tauS * ln(startGapK / gapK)
}

/** Time at heat that the middle had [s]. `stoodS` is how long its worst place stood near its own peak, where that was watched. */
export function soakHadS(heat: HeatRecord, steel: SteelFacts, stoodS?: number): number {
  if (heat.middleUpS !== null) return Math.max(0, heat.holdS - heat.middleUpS)
  // A cold end holds its neighbour some way under the heat for good: no longer a matter of waiting.
  if (stoodS !== undefined) return Math.min(heat.holdS, stoodS)
  const least = leastHeatK(steel)
  if (heat.coldestK < least) return 0
  return Math.max(0, heat.holdS - timeToGapS(heat, Math.max(15, heat.toK - least)))
}

/** Time at heat that the steel wants once its middle is up. */
export interface SoakWanted {
  /** Shorter than this is a fault [s]. */
  readonly s: number
  /** What to aim for [s]. */
  readonly goodS: number
  readonly source: string
}

/** What the steel wants, and on whose word. */
export function soakWanted({ soak, composition }: SteelFacts, normalised: boolean): SoakWanted {
  // Fine pearlite dissolves in seconds, the coarse carbide of annealed bar in minutes (orders of magnitude, from memory).
  const practice = 'common practice, no source'
  if (normalised && isPlain(composition)) return { s: 60, goodS: 120, source: `plain steel, normalised: ${practice}` }
  // The half hour of a low-alloy steel's sheet is for bar as it comes.
  if (normalised && isLowAlloy(composition)) return { s: 120, goodS: 300, source: `low-alloy steel, normalised: ${practice}` }
  // Two thirds of the least published soak: below it the sheets and the shops agree that it is short.
  if (soak !== undefined) return { s: (2 / 3) * soak.leastS, goodS: soak.leastS, source: soak.source }
  if (isPlain(composition)) {
    const s = composition.C > 0.75 ? 180 : 60
    return { s, goodS: 2 * s, source: `annealed carbide dissolves slowly: ${practice}` }
  }
  if (composition.Cr >= 3) return { s: 900, goodS: 1200, source: 'rich steel, by its like in SAE J437' }
  return { s: 300, goodS: 600, source: `low-alloy steel as it comes: ${practice}` }
}

/** Whether a normalising or an earlier hardening heat has made the carbide fine before record `step`. */
export function isNormalisedBefore(records: readonly StepRecord[], step: number): boolean {
  let fine = false
  for (const record of records) {
    if (record.step >= step) break
    if (record.kind === 'normalise' || record.kind === 'quench') fine = true
    if (record.kind === 'anneal') fine = false
  }
  return fine
}

/**
 * First guess at the depth of skin that has lost about half its carbon [m], to compare treatments by: sqrt(D t), D of carbon in austenite
 * 2.0e-5 exp(-138 kJ/RT) m2/s (from memory). The finding itself goes by the solved skin.
 */
export function decarburisedM(records: readonly StepRecord[], process: readonly ProcessStep[], ac1K: number): number {
  let dt = 0
  for (const record of records) {
    if (record.kind !== 'heat' && record.kind !== 'normalise' && record.kind !== 'anneal') continue
    if (atmosphereOf(record.fire) === 'packed' || record.toK < ac1K) continue
    const diffusivity = 2e-5 * exp(-138000 / (8.314 * record.toK))
    // The last sixth of the way up is nearly as hot as the hold.
    dt += diffusivity * (record.holdS + (record.outsideUpS ?? 0) / 6) * timesOf(process[record.step])
  }
  return Math.sqrt(dt)
}

function timesOf(step: ProcessStep | undefined): number {
  return step?.do === 'normalise' ? step.times : 1
}
