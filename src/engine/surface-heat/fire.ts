import { SCALED_EMISSIVITY, type SurfaceContact } from './air.ts'
import type { Fire, FireKind } from './gear.ts'

/** What a kind of fire does to steel, and how well a smith reads the heat in it. */
export interface FireNature {
  /** Gas or walls while the piece is being brought up [K]; a muffle stands at its set temperature instead. */
  readonly hotK: number | undefined
  /** Convection [W/(m2 K)] for a bar of 25 mm. */
  readonly film: number
  readonly emissivity: number
  /** How far the heat is from what was meant, one sigma [K]. */
  readonly judgedWithinK: number
  readonly source: string
}

/**
 * Furnace texts give gas or wall 1100..1400 degC for a coal fire, 950..1250 for a lined gas forge, 1600..2000 for a torch flame, with
 * convection 50..150, 20..60, 60..200 (small spot) and 8..15 W/(m2 K) in a muffle: from memory, a factor of 1.5 (torch 2) either way.
 * The lower part of each range is taken for hardening, where the smith works in a quiet fire.
 * Reading a heat by eye: 15..25 K in constant shade for a practised smith, 40 K otherwise (memory); a muffle has its thermocouple.
 */
export const FIRE_NATURES: { readonly [Kind in FireKind]: FireNature } = {
  coal: {
    hotK: 1450,
    film: 70,
    emissivity: 0.85,
    judgedWithinK: 22,
    source: 'furnace texts: piece buried in a bright bed (memory, factor 1.5)',
  },
  charcoal: {
    hotK: 1400,
    film: 60,
    emissivity: 0.85,
    judgedWithinK: 22,
    source: 'as coal, a milder blast (memory, factor 1.5)',
  },
  gas: {
    hotK: 1350,
    film: 40,
    emissivity: 0.7,
    judgedWithinK: 20,
    source: 'furnace texts: lined chamber with burner (memory, factor 1.5)',
  },
  muffle: {
    hotK: undefined,
    film: 12,
    emissivity: SCALED_EMISSIVITY,
    judgedWithinK: 8,
    source: 'electric muffle, set temperature within 10 K; view factor 1 (handbook)',
  },
  torch: {
    hotK: 1950,
    film: 110,
    emissivity: 0.15,
    judgedWithinK: 30,
    source: 'furnace texts: open flame on a piece, small spot (memory, factor 2)',
  },
}

/** Convection falls slowly with size in a stream (Churchill & Bernstein: about the -0.4th power); the table is for 25 mm. */
const TABLE_ACROSS_M = 0.025

/**
 * Temperature of gas and walls [K] while a piece is brought up to `toK`: that of the fire's kind, or a muffle's set temperature, a little
 * above the goal so that the surface comes there in finite time.
 */
export function fireSourceK(fire: Fire, toK: number): number {
  const { hotK } = FIRE_NATURES[fire.kind]
  return hotK === undefined ? toK + 8 : Math.max(hotK, toK + 60)
}

/**
 * A fire around steel with gas and walls at `gasK` [K]: `fireSourceK` while it heats up, the wanted heat itself while the smith holds the
 * piece there. `acrossM` is a typical section [m], `factor` multiplies the film.
 */
export function fireContact(
  fire: Fire,
  gasK: number,
  options: { readonly acrossM: number; readonly factor?: number },
): SurfaceContact {
  const { acrossM, factor = 1 } = options
  if (!(acrossM > 0)) throw new RangeError(`fire: acrossM ${acrossM} m must be above 0`)
  const { film, emissivity } = FIRE_NATURES[fire.kind]
  const sized = film * Math.min(2, Math.max(0.5, Math.sqrt(TABLE_ACROSS_M / acrossM))) * factor
  return { fluid: [[0, gasK]], film: [[gasK, sized]], emissivity }
}
