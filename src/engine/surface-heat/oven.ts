import type { Rows } from '#engine/arithmetic/table.ts'
import { naturalFilm, type SurfaceContact } from './air.ts'
import type { Oven } from './gear.ts'

/** A thermostat turns on and off about every quarter of an hour: domestic ovens 5..20 min (memory). */
const SWING_PERIOD_S = 900
const PER_PERIOD = 12
/** Freshly ground steel that the temper colours: 0.3..0.5 (memory); a quenched piece still carries some scale. */
const COLOURED_EMISSIVITY = 0.5
/** Warm walls draw a weak current past the piece even at even temperature: domestic oven without fan 8..12 W/(m2 K) (memory). */
const LEAST_FILM = 8
const STEPS_K = [290, 340, 400, 460, 520, 600, 700, 850, 1000] as const

/** True temperature inside [K] when an oven's own reading is `readingK`. */
export function ovenTrueK(oven: Oven, readingK: number): number {
  return Math.min(readingK, oven.maxK) + oven.readsLowK
}

/**
 * Inside an oven whose true mean is `insideK` (`ovenTrueK` of its reading): still warm air and its walls, swinging about the mean with the
 * oven's amplitude for `holdS` [s] and beyond.
 *
 * `acrossM` is a typical section [m]; `factor` multiplies the film (the ensemble's).
 */
export function ovenContact(
  oven: Oven,
  insideK: number,
  options: { readonly acrossM: number; readonly holdS: number; readonly factor?: number },
): SurfaceContact {
  const { acrossM, holdS, factor = 1 } = options
  if (!(acrossM > 0)) throw new RangeError(`oven: acrossM ${acrossM} m must be above 0`)
  if (!(holdS >= 0)) throw new RangeError(`oven: holdS ${holdS} s must not be negative`)
  const film = STEPS_K.map(
    (surfaceK) => [surfaceK, factor * Math.max(LEAST_FILM, naturalFilm(surfaceK, insideK, acrossM))] as const,
  )
  return { fluid: swinging(insideK, oven.swingK, holdS), film, emissivity: COLOURED_EMISSIVITY }
}

/** A sine about `meanK`, as straight pieces; one row where nothing swings. */
function swinging(meanK: number, amplitudeK: number, holdS: number): Rows {
  if (!(amplitudeK > 0)) return [[0, meanK]]
  const periods = Math.min(200, Math.ceil(holdS / SWING_PERIOD_S) + 1)
  return Array.from({ length: periods * PER_PERIOD + 1 }, (_, i) => {
    const turn = SINE[i % PER_PERIOD]!
    return [(i * SWING_PERIOD_S) / PER_PERIOD, meanK + amplitudeK * turn] as const
  })
}

const HALF_ROOT_3 = Math.sqrt(3) / 2
/** Sine of every thirtieth degree, from a table so that all machines agree. */
const SINE = [0, 0.5, HALF_ROOT_3, 1, HALF_ROOT_3, 0.5, 0, -0.5, -HALF_ROOT_3, -1, -HALF_ROOT_3, -0.5] as const
