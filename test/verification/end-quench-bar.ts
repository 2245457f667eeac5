import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import { STEFAN_BOLTZMANN } from '#engine/conduction/contact-flux.ts'
import type { ThermalMaterial } from '#engine/conduction/thermal-material.ts'
import { airContact } from '#engine/surface-heat/air.ts'

const LENGTH_M = 0.1016
const RADIUS_M = 0.0127
const WATER_K = 297
const AIR_K = 295
/** Tables on whole kelvins up to here. */
const TOP_K = 1400

/** Cooling curve at one distance from the quenched end. */
export interface BarHistory {
  readonly distanceM: number
  readonly timesS: number[]
  readonly temperaturesK: number[]
}

/**
 * The end-quench bar of ASTM A255 (25.4 x 101.6 mm, a jet of water on its end, still air at its side) along its axis. Explicit in time, so
 * that it owes nothing to the program's own solvers; the side loss is spread over the section, right to a few per cent while h R / k < 0.05.
 *
 * `jet` is the film on the end by its surface temperature [K, W/(m2 K)]; `cells` along the length, second order in their size.
 */
export function endQuenchBar(
  material: ThermalMaterial,
  jet: Rows,
  options: { readonly startK: number; readonly endS: number; readonly distancesM: readonly number[]; readonly cells: number },
): BarHistory[] {
  const { startK, endS, distancesM, cells } = options
  const dx = LENGTH_M / cells
  const onKelvins = (rows: Rows): Float64Array => Float64Array.from({ length: TOP_K }, (_, kelvin) => interpolate(rows, kelvin))
  const air = airContact(AIR_K, { acrossM: 2 * RADIUS_M })
  const conductivity = onKelvins(material.conductivity)
  const specificHeat = onKelvins(material.specificHeat)
  const sideFilm = onKelvins(air.film)
  const jetFilm = onKelvins(jet)
  const sideFlux = (t: number): number =>
    sideFilm[Math.round(t)]! * (t - AIR_K) + air.emissivity * STEFAN_BOLTZMANN * (t ** 4 - AIR_K ** 4)

  const temperatureK = new Float64Array(cells).fill(startK)
  const flux = new Float64Array(cells + 1)
  const histories = distancesM.map((distanceM): BarHistory => ({ distanceM, timesS: [0], temperaturesK: [startK] }))
  // Stable while dt < dx^2 rho c / (2 k); c >= 440 J/(kg K) and k <= 32 W/(m K) in the tables used.
  const dt = (0.22 * dx * dx * material.densityKgPerM3 * 440) / 32
  const steps = Math.ceil(endS / dt)
  for (let step = 1; step <= steps; step++) {
    // The end face: half a cell of steel in series with the film, whose surface temperature is found in three passes.
    const end = temperatureK[0]!
    const within = (2 * conductivity[Math.round(end)]!) / dx
    let surfaceK = end
    for (let pass = 0; pass < 3; pass++) {
      const h = jetFilm[Math.round(surfaceK)]!
      surfaceK = (h * WATER_K + within * end) / (h + within)
    }
    flux[0] = -within * (end - surfaceK)
    for (let i = 1; i < cells; i++) {
      const k = 0.5 * (conductivity[Math.round(temperatureK[i]!)]! + conductivity[Math.round(temperatureK[i - 1]!)]!)
      flux[i] = (-k * (temperatureK[i]! - temperatureK[i - 1]!)) / dx
    }
    flux[cells] = sideFlux(temperatureK[cells - 1]!)
    for (let i = 0; i < cells; i++) {
      const t = temperatureK[i]!
      const gained = (flux[i]! - flux[i + 1]!) / dx - (2 / RADIUS_M) * sideFlux(t)
      temperatureK[i] = t + (dt * gained) / (material.densityKgPerM3 * specificHeat[Math.round(t)]!)
    }
    for (const { distanceM, timesS, temperaturesK } of histories) {
      const x = distanceM / dx - 0.5
      const i = Math.max(0, Math.min(cells - 2, Math.floor(x)))
      const t = temperatureK[i]! + (x - i) * (temperatureK[i + 1]! - temperatureK[i]!)
      if (temperaturesK[temperaturesK.length - 1]! - t > 1) {
        timesS.push(step * dt)
        temperaturesK.push(t)
      }
    }
  }
  return histories
}
