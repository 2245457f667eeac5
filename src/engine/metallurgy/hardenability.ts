import { exp, ln } from '#engine/arithmetic/elementary.ts'
import type { Composition } from '#engine/materials/steel.ts'
import { DIVIDING_FACTORS } from './dividing-factors.ts'
import { idealDiameterM } from './ideal-diameter.ts'
import { fullMartensiteHrc } from './martensite-hardness.ts'

export { effectiveDiameterM, idealDiameterM } from './ideal-diameter.ts'

const SIXTEENTH_M = 0.0015875
const INCH_M = 0.0254

/**
 * Hardness at `distanceM` from the quenched end of an end-quench bar [HRC], ASTM A255: full martensite divided by the standard's
 * factor for the ideal diameter.
 *
 * - in:    `composition` dissolved in the austenite [wt%], `distanceM` [m] from the quenched end, ASTM `grainSize`
 * - valid: ideal diameter 1..7 in, 1/16..32/16 in; outside it is carried on so that hardness never rises with distance and never
 *          falls with hardenability
 */
export function jominyHrc(composition: Composition, distanceM: number, grainSize: number): number {
  return jominyByIdealDiameter(composition.C, idealDiameterM(composition, grainSize), distanceM)
}

/** `jominyHrc` with the ideal diameter known [m]: for sampled steels. */
export function jominyByIdealDiameter(carbonWtPct: number, diameterM: number, distanceM: number): number {
  return fullMartensiteHrc(carbonWtPct) / dividingFactor(diameterM / INCH_M, distanceM / SIXTEENTH_M)
}

/** Dividing factor (initial hardness over hardness at distance) for an ideal diameter [in] at a distance [sixteenths of an inch]; 1 or more. */
export function dividingFactor(diameterIn: number, sixteenths: number): number {
  if (sixteenths <= 1) return 1
  let before = { sixteenths: 1, factor: 1 }
  let greatest = 1
  for (const row of DIVIDING_FACTORS) {
    // A row never divides by less than the rows nearer the quenched end.
    greatest = Math.max(greatest, rowFactor(row, diameterIn))
    if (row.sixteenths >= sixteenths) {
      const share = (sixteenths - before.sixteenths) / (row.sixteenths - before.sixteenths)
      return before.factor + share * (greatest - before.factor)
    }
    before = { sixteenths: row.sixteenths, factor: greatest }
  }
  // Past two inches the curve flattens: the factor goes on with the logarithm of the distance.
  return before.factor * (1 + 0.12 * ln(sixteenths / before.sixteenths))
}

type Row = (typeof DIVIDING_FACTORS)[number]
const LEAST_IN = 0.6
const FADES_IN = 0.8

function polynomial(row: Row, di: number): number {
  const [a0, a1, a2, a3, a4, a5] = row.coefficients
  return a0 + di * (a1 + di * (a2 + di * (a3 + di * (a4 + di * a5))))
}

/**
 * Factor of one row: the polynomial from 0.6 in up to the row's limit. Above it what is left over 1 dies away within an inch or two;
 * below 0.6 in the polynomial's tangent goes on.
 */
function rowFactor(row: Row, di: number): number {
  if (di > row.limitIn) return 1 + Math.max(0, polynomial(row, row.limitIn) - 1) * exp(-(di - row.limitIn) / FADES_IN)
  if (di >= LEAST_IN) return Math.max(1, polynomial(row, di))
  const slope = Math.min(0, (polynomial(row, LEAST_IN + 0.05) - polynomial(row, LEAST_IN)) / 0.05)
  return polynomial(row, LEAST_IN) + slope * (Math.max(0.2, di) - LEAST_IN)
}
