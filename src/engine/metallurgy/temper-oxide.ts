import { exp, ln } from '#engine/arithmetic/elementary.ts'
import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import type { Composition } from '#engine/materials/steel.ts'

/** The film thickens as x^2 = k0 exp(-Q/RT) t; Q 110..130 kJ/mol (from memory): ten times as long looks as if 35 to 45 K hotter. */
const ACTIVATION_PER_GAS_K = 120000 / 8.314
/** Heat at which the seconds are counted [K]. */
const COUNTED_AT_K = 573.15
/** The tables of colours mean steel that took about this long to come to them [s] (from memory). */
const TABLE_S = 300
/** Thinner than this no film can be seen, whatever the time [K]. */
const COLDEST_K = 400

/** Bright steel of one name and polish, in one light, shows a colour within so much of the heat that the table gives it: one sigma [K] (from memory; tables differ by 10..20). */
export const COLOUR_SIGMA_K = 20

/** How much hotter chromium wants steel to be for the same colour [K by wt%]: 40..60 at 5 %, 150..200 in stainless (from memory). */
const BY_CHROMIUM: Rows = [
  [0.5, 0],
  [1, 8],
  [5, 50],
  [12, 150],
  [18, 180],
]
/** The same for each wt% of silicon over 0.4 [K]: the direction is known, the figure is of the right order only (memory). */
const BY_SILICON_K = 8

/** How much hotter than plain carbon steel it must be for the same colour in the same time [K]. */
export function hotterForColourK({ Cr, Si }: Pick<Composition, 'Cr' | 'Si'>): number {
  return interpolate(BY_CHROMIUM, Cr) + BY_SILICON_K * Math.max(0, Math.min(3, Si) - 0.4)
}

/** What a stretch at `temperatureK` adds to the film, in seconds of plain carbon steel at 300 degC; `hotterK` as `hotterForColourK` gives it. */
export function oxideGrownS(temperatureK: number, durationS: number, hotterK = 0): number {
  const k = temperatureK - hotterK
  return k < COLDEST_K || durationS <= 0 ? 0 : durationS * exp(ACTIVATION_PER_GAS_K * (1 / COUNTED_AT_K - 1 / k))
}

/**
 * The heat at which the table of colours has a film of so many seconds: what the colour says by itself [K], 0 where there is none to see. Steel that came to its
 * colour in ten seconds is really some 50 K hotter than that, after an hour 40 K cooler.
 */
export function heatByColourK(oxideS: number): number {
  if (!(oxideS > 0)) return 0
  const k = 1 / (1 / COUNTED_AT_K - ln(oxideS / TABLE_S) / ACTIVATION_PER_GAS_K)
  return k < COLDEST_K ? 0 : k
}
