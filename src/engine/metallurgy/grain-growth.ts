import { exp, ln, log10, pow } from '#engine/arithmetic/elementary.ts'
import type { Composition } from '#engine/materials/steel.ts'

const GAS = 8.314
const LEVEL_MICROMETRES = 76671
const TIME_POWER = 0.211

function activation({ C, Ni, Cr, Mo }: Composition): number {
  return 89098 + 3581 * C + 1211 * Ni + 1443 * Cr + 4031 * Mo
}

/** ASTM E112 number of a grain of that mean intercept. */
function numberOf(micrometres: number): number {
  return -3.2877 - 6.6438 * log10(micrometres / 1000)
}

/**
 * ASTM E112 number of the austenite grain that grew freely for `s` seconds at `atK`: Lee & Lee, Materials & Design 29 (2008) 1840, from
 * memory. Low-alloy steel, 900 to 1250 degC; nothing pins it, so that real grain is as coarse at most.
 */
export function freeGrainNumber(bulk: Composition, atK: number, s: number): number {
  return numberOf(LEVEL_MICROMETRES * exp(-activation(bulk) / (GAS * atK)) * pow(Math.max(s, 1), TIME_POWER))
}

/** Below this grain of that number cannot have grown coarser, however long it stood [K]: the law turned round for two hours. */
export function growsFromK(bulk: Composition, startNumber: number): number {
  const micrometres = 1000 * pow(10, (-3.2877 - startNumber) / 6.6438)
  return activation(bulk) / (GAS * ln((LEVEL_MICROMETRES * pow(7200, TIME_POWER)) / micrometres))
}

/** Aluminium nitride holds the grain of killed constructional steel up to about here, and has let go of it here [K]: 950..1000 degC in handbooks (memory). */
const PINNED_UNTIL_K = 1223
const FREE_FROM_K = 1298
/** Steel richer than this is sold for its carbides, not for its aluminium [wt%]. */
const RICH_CARBON_WT_PCT = 0.7

/** An austenite grain as ASTM numbers: the best estimate, and how coarse and how fine it may be. */
export interface Grain {
  readonly number: number
  readonly coarsest: number
  readonly finest: number
}

/**
 * The grain that a heat leaves, of a steel that brings grain of `startNumber` to it: no coarser than free growth makes it, and in
 * constructional steel no coarser than it was while aluminium nitride pins it. A heat never makes it finer; cycles do (`refined`).
 */
export function grainAfterHeat(bulk: Composition, startNumber: number, atK: number, heldS: number): Grain {
  const coarsest = Math.min(startNumber, freeGrainNumber(bulk, atK, heldS))
  const rich = bulk.C > RICH_CARBON_WT_PCT || bulk.Cr > 2.5
  const free = rich ? 1 : Math.min(1, Math.max(0, (atK - PINNED_UNTIL_K) / (FREE_FROM_K - PINNED_UNTIL_K)))
  return { number: startNumber - free * (startNumber - coarsest), coarsest, finest: startNumber }
}

/** Grain of the standard's own bar, which is normalised once before its end is quenched (ASTM A255). */
export const STANDARD_NUMBER = 7
/** No forge makes finer grain than this by turning steel over and over: ASTM 9..11 (memory). */
const FINEST_NUMBER = 10
/** Of the way to the finest grain that a heat allows, each trip goes so much: our own law, no source. */
const EACH_TRIP = 0.5

/**
 * ASTM number after each of `times` trips over Ac3 and back to black, all at `atK` for `heldS`. New grains start on the borders of the old
 * ones, so each trip goes half of the way to what growth at that heat allows: the second buys half of what the first does, and so on.
 * The first brings a bar no further than the 7 that hardenability is counted from, since that bar is normalised too.
 */
export function refined(bulk: Composition, startNumber: number, atK: number, heldS: number, times: number): number[] {
  const allowed = Math.min(FINEST_NUMBER, freeGrainNumber(bulk, atK, heldS))
  const after: number[] = []
  let number = startNumber
  for (let trip = 0; trip < times; trip++) {
    if (allowed < number) number = grainAfterHeat(bulk, number, atK, heldS).number
    else {
      const onward = number + EACH_TRIP * (allowed - number)
      number = trip === 0 ? Math.min(onward, Math.max(number, STANDARD_NUMBER)) : onward
    }
    after.push(number)
  }
  return after
}
