import type { ThermalMaterial } from '#engine/conduction/thermal-material.ts'
import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import { airContact } from '#engine/surface-heat/air.ts'

const LENGTH_M = 0.1016
const RADIUS_M = 0.0127
const STEFAN_BOLTZMANN = 5.670374419e-8

export interface BarHistory {
  /** Distance from the quenched end [m]. */
  readonly distanceM: number
  readonly timesS: number[]
  readonly temperaturesK: number[]
}

/**
 * The end-quench bar (ASTM A255: 25.4 x 101.6 mm, a jet of water on its end, still air at its side) along its axis: explicit steps of
 * enthalpy, the side loss spread over the section, which is right to a few per cent while h R / k stays under 0.05.
 */
export function endQuenchBar(material: ThermalMaterial, jet: Rows, startK: number, distancesM: readonly number[], endS: number): BarHistory[] {
  const cells = 254
  const dx = LENGTH_M / cells
  const waterK = 297
  const airK = 295
  const air = airContact(airK, { acrossM: 2 * RADIUS_M })
  // 1 K tables for speed.
  const at = (rows: Rows) => Float64Array.from({ length: 1400 }, (_, k) => interpolate(rows, k))
  const conductivity = at(material.conductivity)
  const capacity = at(material.specificHeat)
  const sideFilm = at(air.film)
  const jetFilm = at(jet)
  const T = new Float64Array(cells).fill(startK)
  const out = distancesM.map((distanceM): BarHistory => ({ distanceM, timesS: [0], temperaturesK: [startK] }))
  const dt = (0.22 * dx * dx * material.densityKgPerM3 * 440) / 30
  const steps = Math.ceil(endS / dt)
  const flux = new Float64Array(cells + 1)
  for (let s = 1; s <= steps; s++) {
    // The end face: half a cell of steel in series with the film, whose surface temperature is found in two passes.
    let surface = T[0]!
    for (let pass = 0; pass < 3; pass++) {
      const h = jetFilm[Math.round(surface)]!
      const g = (2 * conductivity[Math.round(T[0]!)]!) / dx
      surface = (h * waterK + g * T[0]!) / (h + g)
    }
    flux[0] = -((2 * conductivity[Math.round(T[0]!)]!) / dx) * (T[0]! - surface)
    for (let i = 1; i < cells; i++) {
      const k = 0.5 * (conductivity[Math.round(T[i]!)]! + conductivity[Math.round(T[i - 1]!)]!)
      flux[i] = (-k * (T[i]! - T[i - 1]!)) / dx
    }
    const top = T[cells - 1]!
    flux[cells] = sideFilm[Math.round(top)]! * (top - airK) + air.emissivity * STEFAN_BOLTZMANN * (top ** 4 - airK ** 4)
    for (let i = 0; i < cells; i++) {
      const t = T[i]!
      const side = (2 / RADIUS_M) * (sideFilm[Math.round(t)]! * (t - airK) + air.emissivity * STEFAN_BOLTZMANN * (t ** 4 - airK ** 4))
      T[i] = t + (dt * ((flux[i]! - flux[i + 1]!) / dx - side)) / (material.densityKgPerM3 * capacity[Math.round(t)]!)
    }
    for (const history of out) {
      const x = history.distanceM / dx - 0.5
      const i = Math.max(0, Math.min(cells - 2, Math.floor(x)))
      const value = T[i]! + (x - i) * (T[i + 1]! - T[i]!)
      if (history.temperaturesK[history.temperaturesK.length - 1]! - value > 1 || s === steps) {
        history.timesS.push(s * dt)
        history.temperaturesK.push(value)
      }
    }
  }
  return out
}
