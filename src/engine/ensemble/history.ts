import { ln } from '#engine/arithmetic/elementary.ts'
import { readAt, type Spot } from '#engine/simulation/body.ts'
import type { Treatment } from '#engine/simulation/treatment.ts'

/** Slowest cooling that makes a difference: anything slower is as soft as the steel gets [ln s]. */
export const SLOWEST_LN_S = ln(1e6)

/** What the spots went through in one treatment [spots each]. */
export interface SpotHistory {
  readonly peakK: Float64Array
  readonly soakS: Float64Array
  readonly lnCoolingS: Float64Array
  readonly lowestK: Float64Array
  readonly parameter18K: Float64Array
  readonly parameter20K: Float64Array
  readonly temperPeakK: Float64Array
}

export function historyAt(treatment: Treatment, spots: readonly Spot[]): SpotHistory {
  const { body, state } = treatment
  const lnCooling = state.coolingS.map((s) => Math.min(SLOWEST_LN_S, ln(Math.max(s, 0.05))))
  const read = (field: Float64Array): Float64Array => readAt(body, field, spots)
  return {
    peakK: read(state.peakK),
    soakS: read(state.soakS),
    lnCoolingS: read(lnCooling),
    lowestK: read(state.lowestK.map((k) => Math.min(k, 2000))),
    parameter18K: read(state.parameter18K),
    parameter20K: read(state.parameter20K),
    temperPeakK: read(state.temperPeakK),
  }
}

/**
 * How the history at each spot answers to the film and to the heat: slopes from a few extra hardening runs on a coarse mesh.
 * The cooling time is close to a power of the film coefficient, so its logarithm is taken as linear on either side.
 */
export interface Response {
  readonly lnCoolingPerLnFilmUp: Float64Array
  readonly lnCoolingPerLnFilmDown: Float64Array
  readonly lnCoolingPerK: Float64Array
  readonly peakPerK: Float64Array
}

export function responseOf(
  base: SpotHistory,
  runs: { readonly filmUp: SpotHistory; readonly filmDown: SpotHistory; readonly hotter: SpotHistory },
  steps: { readonly lnFilm: number; readonly heatK: number },
): Response {
  const slope = (now: Float64Array, before: Float64Array, step: number): Float64Array =>
    now.map((value, i) => (before[i]! >= SLOWEST_LN_S - 1e-9 && value >= SLOWEST_LN_S - 1e-9 ? 0 : (value - before[i]!) / step))
  return {
    lnCoolingPerLnFilmUp: slope(runs.filmUp.lnCoolingS, base.lnCoolingS, steps.lnFilm),
    lnCoolingPerLnFilmDown: slope(runs.filmDown.lnCoolingS, base.lnCoolingS, -steps.lnFilm),
    lnCoolingPerK: slope(runs.hotter.lnCoolingS, base.lnCoolingS, steps.heatK),
    peakPerK: runs.hotter.peakK.map((value, i) => (value - base.peakK[i]!) / steps.heatK),
  }
}
