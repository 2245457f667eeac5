import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import type { Composition } from '#engine/materials/steel.ts'

/** Carbon of the austenite that is in balance with cementite, by temperature [degC, wt%]: Fe-C, ASM Alloy Phase Diagrams (memory, +/-0.02 C). */
const ACM: Rows = [
  [727, 0.76],
  [740, 0.8],
  [760, 0.85],
  [780, 0.91],
  [800, 0.96],
  [825, 1.03],
  [850, 1.09],
  [875, 1.16],
  [900, 1.23],
  [950, 1.37],
  [1000, 1.52],
  [1050, 1.69],
  [1100, 1.88],
  [1147, 2.1],
]
const ACM_BACK: Rows = ACM.map(([t, c]) => [c, t])

const PLAIN_EUTECTOID = 0.76
const POOREST_EUTECTOID = 0.3
const ZERO_DEGC_K = 273.15

/** Chromium at its opening slope, counted up to where its curve flattens [wt% C per wt%, wt%]. */
const CHROMIUM = { slope: 0.08, until: 4 } as const

/**
 * How far the alloy other than chromium draws the eutectoid toward less carbon [wt% C]: the opening slopes of Bain & Paxton,
 * Alloying Elements in Steel (1961) (memory, +/-30 %), each element counted up to where its curve flattens.
 */
export function eutectoidShiftBesideChromium(c: Composition): number {
  return (
    0.07 * Math.min(c.Si, 3) +
    0.09 * Math.min(c.Mn, 3) +
    0.05 * Math.min(c.Ni, 5) +
    0.25 * Math.min(c.Mo, 0.8) +
    0.13 * Math.min(c.W, 1.5) +
    0.3 * Math.min(c.V, 0.3)
  )
}

/** Carbon of the eutectoid [wt%], shifted by alloy, chromium included. */
export function eutectoidCarbon(c: Composition): number {
  const shift = eutectoidShiftBesideChromium(c) + CHROMIUM.slope * Math.min(c.Cr, CHROMIUM.until)
  return Math.max(POOREST_EUTECTOID, PLAIN_EUTECTOID - shift)
}

/** Carbon that austenite of plain steel can hold against cementite at `temperatureK` [wt%]. */
export function plainAcmCarbon(temperatureK: number): number {
  const degC = temperatureK - ZERO_DEGC_K
  // Above the eutectic the line is only a guide for high-speed steel, whose cementite-like carbides are long gone: its last slope goes on.
  return degC > 1147 ? 2.1 + 0.0046 * (degC - 1147) : interpolate(ACM, degC)
}

/** Temperature at which the last carbide of this steel is dissolved in balance [K]. */
export function acmTemperatureK(c: Composition): number {
  return ZERO_DEGC_K + interpolate(ACM_BACK, c.C + PLAIN_EUTECTOID - eutectoidCarbon(c))
}
