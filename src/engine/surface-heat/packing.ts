import { ln } from '#engine/arithmetic/elementary.ts'
import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import type { SurfaceContact } from './air.ts'

/** Dry powders that a hot piece is buried in to cool slowly. */
export const PACKINGS = ['ashes', 'vermiculite', 'lime'] as const
export type Packing = (typeof PACKINGS)[number]

/** Conductivity by temperature [K, W/(m K)] and heat capacity by volume [J/(m3 K)]. */
interface Bed {
  readonly conductivity: Rows
  readonly jPerM3K: number
}

/**
 * Loose dry powders conduct by the gas in their pores, and by radiation when hot. Handbook ranges: exfoliated vermiculite 0.065 W/(m K) cold,
 * 0.15..0.2 at 600 degC, 110 kg/m3; wood ash 0.07..0.15, 500 kg/m3; slaked lime powder 0.12..0.2, 550 kg/m3 (memory, a factor of 1.5).
 */
const BEDS: { readonly [Each in Packing]: Bed } = {
  ashes: {
    conductivity: [
      [300, 0.08],
      [1000, 0.16],
    ],
    jPerM3K: 500 * 800,
  },
  vermiculite: {
    conductivity: [
      [300, 0.065],
      [900, 0.18],
    ],
    jPerM3K: 110 * 950,
  },
  lime: {
    conductivity: [
      [300, 0.12],
      [1000, 0.2],
    ],
    jPerM3K: 550 * 900,
  },
}

/**
 * A piece buried deep in a dry powder that was at `bedK`, as it is `sinceS` after it went in: the heat that a long round of diameter `acrossM` loses
 * into an endless bed, k dT / (a ln(1 + sqrt(pi t'))) with t' = alpha t / a2. Within 15 % of the exact flux of a cylinder held at one heat (H.S.
 * Carslaw & J.C. Jaeger, Conduction of Heat in Solids, 13.5) for t' up to 10: 0.98 against 0.98 at 1, 0.53 against 0.61 at 10.
 */
export function packedContact(
  packing: Packing,
  bedK: number,
  options: { readonly acrossM: number; readonly sinceS: number },
): SurfaceContact {
  const { acrossM, sinceS } = options
  if (!(acrossM > 0)) throw new RangeError(`packing: acrossM ${acrossM} m must be above 0`)
  if (!(sinceS > 0)) throw new RangeError(`packing: sinceS ${sinceS} s must be above 0`)
  const { conductivity, jPerM3K } = BEDS[packing]
  const radiusM = acrossM / 2
  const film = STEPS_K.map((surfaceK) => {
    const k = interpolate(conductivity, 0.5 * (surfaceK + bedK))
    const t = (k * sinceS) / (jPerM3K * radiusM * radiusM)
    return [surfaceK, k / (radiusM * ln(1 + Math.sqrt(Math.PI * t)))] as const
  })
  return { fluid: [[0, bedK]], film, emissivity: 0 }
}

const STEPS_K = [290, 500, 700, 900, 1100, 1300] as const
