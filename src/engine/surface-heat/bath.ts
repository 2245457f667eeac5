import { airContact, type SurfaceContact } from './air.ts'
import { liquidFilm } from './bath-film.ts'
import type { Agitation, Bath, BathKind } from './gear.ts'
import type { LiquidKind } from './probe-films.ts'

/** Density [kg/m3] and specific heat [J/(kg K)] of each liquid: handbook ranges, oils 1880 at 20 degC to 2200 at 100. */
const LIQUIDS: { readonly [Kind in LiquidKind]: { readonly kgPerM3: number; readonly jPerKgK: number } } = {
  'fast oil': { kgPerM3: 855, jPerKgK: 1900 },
  'medium oil': { kgPerM3: 875, jPerKgK: 1900 },
  'slow oil': { kgPerM3: 875, jPerKgK: 1900 },
  'vegetable oil': { kgPerM3: 917, jPerKgK: 1900 },
  water: { kgPerM3: 998, jPerKgK: 4180 },
  brine: { kgPerM3: 1070, jPerKgK: 3700 },
}

/** Mean specific heat of steel between a hardening heat and the bath, transformation included [J/(kg K)]. */
const STEEL_J_PER_KG_K = 700

/** A five-gallon bucket, where the smith names no volume: common practice, no source [m3]. */
export const TYPICAL_VOLUME_M3 = 0.02

function isLiquid(kind: BathKind): kind is LiquidKind {
  return kind !== 'still air' && kind !== 'moving air'
}

/**
 * What a bath does to a piece with a typical section of `acrossM` [m] under its surface. `factor` multiplies the film (the ensemble's).
 * A liquid warms by the heat that it takes. Throws RangeError where `acrossM` is not positive.
 */
export function bathContact(
  bath: Bath,
  options: { readonly agitation: Agitation; readonly acrossM: number; readonly factor?: number },
): SurfaceContact {
  const { agitation, acrossM, factor = 1 } = options
  if (!(acrossM > 0)) throw new RangeError(`bath "${bath.name}": acrossM ${acrossM} m must be above 0`)
  const { kind } = bath
  if (!isLiquid(kind)) {
    const air = airContact(bath.temperatureK, { acrossM, moving: kind === 'moving air' })
    return factor === 1 ? air : { ...air, film: air.film.map(([surfaceK, h]) => [surfaceK, factor * h] as const) }
  }
  return {
    fluid: [[0, bath.temperatureK]],
    film: liquidFilm(kind, bath, agitation, acrossM, factor),
    emissivity: 0,
    capacityJPerK: bathHeatCapacityJPerK(bath),
  }
}

/** Heat that warms the whole bath by one kelvin [J/K]; infinite for air. A bath of unknown volume counts as a five-gallon bucket. */
export function bathHeatCapacityJPerK(bath: Bath): number {
  if (!isLiquid(bath.kind)) return Number.POSITIVE_INFINITY
  const { kgPerM3, jPerKgK } = LIQUIDS[bath.kind]
  return (bath.volumeM3 ?? TYPICAL_VOLUME_M3) * kgPerM3 * jPerKgK
}

/** Temperature at which bath and bar meet when nothing is lost [K]. */
export function bathAfterBar(bath: Bath, bar: { readonly massKg: number; readonly atK: number }): number {
  const bathJPerK = bathHeatCapacityJPerK(bath)
  if (!Number.isFinite(bathJPerK)) return bath.temperatureK
  const barJPerK = bar.massKg * STEEL_J_PER_KG_K
  return bath.temperatureK + (barJPerK * (bar.atK - bath.temperatureK)) / (bathJPerK + barJPerK)
}

/** Mass of a scrap bar at `barAtK` that brings the bath to `toK` [kg]; 0 when it is there already. Throws RangeError when the bar is too cold for it. */
export function scrapBarToWarm(bath: Bath, toK: number, barAtK: number): number {
  if (toK <= bath.temperatureK) return 0
  if (!(barAtK > toK))
    throw new RangeError(`bath "${bath.name}": a bar at ${barAtK} K can't warm it to ${toK} K; heat the bar further`)
  return (bathHeatCapacityJPerK(bath) * (toK - bath.temperatureK)) / (STEEL_J_PER_KG_K * (barAtK - toK))
}
