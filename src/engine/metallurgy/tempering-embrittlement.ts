import { gradeById } from '#engine/materials/catalogue.ts'
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
  /** What happens, in a smith's words. */
  readonly says: string
  readonly basis: Basis
  readonly source: string
}

const ONE_STEP_SOURCE = 'G. Krauss, Steels (ASM 2005); Horn & Ritchie, Metall. Trans. A 9 (1978) 1039, from memory'
const ONE_STEP_SAYS = 'Tempered-martensite embrittlement'
/**
 * One-step range of plain steel, and how far 1.5 % silicon and more moves it up [degC]; from memory. Books end it between 370 and 400:
 * springs are drawn from 380 upwards without harm, so the shorter one is kept.
 */
const ONE_STEP = { from: 250, to: 370, worst: 320, siliconFrom: 100, siliconTo: 80, siliconWorst: 90 } as const
/** Families whose tempering is led by secondary hardening and by their own sheets. */
const BY_THEIR_OWN_CURVE = /tool|high-speed|mould|die/

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
 * The ranges of tempering temperature that a hardened piece of `steel` should be kept out of; the one home of this rule.
 *
 * - one-step: what the sources of the grade name; else, for martensite of more than 0.2 % C, 250..370 degC, which silicon moves up
 *   (350..450 degC at 1.5 % and more); tool steels of the catalogue go by their own sheets
 * - dip: that of S7, instead of the one-step range
 * - two-step: slow cooling (or long holding) between 375 and 575 degC of steel alloyed with Cr, Mn or Ni; 0.3 % Mo and more delays it,
 *   plain steel under 0.5 % Mn is immune
 */
export function embrittlingRanges(steel: Steel): readonly EmbrittlingRange[] {
  const treatment = steel.gradeId === undefined ? undefined : treatmentById(steel.gradeId)
  if (treatment?.hardens === false) return []
  const named = (treatment?.embrittling ?? []).map(
    ({ fromK, toK, basis, source }): EmbrittlingRange => ({
      kind: 'one-step',
      fromK,
      toK,
      worstK: 0.5 * (fromK + toK),
      onlySlowCooling: false,
      says: 'Its sheet warns off this range',
      basis,
      source,
    }),
  )
  return [...(named.length > 0 ? named : oneStep(steel)), ...twoStep(steel.composition)]
}

function oneStep({ composition: c, gradeId }: Steel): EmbrittlingRange[] {
  if (gradeId === 'S7')
    return [
      {
        kind: 'dip',
        fromK: S7_DIP.from + ZERO_DEGC_K,
        toK: S7_DIP.to + ZERO_DEGC_K,
        worstK: S7_DIP.worst + ZERO_DEGC_K,
        onlySlowCooling: false,
        says: 'A trough of toughness that makers show for S7',
        basis: 'memory',
        source: "makers' sheets of S7, from memory",
      },
    ]
  const family = gradeId === undefined ? undefined : gradeById(gradeId)?.family
  if (c.C < 0.2 || c.Cr >= 3 || (family !== undefined && BY_THEIR_OWN_CURVE.test(family))) return []
  // Up to 0.3 % Si counts as none; at 1.5 % and more the range has moved all the way.
  const moved = Math.min(1, Math.max(0, (c.Si - 0.3) / 1.2))
  return [
    {
      kind: 'one-step',
      fromK: ONE_STEP.from + ONE_STEP.siliconFrom * moved + ZERO_DEGC_K,
      toK: ONE_STEP.to + ONE_STEP.siliconTo * moved + ZERO_DEGC_K,
      worstK: ONE_STEP.worst + ONE_STEP.siliconWorst * moved + ZERO_DEGC_K,
      onlySlowCooling: false,
      says: ONE_STEP_SAYS,
      basis: 'memory',
      source: ONE_STEP_SOURCE,
    },
  ]
}

function twoStep(c: Composition): EmbrittlingRange[] {
  const factor = jFactor(c)
  const alloyed = c.Cr > 0.4 || c.Ni > 0.5 || c.Mn > 1
  if (c.C <= 0.15 || !alloyed || c.Cr >= 8 || factor <= (c.Mo >= 0.3 ? 180 : 100)) return []
  return [
    {
      kind: 'two-step',
      fromK: 375 + ZERO_DEGC_K,
      toK: 575 + ZERO_DEGC_K,
      worstK: 510 + ZERO_DEGC_K,
      onlySlowCooling: true,
      says: `Cooled slowly through this range, or left in it for hours, it turns brittle (J = ${Math.round(factor)}; over 180 is at risk)`,
      basis: 'model',
      source: TWO_STEP_SOURCE,
    },
  ]
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
