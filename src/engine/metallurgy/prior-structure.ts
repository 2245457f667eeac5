import { gradeById } from '#engine/materials/catalogue.ts'
import type { Steel } from '#engine/materials/steel.ts'

/**
 * How the carbides lie before the heat, from the quickest to dissolve to the slowest: martensite of an earlier quench, fine pearlite
 * of a normalised piece, coarser pearlite of a bar as rolled or forged, globules of annealed bar.
 */
export type PriorStructure = 'martensite' | 'fine' | 'rolled' | 'spheroidised'

/**
 * Time for its carbides to go into solution [s], 60 K above Ac1 in plain steel: 20..60 fine pearlite, 200..600 coarse globules (memory,
 * order of magnitude). Martensite throws out carbide finer than any pearlite on the way up, and bar as rolled lies between.
 */
export const DISSOLVING_S: { readonly [Prior in PriorStructure]: number } = {
  martensite: 20,
  fine: 40,
  rolled: 80,
  spheroidised: 300,
}

/** Richer in carbon than this, a bar is sold annealed to globules [wt%]: common practice, no source. */
const SOLD_ANNEALED_WT_PCT = 0.7
const SOLD_ANNEALED_FAMILY = /tool|high-speed|mould|die|bearing/

/** How a bar of this steel comes when nobody says: tool and rich steel annealed to globules, the rest as rolled. Common practice, no source. */
export function structureAsDelivered({ gradeId, composition: { C, Cr, W, V } }: Steel): PriorStructure {
  const family = gradeId === undefined ? '' : (gradeById(gradeId)?.family ?? '')
  const rich = C > SOLD_ANNEALED_WT_PCT || Cr > 2.5 || W > 1.5 || V > 0.5
  return rich || SOLD_ANNEALED_FAMILY.test(family) ? 'spheroidised' : 'rolled'
}
