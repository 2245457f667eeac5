import type { Composition } from '#engine/materials/steel.ts'

/** Kinds of steel that temper alike well enough to share the width of a band. */
export type TemperingKind = 'carbon' | 'low alloy' | 'high carbon' | 'secondary'

/** How many tables of the grade speak, by print: two sheets of one maker are one. */
export type TablesKnown = 'none' | 'one' | 'several'

/**
 * One standard deviation of a tempered piece about the curve [HRC]: nine tenths of published figures lie within 1.645 of it. Measured by leaving out, in turn,
 * all tables of the grade (none) or all of one print (one, several): half way between what holds nine tenths when each source counts alike, and what holds
 * 0.85 of every set of figures by itself. test/validate/tempering-scatter.ts measures it again, and a test holds this table to it. Where one or two steels
 * speak, all steels with as many tables do (one: 2.3; several: 2.2), or for constructional steel its rounds (one: 2.9; several: 2.7).
 */
export const TEMPERING_SCATTER: { readonly [Known in TablesKnown]: { readonly [Kind in TemperingKind]: number } } = {
  none: { carbon: 2.5, 'low alloy': 2.5, 'high carbon': 2.2, secondary: 4.1 },
  one: { carbon: 2.9, 'low alloy': 2.9, 'high carbon': 2.3, secondary: 2.2 },
  several: { carbon: 2.7, 'low alloy': 2.7, 'high carbon': 2.2, secondary: 2.2 },
}

/** Kind of a steel by what it holds; `secondary` is how far it is one with a secondary peak, 0..1. */
export function temperingKind({ C, Si, Cr, Ni, Mo, V, W }: Composition, secondary: number): TemperingKind {
  if (secondary > 0) return 'secondary'
  if (C > 0.7) return 'high carbon'
  return Cr + Ni + 2 * Mo + V + W + Math.max(0, Si - 0.5) > 0.4 ? 'low alloy' : 'carbon'
}
