import { type Composition, compositionOf } from '#engine/materials/steel.ts'
import { retainedAusteniteFraction } from './austenite.ts'
import { hvFromHrc } from './hardness-scales.ts'
import { fullMartensiteHrc } from './martensite-hardness.ts'

/** Retained austenite between martensite plates [HV]: 250-300 (G. Krauss, Steels, 2005; memory). */
const RETAINED_AUSTENITE_HV = 275
/**
 * Alloy carbides [HV], and their volume for each wt% that is not in solution: of carbon (M7C3 and M23C6), and of the elements whose
 * carbides are poor in carbon (memory, +/-20 %).
 */
const CARBIDE_HV = 1500
const CARBIDE_PER_CARBON = 0.1
const CARBIDE_PER_HEAVY = 0.008
/** Carbon in carbides that the curves measured on plain steel already hold [wt%]. */
const PLAIN_CARBIDE_WT_PCT = 0.1
const ROOM_K = 298
/** The plain steel that the curves were measured on, but for its carbon. */
const PLAIN = compositionOf({ Mn: 0.6, Si: 0.25 })

/** Volume share of carbides beyond those of plain steel, by what `bulk` holds and `austenite` has not in solution. */
function carbideShare(bulk: Composition, austenite: Composition): number {
  const carbon = Math.max(0, bulk.C - austenite.C - PLAIN_CARBIDE_WT_PCT)
  const heavy = Math.max(0, bulk.W + bulk.Mo + 2 * bulk.V - austenite.W - austenite.Mo - 2 * austenite.V)
  return Math.min(0.2, CARBIDE_PER_CARBON * carbon + CARBIDE_PER_HEAVY * heavy)
}

/**
 * Hardness [HV] of an austenite fully quenched to `minK`: martensite and what austenite is retained, by share.
 *
 * The curves of hardness against carbon were measured on plain steel with the austenite it retains; that share is taken out first,
 * so that steel which retains more (rich in carbon and alloy in solution) comes out softer and colder quenching harder.
 * With `bulk`, the steel as it is, the carbides that the heat left undissolved add what they hold up (two units of HRC in D2).
 * A file reads the martensite and hardly notices the retained austenite.
 */
export function hardenedHv(
  austenite: Composition,
  options: { readonly minK?: number; readonly bulk?: Composition } = {},
): number {
  const measuredHv = hvFromHrc(fullMartensiteHrc(austenite.C))
  const usual = Math.min(0.2, retainedAusteniteFraction({ ...PLAIN, C: Math.min(austenite.C, 0.95) }, ROOM_K))
  const martensiteHv = (measuredHv - usual * RETAINED_AUSTENITE_HV) / (1 - usual)
  const retained = retainedAusteniteFraction(austenite, options.minK ?? ROOM_K)
  const matrixHv = (1 - retained) * martensiteHv + retained * RETAINED_AUSTENITE_HV
  const carbide = carbideShare(options.bulk ?? austenite, austenite)
  return matrixHv + carbide * (CARBIDE_HV - matrixHv)
}
