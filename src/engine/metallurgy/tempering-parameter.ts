import { log10, pow } from '#engine/arithmetic/elementary.ts'
import type { Correlation } from '#engine/provenance/correlation.ts'

const HOUR_S = 3600

/** Temperature [K], hold [s] and constant (for hours) of the time-temperature parameter. */
export interface HoldInput {
  readonly temperatureK: number
  readonly durationS: number
  readonly constant: number
}

/**
 * Tempering parameter of one steady hold, M = T (C + log10 t), T in K, t in hours.
 *
 * - in:  `temperatureK` [K], `durationS` [s], `constant` 18 (carbon and low-alloy steel) or 20 (steel with a secondary peak)
 * - out: M [K]; 0 where the hold is too short to count (C + log10 t <= 0)
 */
export const hollomonJaffe: Correlation<HoldInput> = {
  id: 'hollomon-jaffe-1945',
  source:
    'J.H. Hollomon & L.D. Jaffe, Trans. AIME 162 (1945) 223; constant 18: R.A. Grange & R.W. Baughman, Trans. ASM 48 (1956) 165',
  output: 'tempering parameter [K]',
  validFor: { temperatureK: [350, 1000], durationS: [1, 360000], constant: [14, 23] },
  checks: [
    // Grange-Baughman print 1.8 M / 1000: 15.5 at 204 degC and 28.3 at 600 degC for one hour.
    {
      input: { temperatureK: 477.15, durationS: 3600, constant: 18 },
      expected: 15500 / 1.8,
      within: 30,
      from: 'Grange & Baughman 1956',
    },
    {
      input: { temperatureK: 873.15, durationS: 3600, constant: 18 },
      expected: 28300 / 1.8,
      within: 30,
      from: 'Grange & Baughman 1956',
    },
    {
      input: { temperatureK: 470.35, durationS: 7200, constant: 18 },
      expected: 478.15 * 18,
      within: 10,
      from: '1 h at 205 degC = 2 h at 197 degC',
    },
  ],
  evaluate: ({ temperatureK, durationS, constant }) =>
    durationS > 0 ? Math.max(0, temperatureK * (constant + log10(durationS / HOUR_S))) : 0,
}

/**
 * The parameter after one more stretch of a history: the time at `temperatureK` that would have given `parameterK` is found,
 * `durationS` is added to it, and the sum is turned back. Stretches may come in any number, order and length.
 *
 * - in:  `parameterK` so far [K], 0 = not tempered; `constant` for hours; `temperatureK` [K]; `durationS` [s]
 * - out: parameter [K], never below `parameterK`
 */
export function advanceParameter(parameterK: number, constant: number, temperatureK: number, durationS: number): number {
  if (!(durationS > 0)) return parameterK
  const beforeH = parameterK > 0 ? pow(10, parameterK / temperatureK - constant) : 0
  // Colder than the history by so much that this stretch cannot add to it.
  if (beforeH > 1e12) return parameterK
  return Math.max(parameterK, temperatureK * (constant + log10(beforeH + durationS / HOUR_S)))
}
