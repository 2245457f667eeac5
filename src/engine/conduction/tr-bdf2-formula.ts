import { pow } from '#engine/arithmetic/elementary.ts'

/**
 * TR-BDF2: a trapezium step to t + gamma dt, then the second-order backward formula over both points. Second order, L-stable.
 * With gamma = 2 - sqrt 2 both parts have the same matrix. Bank et al., IEEE Trans. Electron Devices 32 (1985) 1992-2007;
 * error estimate after Hosea & Shampine, Appl. Numer. Math. 20 (1996) 21-37.
 */
export const GAMMA = 2 - Math.SQRT2
/** Second part: H_new = BDF_G H_middle - BDF_N H_now + (gamma dt / 2) F_new. */
export const BDF_G = 1 / (GAMMA * (2 - GAMMA))
export const BDF_N = ((1 - GAMMA) * (1 - GAMMA)) / (GAMMA * (2 - GAMMA))
/** Weight of F_now and of F_middle in the whole step; F_new weighs gamma / 2. */
export const WEIGHT_EARLY = 0.5 * BDF_G * GAMMA
/** Local error = ERROR_SCALE dt (F_now / gamma - F_middle / (gamma (1 - gamma)) + F_new / (1 - gamma)). */
export const ERROR_SCALE = (2 * (-3 * GAMMA * GAMMA + 4 * GAMMA - 2)) / (12 * (2 - GAMMA))

/**
 * The next step [s] from the error of this one; the local error goes with the third power of the step. A step that was not made for
 * want of a settled answer has no error (NaN): the next is a quarter of it. One that erred too much is never followed by as long a one.
 */
export function nextStep(stepS: number, errorK: number, toleranceK: number): number {
  if (!Number.isFinite(errorK)) return 0.25 * stepS
  const factor = errorK > 0 ? 0.9 * pow(toleranceK / errorK, 1 / 3) : 2.5
  return stepS * Math.min(2.5, Math.max(0.2, factor))
}
