import { exp } from '#engine/arithmetic/elementary.ts'
import type { Composition } from '#engine/materials/steel.ts'

/** Wustite takes this many times the room of the iron that went into it (molar volumes; most of a scale is wustite above 600 degC). */
export const SCALE_PER_METAL = 1.7

/** Carbon steel scales more slowly than iron, in depth of metal: handbook losses 0.05..0.1 mm in an hour at 900 degC, 0.2 at 1000, 0.4 at 1100 (memory, factor 2). */
const STEEL_AGAINST_IRON = 0.65

/**
 * Square of the depth of metal that air takes in a second [m2/s], by the parabolic law: iron's scale 6.1 cm2/s exp(-169 kJ/RT) (J. Paidassi 1958, as
 * quoted by R.Y. Chen & W.Y.D. Yuen, Oxid. Met. 59 (2003) 433; memory), less for steel; chromium and silicon slow it (memory, factor 2).
 */
export function metalLossRate(temperatureK: number, { Cr, Si }: Pick<Composition, 'Cr' | 'Si'>): number {
  const ironScale = 6.1e-4 * exp(-169452 / (8.314 * temperatureK))
  const metal = STEEL_AGAINST_IRON / (SCALE_PER_METAL * (1 + 0.25 * Cr) * (1 + 0.3 * Si))
  return ironScale * metal * metal
}
