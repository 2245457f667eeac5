import type { Composition, Steel } from '#engine/materials/steel.ts'
import { treatmentById } from '#engine/materials/treatment.ts'
import type { Basis } from '#engine/provenance/estimate.ts'

const ZERO_DEGC_K = 273.15

/** A range of tempering temperatures in which a hardened steel comes out brittle. */
export interface EmbrittlingRange {
  /** one-step: tempered martensite embrittlement; dip: a loss of toughness that the sheet of one tool steel names; two-step: slow cooling after the temper. */
  readonly kind: 'one-step' | 'dip' | 'two-step'
  readonly fromK: number
  readonly toK: number
  /** Where it is worst [K]. */
  readonly worstK: number
  /** The range matters only when the piece is cooled slowly through it, not when it is tempered in it for an hour and quenched or air-cooled thin. */
  readonly onlySlowCooling: boolean
  /** In a smith's words: what happens and how to stay clear. */
  readonly says: string
  readonly basis: Basis
  readonly source: string
}

const ONE_STEP_SOURCE =
  'G. Krauss, Steels (2005); R.M. Horn & R.O. Ritchie, Metall. Trans. A 9 (1978) 1039; silicon shift from memory'
const ONE_STEP_SAYS =
  'hardened steel tempered in this range is softer than after a lower temper and no tougher: stay below it for an edge or above it for a struck or springy part'
const TWO_STEP_SOURCE = 'C.J. McMahon, ASTM STP 407 (1968); J = (Mn + Si)(P + Sn) 1e4 after J. Watanabe & Y. Murakami (1981)'

/** S7 loses toughness here though its hardness hardly changes [degC]; makers' sheets, from memory. */
const S7_DIP = { from: 260, to: 400, worst: 330 } as const

/** Tin in commercial bar when the analysis does not give it [wt%]: common practice, no source. */
const USUAL_TIN = 0.01
/** Phosphorus in commercial bar when the analysis does not give it [wt%]: common practice, no source. */
const USUAL_PHOSPHORUS = 0.02

/** Watanabe-Murakami factor J = (Mn + Si)(P + Sn) 1e4, wt%; under 100 safe, over 180 at risk. Tin is taken as 0.010. */
export function jFactor(c: Composition): number {
  return (c.Mn + c.Si) * ((c.P > 0 ? c.P : USUAL_PHOSPHORUS) + USUAL_TIN) * 1e4
}

/**
 * The ranges of tempering temperature that a hardened piece of `steel` should be kept out of.
 *
 * - one-step: what the sources of the grade name; else, for martensite of more than 0.2 % C, 250..400 degC, which silicon moves up
 *   (360..460 degC at 1.5 % and more)
 * - dip: that of S7, instead of the one-step range
 * - two-step: slow cooling (or long holding) between 375 and 575 degC of steel alloyed with Cr, Mn or Ni; 0.3 % Mo and more delays it,
 *   plain steel under 0.5 % Mn is immune
 */
export function embrittlingRanges(steel: Steel): readonly EmbrittlingRange[] {
  const c = steel.composition
  const ranges: EmbrittlingRange[] = []
  const named = steel.gradeId === undefined ? [] : (treatmentById(steel.gradeId)?.embrittling ?? [])
  if (steel.gradeId === 'S7' && named.length === 0) {
    ranges.push({
      kind: 'dip',
      fromK: S7_DIP.from + ZERO_DEGC_K,
      toK: S7_DIP.to + ZERO_DEGC_K,
      worstK: S7_DIP.worst + ZERO_DEGC_K,
      onlySlowCooling: false,
      says: 'S7 loses toughness in this range though its hardness hardly changes: temper below it for cold work or above 480 degC for hot work',
      basis: 'memory',
      source: `makers' sheets of S7, from memory; ${ONE_STEP_SOURCE}`,
    })
  } else if (named.length > 0) {
    for (const { fromK, toK, basis, source } of named)
      ranges.push({
        kind: 'one-step',
        fromK,
        toK,
        worstK: 0.5 * (fromK + toK),
        onlySlowCooling: false,
        says: ONE_STEP_SAYS,
        basis,
        source,
      })
  } else if (c.C > 0.2 && c.Cr < 3) {
    // Up to 0.3 % Si counts as none; at 1.5 % and more the range has moved all the way.
    const moved = Math.min(1, Math.max(0, (c.Si - 0.3) / 1.2))
    ranges.push({
      kind: 'one-step',
      fromK: 250 + 110 * moved + ZERO_DEGC_K,
      toK: 400 + 60 * moved + ZERO_DEGC_K,
      worstK: 325 + 90 * moved + ZERO_DEGC_K,
      onlySlowCooling: false,
      says: ONE_STEP_SAYS,
      basis: 'memory',
      source: ONE_STEP_SOURCE,
    })
  }
  const factor = jFactor(c)
  const alloyed = c.Cr > 0.4 || c.Ni > 0.5 || c.Mn > 1
  if (c.C > 0.15 && alloyed && c.Cr < 8 && factor > (c.Mo >= 0.3 ? 180 : 100))
    ranges.push({
      kind: 'two-step',
      fromK: 375 + ZERO_DEGC_K,
      toK: 575 + ZERO_DEGC_K,
      worstK: 510 + ZERO_DEGC_K,
      onlySlowCooling: true,
      says: `cooled slowly through this range, or left in it for hours, this steel turns brittle (J = ${Math.round(factor)}; over 180 is at risk): after a temper above 575 degC cool it in water, oil or moving air`,
      basis: 'model',
      source: TWO_STEP_SOURCE,
    })
  return ranges
}

/** The range of `ranges` that a temper at `temperatureK` falls in, the worst placed first; undefined when it is clear of all. */
export function embrittlingAt(
  ranges: readonly EmbrittlingRange[],
  temperatureK: number,
  cooledSlowly = false,
): EmbrittlingRange | undefined {
  return ranges
    .filter((range) => temperatureK >= range.fromK && temperatureK <= range.toK && (cooledSlowly || !range.onlySlowCooling))
    .sort((a, b) => Math.abs(temperatureK - a.worstK) - Math.abs(temperatureK - b.worstK))[0]
}
