import { exp } from '#engine/arithmetic/elementary.ts'

/**
 * Diffusivity of carbon in austenite [m2/s] at `temperatureK` and `carbonWtPct`: J. Agren, Scripta Metall. 20 (1986) 1507.
 * Measured 900..1400 K on Fe-C; alloy is left out (chromium and silicon change it by some 20 %).
 */
export function carbonInAustenite(temperatureK: number, carbonWtPct: number): number {
  const y = carbonWtPct / 12.011 / ((100 - carbonWtPct) / 55.845)
  const crowding = 1 + (y * (1 - y) * 8339.9) / temperatureK
  return 4.53e-7 * crowding * exp(-(1 / temperatureK - 2.221e-4) * (17767 - 26436 * y))
}

/** Diffusivity of carbon in ferrite [m2/s]: J. Agren, Acta Metall. 30 (1982) 841, without its last 5 % above 800 degC (memory). */
export function carbonInFerrite(temperatureK: number): number {
  return 2e-6 * exp(-10115 / temperatureK)
}
