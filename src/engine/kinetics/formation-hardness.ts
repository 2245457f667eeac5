import { interpolate, type Rows } from '#engine/arithmetic/table.ts'

/**
 * Hardness of what forms at one temperature in steel of about 0.8 %C [K, HV]: coarse to fine pearlite down to 550 degC, upper bainite to 400, lower
 * bainite below (E.C. Bain & H.W. Paxton, Alloying Elements in Steel, 2nd ed., 1961: isothermal hardness of eutectoid steel; memory, +/-30 HV).
 * Only its ratios are used: how much harder or softer a product is for having formed at another temperature.
 */
const BY_FORMATION: Rows = [
  [453, 690],
  [523, 640],
  [573, 560],
  [623, 485],
  [673, 430],
  [723, 395],
  [773, 400],
  [823, 405],
  [873, 370],
  [923, 300],
  [973, 215],
  [993, 185],
]

export function formationHardnessHv(temperatureK: number): number {
  return interpolate(BY_FORMATION, temperatureK)
}
