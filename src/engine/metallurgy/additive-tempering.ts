import { ln } from '#engine/arithmetic/elementary.ts'
import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import { type Composition, compositionOf } from '#engine/materials/steel.ts'
import type { Correlation } from '#engine/provenance/correlation.ts'

/** Composition with the Grange-Baughman parameter P = 1.8 T (18 + log10 t) / 1000, T in K and t in hours. */
export interface AdditiveInput extends Composition {
  readonly parameter: number
}

/** Parameters between which the increments are linear. */
export const ADDITIVE_NODES = [15.5, 18, 20, 22, 24, 26, 28, 30, 32] as const

/**
 * Vickers hardness by wt%, at the nodes of the parameter. Least squares to R.A. Grange & R.W. Baughman, Trans. ASM 48 (1956) 165
 * (40 s to 32 h, 204-704 degC), with molybdenum counted as `molybdenumCounts` says; vanadium as in the fit without that, nickel
 * between the fit and the factors that they print. 0.8 HRC mean error on their
 * heats, 1.0 with each heat left out in turn.
 *
 * All other sources read softer: sheets of low-alloy and tool steel by 9, tensile test bars by 7, rounds by 9, Hollomon & Jaffe by 6 HV, much alike over the
 * whole range. The level is therefore that of five sources, each counted once: 6 HV under the one laboratory that the increments rest on.
 */
const BETWEEN_SOURCES_HV = -6
const BASE = [159, 140, 130, 118, 85, 70, 80, 94, 112]
const ROOT_CARBON = [629, 548, 460, 394, 354, 309, 240, 172, 121]
const BY_ELEMENT = {
  Mn: [2, 5, 25, 19, 32, 33, 25, 20, 10],
  Si: [24, 63, 74, 67, 39, 30, 38, 35, 17],
  Ni: [4, 3, 5, 3, 6, 8, 8, 6, 6],
  Cr: [20, 19, 52, 61, 66, 62, 57, 58, 48],
  Mo: [0, 0, 14, 75, 159, 230, 250, 204, 93],
  V: [0, 0, 1, 22, 62, 166, 253, 109, 0],
} as const

/**
 * Most of each element that counts, wt%: the ends of the fitted range, beyond which nothing is known. Carbon beyond 0.8 % lowers Ms and leaves carbide, but the
 * sheets of O1, O6, W2 and 1095 show no harder tempered martensite than that of 0.8 % carbon.
 */
const COUNTS_UP_TO = { Mn: 2.1, Si: 2.2, Ni: 4, Cr: 1.7, Mo: Number.POSITIVE_INFINITY, V: 0.25 } as const
const CARBON_UP_TO = 0.8

/**
 * Molybdenum that counts [wt%], with half of the tungsten: each doubling adds the same once there is much (0.25 % as 0.2, 1 % as 0.55, 5 % as 1.2), and half
 * beside 0.8 % of chromium, as Grange & Baughman print two columns of molybdenum, without and with chromium.
 */
function molybdenumCounts({ Mo, W, Cr }: Composition): number {
  return (MOLYBDENUM_FULL * ln(1 + (Mo + 0.5 * W) / MOLYBDENUM_FULL)) / (1 + Math.min(1, Cr / 0.8))
}
const MOLYBDENUM_FULL = 0.5

function rowsOf(values: readonly number[]): Rows {
  return ADDITIVE_NODES.map((node, i) => [node, values[i]!] as const)
}
const BASE_ROWS = rowsOf(BASE)
const ROOT_CARBON_ROWS = rowsOf(ROOT_CARBON)
const ELEMENT_ROWS = (Object.keys(BY_ELEMENT) as (keyof typeof BY_ELEMENT)[]).map((element) => ({
  element,
  upTo: COUNTS_UP_TO[element],
  rows: rowsOf(BY_ELEMENT[element]),
}))

/** Hardness of tempered martensite of carbon and low-alloy steel [HV]. */
export const additiveTempering: Correlation<AdditiveInput> = {
  id: 'grange-baughman-additive',
  source:
    'fit to R.A. Grange & R.W. Baughman, Trans. ASM 48 (1956) 165: carbon base and increments by element; level by five sources',
  output: 'hardness of tempered martensite [HV]',
  validFor: {
    parameter: [15.5, 32],
    C: [0.2, 0.8],
    Mn: [0, 2.1],
    Si: [0, 2.2],
    Ni: [0, 4],
    Cr: [0, 1.6],
    Mo: [0, 0.4],
    V: [0, 0.2],
  },
  checks: [
    { input: { ...compositionOf({ C: 0.4 }), parameter: 20 }, expected: 415, within: 2, from: 'plain carbon base, 0.4 C' },
    { input: { ...compositionOf({ C: 0.8 }), parameter: 28 }, expected: 289, within: 2, from: 'plain carbon base, 0.8 C' },
    // 1045 after 1 h at 427 degC (P 22.7): 39.7 HRC worked, 40.7 measured, that is 385-399 HV.
    {
      input: { ...compositionOf({ C: 0.45, Mn: 0.75, Si: 0.22 }), parameter: 22.69 },
      expected: 392,
      within: 12,
      from: 'Grange & Baughman, 1045, 427 degC 1 h',
    },
  ],
  evaluate: (input) => {
    const p = input.parameter
    let hv =
      BETWEEN_SOURCES_HV +
      interpolate(BASE_ROWS, p) +
      interpolate(ROOT_CARBON_ROWS, p) * Math.sqrt(Math.min(CARBON_UP_TO, Math.max(0, input.C)))
    for (const { element, upTo, rows } of ELEMENT_ROWS)
      hv += interpolate(rows, p) * (element === 'Mo' ? molybdenumCounts(input) : Math.min(upTo, input[element]))
    return hv
  },
}
