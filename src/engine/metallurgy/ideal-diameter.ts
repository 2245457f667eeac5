import { exp, pow } from '#engine/arithmetic/elementary.ts'
import { type Composition, compositionOf } from '#engine/materials/steel.ts'
import type { Correlation } from '#engine/provenance/correlation.ts'

const INCH_M = 0.0254

/** Composition with the ASTM grain number of the austenite. */
export interface HardenabilityInput extends Composition {
  readonly grainSize: number
}

/** Carbon factor at grain size 7 [in], each row from its own piece of A255. */
function carbonFactor(c: number): number {
  if (c <= 0.39) return 0.54 * c
  if (c <= 0.55) return 0.171 + 0.001 * c + 0.265 * c * c
  if (c <= 0.65) return 0.115 + 0.268 * c - 0.038 * c * c
  if (c <= 0.75) return 0.143 + 0.2 * c
  return 0.062 + 0.409 * c - 0.135 * c * c
}

/** Ideal critical diameter (half martensite at the centre in a perfect quench) [in]. */
export const a255IdealDiameter: Correlation<HardenabilityInput> = {
  id: 'a255-ideal-diameter',
  source: 'ASTM A255-10, ideal diameter from composition; grain size other than 7 after Grossmann (memory, +/-3 %)',
  output: 'ideal diameter [in]',
  validFor: {
    C: [0.1, 0.7],
    Mn: [0.5, 1.65],
    Si: [0.15, 0.6],
    Ni: [0, 1.5],
    Cr: [0, 1.35],
    Mo: [0, 0.55],
    Cu: [0, 0.35],
    V: [0, 0.2],
    grainSize: [4, 10],
  },
  checks: [
    {
      input: { ...compositionOf({ C: 0.22, Mn: 0.8, Si: 0.18, Ni: 0.1, Cr: 0.43, Mo: 0.25 }), grainSize: 7 },
      expected: 1.72,
      within: 0.01,
      from: 'worked example of ASTM A255',
    },
    {
      input: { ...compositionOf({ C: 0.6, Mn: 0.88, Si: 0.25, Ni: 0.05, Cr: 0.8, Mo: 0.02, Cu: 0.1 }), grainSize: 7 },
      expected: 3.697,
      within: 0.005,
      from: 'factors worked by hand, 5160-like',
    },
    {
      input: { ...compositionOf({ C: 0.4, Mn: 0.7, Si: 0.25, Ni: 1.8, Cr: 0.8, Mo: 0.25, Cu: 0.1 }), grainSize: 7 },
      expected: 6.851,
      within: 0.005,
      from: 'factors worked by hand, 4340-like',
    },
  ],
  evaluate: (c) =>
    carbonFactor(c.C) *
    pow(1.083, 7 - c.grainSize) *
    (c.Mn <= 1.2 ? 3.3333 * c.Mn + 1 : 5.1 * c.Mn - 1.12) *
    (1 + 0.7 * c.Si) *
    (1 + 0.363 * c.Ni) *
    (1 + 2.16 * c.Cr) *
    (1 + 3 * c.Mo) *
    (1 + 0.365 * c.Cu) *
    (1 + 1.73 * c.V),
}

/**
 * Ideal diameter [m] by ASTM A255 from what is dissolved in the austenite (`composition`) and its grain number.
 *
 * Valid for 0.10-0.70 C within the limits of `a255IdealDiameter`; between 0.70 and 0.90 C the standard's own carbon row goes on
 * (+/-30 % on the diameter), above it is held at 0.90. `limitsBroken` of the correlation says which limits a steel breaks.
 */
export function idealDiameterM(composition: Composition, grainSize: number): number {
  return INCH_M * a255IdealDiameter.evaluate({ ...composition, C: Math.min(composition.C, 0.9), grainSize })
}

/**
 * Ideal diameter [m] of a steel of which the hardening heat leaves carbide undissolved: `idealDiameterM` of what is in solution, less
 * what the carbides take, since pearlite starts on them.
 *
 * Fitted here to the critical diameters of seven W-type steels in brine (Roberts, Krauss & Kennedy, Tool Steels, 5th ed., Table 7-3:
 * 0.6 to 0.8 of the ideal diameter by A255), fading with chromium as the depth of 100Cr6 rounds in oil asks for (0.85).
 * `bulk` is the steel as it is, `austenite` what is in solution.
 */
export function effectiveDiameterM(bulk: Composition, austenite: Composition, grainSize: number): number {
  const left = Math.min(1, Math.max(0, bulk.C - austenite.C) / CARBIDE_FULL_WT_PCT)
  // In poor steel with much vanadium or chromium the carbides are few and hold no pearlite back.
  const rich = Math.min(1, Math.max(0, (austenite.C - 0.6) / 0.15))
  return idealDiameterM(austenite, grainSize) * (1 - CARBIDE_TAKES * left * rich * exp(-bulk.Cr / 2))
}

/** Undissolved carbon at which carbides have their full effect [wt%], and what they then take of the diameter. */
const CARBIDE_FULL_WT_PCT = 0.08
const CARBIDE_TAKES = 0.32
