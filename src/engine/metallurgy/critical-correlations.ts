import { exp } from '#engine/arithmetic/elementary.ts'
import type { Composition } from '#engine/materials/steel.ts'
import { compositionOf } from '#engine/materials/steel.ts'
import type { Correlation, CorrelationCheck } from '#engine/provenance/correlation.ts'

const ZERO_DEGC_K = 273.15

/** Test steels that the hand-worked check values below were computed for. */
const STEEL_1045 = compositionOf({ C: 0.45, Mn: 0.75, Si: 0.22 })
const STEEL_4140 = compositionOf({ C: 0.4, Mn: 0.85, Si: 0.25, Cr: 0.95, Mo: 0.2 })
const STEEL_4340 = compositionOf({ C: 0.4, Mn: 0.7, Si: 0.25, Ni: 1.8, Cr: 0.8, Mo: 0.25 })
const STEEL_5160 = compositionOf({ C: 0.6, Mn: 0.85, Si: 0.22, Cr: 0.8 })
const STEEL_1084 = compositionOf({ C: 0.84, Mn: 0.75, Si: 0.22 })

function degC(input: Composition, expected: number): CorrelationCheck<Composition> {
  return { input, expected: expected + ZERO_DEGC_K, within: 0.6, from: `worked by hand: ${expected} degC` }
}

/** Start of austenite on slow heating (Andrews). */
export const andrewsAc1: Correlation<Composition> = {
  id: 'andrews-1965-ac1',
  source: 'K.W. Andrews, J. Iron Steel Inst. 203 (1965) 721',
  output: 'Ac1 [K]',
  validFor: { C: [0, 0.6], Mn: [0, 2], Si: [0, 1], Cr: [0, 5], Ni: [0, 5], W: [0, 4] },
  checks: [degC(STEEL_1045, 721), degC(STEEL_4140, 737), degC(STEEL_4340, 706), degC(STEEL_5160, 734)],
  evaluate: (c) => ZERO_DEGC_K + 723 - 10.7 * c.Mn - 16.9 * c.Ni + 29.1 * c.Si + 16.9 * c.Cr + 6.38 * c.W,
}

/** Start of austenite on slow heating (Kasatkin). */
export const kasatkinAc1: Correlation<Composition> = {
  id: 'kasatkin-1984-ac1',
  source: 'O.G. Kasatkin et al., Met. Sci. Heat Treat. 26 (1984) 27',
  output: 'Ac1 [K]',
  validFor: { C: [0, 0.83], Mn: [0, 2], Si: [0, 1], Cr: [0, 2], Mo: [0, 1], Ni: [0, 3], V: [0, 0.5], W: [0, 1] },
  checks: [degC(STEEL_1045, 723), degC(STEEL_4140, 739), degC(STEEL_4340, 745), degC(STEEL_5160, 735), degC(STEEL_1084, 722)],
  evaluate: (c) =>
    ZERO_DEGC_K +
    723 -
    7.08 * c.Mn +
    37.7 * c.Si +
    18.1 * c.Cr +
    44.2 * c.Mo +
    8.95 * c.Ni +
    50.1 * c.V +
    21.7 * c.Al +
    3.18 * c.W +
    297 * c.S -
    830 * c.N -
    11.5 * c.C * c.Si -
    14 * c.Mn * c.Si -
    3.1 * c.Si * c.Cr -
    57.9 * c.C * c.Mo -
    15.5 * c.Mn * c.Mo -
    5.28 * c.C * c.Ni -
    6 * c.Mn * c.Ni +
    6.77 * c.Si * c.Ni -
    0.8 * c.Cr * c.Ni -
    27.4 * c.C * c.V +
    30.8 * c.Mo * c.V -
    0.84 * c.Cr * c.Cr -
    3.46 * c.Mo * c.Mo -
    0.46 * c.Ni * c.Ni -
    28 * c.V * c.V,
}

/** End of ferrite on slow heating (Andrews, the short form, which lies nearer to handbook values than the full one). */
export const andrewsAc3: Correlation<Composition> = {
  id: 'andrews-1965-ac3-short',
  source: 'K.W. Andrews, J. Iron Steel Inst. 203 (1965) 721, short form',
  output: 'Ac3 [K]',
  validFor: { C: [0, 0.6], Si: [0, 2], Ni: [0, 5], V: [0, 0.5], Mo: [0, 1], W: [0, 2] },
  checks: [degC(STEEL_1045, 783.7), degC(STEEL_4140, 799.1), degC(STEEL_4340, 773.3), degC(STEEL_5160, 762.6)],
  evaluate: (c) => ZERO_DEGC_K + 910 - 203 * Math.sqrt(c.C) - 15.2 * c.Ni + 44.7 * c.Si + 104 * c.V + 31.5 * c.Mo + 13.1 * c.W,
}

/** End of ferrite on slow heating (Kasatkin). */
export const kasatkinAc3: Correlation<Composition> = {
  id: 'kasatkin-1984-ac3',
  source: 'O.G. Kasatkin et al., Met. Sci. Heat Treat. 26 (1984) 27',
  output: 'Ac3 [K]',
  validFor: { C: [0, 0.83], Mn: [0, 2], Si: [0, 1], Cr: [0, 2], Mo: [0, 1], Ni: [0, 3], V: [0, 0.5], W: [0, 1] },
  checks: [degC(STEEL_1045, 776), degC(STEEL_4140, 786), degC(STEEL_4340, 766), degC(STEEL_5160, 753), degC(STEEL_1084, 727)],
  evaluate: (c) =>
    ZERO_DEGC_K +
    912 -
    370 * c.C -
    27.4 * c.Mn +
    27.3 * c.Si -
    6.35 * c.Cr -
    32.7 * c.Ni +
    95.2 * c.V +
    190 * c.Ti +
    72 * c.Al +
    64.5 * c.Nb +
    5.57 * c.W +
    332 * c.S +
    276 * c.P +
    485 * c.N -
    900 * c.B +
    16.2 * c.C * c.Mn +
    32.3 * c.C * c.Si +
    15.4 * c.C * c.Cr +
    48 * c.C * c.Ni +
    4.32 * c.Si * c.Cr -
    17.3 * c.Si * c.Mo -
    18.6 * c.Si * c.Ni +
    4.8 * c.Mn * c.Ni +
    40.5 * c.Mo * c.V +
    174 * c.C * c.C +
    2.46 * c.Mn * c.Mn -
    6.86 * c.Si * c.Si +
    0.322 * c.Cr * c.Cr +
    9.9 * c.Mo * c.Mo +
    1.24 * c.Ni * c.Ni +
    60.2 * c.V * c.V,
}

/** Martensite start by what is dissolved in the austenite (Barbier). */
export const barbierMs: Correlation<Composition> = {
  id: 'barbier-2014-ms',
  source: 'D. Barbier, Adv. Eng. Mater. 16 (2014) 122',
  output: 'Ms [K]',
  validFor: { C: [0, 1.9], Mn: [0, 10], Si: [0, 3], Cr: [0, 12], Ni: [0, 12], Mo: [0, 6], V: [0, 2] },
  checks: [degC(STEEL_1045, 322), degC(STEEL_4140, 324), degC(STEEL_4340, 299), degC(STEEL_5160, 261), degC(STEEL_1084, 205)],
  evaluate: (c) =>
    ZERO_DEGC_K +
    545 -
    601.2 * (1 - exp(-0.868 * (c.C + c.N))) -
    34.4 * c.Mn -
    13.7 * c.Si -
    9.2 * c.Cr -
    17.3 * c.Ni -
    15.4 * c.Mo +
    10.8 * c.V +
    4.7 * c.Co -
    1.4 * c.Al -
    16.3 * c.Cu -
    361 * c.Nb -
    2.44 * c.Ti -
    3448 * c.B,
}

/** Bainite start (van Bohemen). */
export const vanBohemenBs: Correlation<Composition> = {
  id: 'van-bohemen-2012-bs',
  source: 'S.M.C. van Bohemen, Mater. Sci. Technol. 28 (2012) 487',
  output: 'Bs [K]',
  validFor: { C: [0.1, 1.9], Mn: [0, 2], Si: [0, 2], Cr: [0, 4], Ni: [0, 5], Mo: [0, 2] },
  checks: [degC(STEEL_1045, 648), degC(STEEL_4140, 570), degC(STEEL_4340, 530), degC(STEEL_5160, 559)],
  evaluate: (c) => ZERO_DEGC_K + 839 - 270 * (1 - exp(-1.33 * c.C)) - 86 * c.Mn - 23 * c.Si - 67 * c.Cr - 33 * c.Ni - 75 * c.Mo,
}
