import { ln } from '#engine/arithmetic/elementary.ts'
import { CLASSES } from '#engine/kinetics/temperature-classes.ts'
import { type Body, readAt, type Spot } from '#engine/simulation/body.ts'
import { type NodeState, ROOM_K, type RoundState } from '#engine/simulation/node-state.ts'

/** Slowest cooling that makes a difference: anything slower is as soft as the steel gets [ln s]. */
export const SLOWEST_LN_S = ln(1e6)

/** What the spots went through in one treatment [spots each]. */
export interface SpotHistory {
  readonly peakK: Float64Array
  readonly soakS: Float64Array
  readonly lnCoolingS: Float64Array
  /** How long at which temperature: class after class [CLASSES x spots, s]. */
  readonly dwellS: Float64Array
  readonly lowestK: Float64Array
  readonly parameter18K: Float64Array
  readonly parameter20K: Float64Array
  readonly temperPeakK: Float64Array
  /** Tempers since the heat, of which each gives so much by itself: times, parameter for the constant 20 [K], hottest [K]. */
  readonly rounds: readonly RoundState[]
}

export function historyAt(
  { body, state }: { readonly body: Body; readonly state: NodeState },
  spots: readonly Spot[],
): SpotHistory {
  const nodes = historyOfNodes(state)
  const read = (field: Float64Array): Float64Array => readAt(body, field, spots)
  const n = state.peakK.length
  const dwellS = new Float64Array(CLASSES * spots.length)
  for (let k = 0; k < CLASSES; k++) dwellS.set(read(nodes.dwellS.subarray(k * n, (k + 1) * n)), k * spots.length)
  return {
    peakK: read(nodes.peakK),
    soakS: read(nodes.soakS),
    lnCoolingS: read(nodes.lnCoolingS),
    dwellS,
    lowestK: read(nodes.lowestK),
    parameter18K: read(nodes.parameter18K),
    parameter20K: read(nodes.parameter20K),
    temperPeakK: read(nodes.temperPeakK),
    rounds: nodes.rounds.map(({ times, parameter20K, peakK }) => ({
      times,
      parameter20K: read(parameter20K),
      peakK: read(peakK),
    })),
  }
}

/** The same with every node of the mesh as a spot [n each]. */
export function historyOfNodes(state: NodeState): SpotHistory {
  const { peakK, soakS, dwellS, parameter18K, parameter20K, temperPeakK, rounds } = state
  return {
    peakK,
    soakS,
    lnCoolingS: state.coolingS.map((s) => Math.min(SLOWEST_LN_S, ln(Math.max(s, 0.05)))),
    dwellS,
    lowestK: state.lowestK.map((k) => Math.min(k, 2000)),
    parameter18K,
    parameter20K,
    temperPeakK,
    rounds,
  }
}

/**
 * How the cooling time at each spot answers to the film: slopes from two more hardening runs on a coarse mesh. The cooling time is
 * close to a power of the film coefficient, so its logarithm is taken as linear on either side.
 */
export interface Response {
  readonly lnCoolingPerLnFilmUp: Float64Array
  readonly lnCoolingPerLnFilmDown: Float64Array
  /** How much of a fire's error reaches the spot: places that stay cooler than the heat follow it in part. */
  readonly peakPerK: Float64Array
}

export function responseOf(
  base: SpotHistory,
  filmUp: SpotHistory,
  filmDown: SpotHistory | undefined,
  lnFilm: number,
  toK: number,
): Response {
  const slope = (now: Float64Array, step: number): Float64Array =>
    now.map((value, i) =>
      base.lnCoolingS[i]! >= SLOWEST_LN_S - 1e-9 && value >= SLOWEST_LN_S - 1e-9 ? 0 : (value - base.lnCoolingS[i]!) / step,
    )
  const up = slope(filmUp.lnCoolingS, lnFilm)
  return {
    lnCoolingPerLnFilmUp: up,
    lnCoolingPerLnFilmDown: filmDown === undefined ? up : slope(filmDown.lnCoolingS, -lnFilm),
    peakPerK: peakFollows(base, toK),
  }
}

/** How much of an error of the fire, meant to give `toK`, reaches each spot: all of it where the spot came to the heat. */
export function peakFollows({ peakK }: SpotHistory, toK: number): Float64Array {
  return peakK.map((reachedK) => Math.max(0, Math.min(1, (reachedK - ROOM_K) / (toK - ROOM_K))))
}
