import { exp } from '#engine/arithmetic/elementary.ts'
import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import {
  AUSTENITE_CONDUCTIVITY,
  AUSTENITE_SPECIFIC_HEAT,
  densityKgPerM3,
  FERRITE_SPECIFIC_HEAT,
  MARTENSITE_SPECIFIC_HEAT,
  martensiteConductivity,
  softConductivity,
  temperedConductivity,
} from './phase-properties.ts'
import { between, integralOf, scaled, sumOf } from './row-sum.ts'
import type { Composition } from './steel.ts'

/** Density [kg/m3], conductivity [K, W/(m K)] and specific heat with latent heat [K, J/(kg K)]; what conduction asks of a material. */
export interface HeatProperties {
  readonly densityKgPerM3: number
  readonly conductivity: Rows
  readonly specificHeat: Rows
}

const ROOM_K = 293.15
const TOP_K = 1573.15

/** Heat taken by ferrite and pearlite on becoming austenite [J/kg]: the excess of the EN 1993-1-2 curve from 600 to 900 C is 86 kJ/kg. */
const AUSTENITE_HEAT_J_PER_KG = 85_000
/** Heat released on cooling [J/kg], from memory +/-10 %: pearlite 75..90 kJ/kg, martensite 80..85 kJ/kg. */
const PEARLITE_HEAT_J_PER_KG = 84_000
const MARTENSITE_HEAT_J_PER_KG = 82_000

/** Pearlite and bainite form on cooling between these [K]; a share of the austenite, spread evenly with rounded ends. */
const PEARLITE_STARTS_K = 920
const PEARLITE_ENDS_K = 770

/** Koistinen & Marburger, Acta Metall. 7 (1959) 59: f = 1 - exp(-0.011 (Ms - T)). */
const KOISTINEN_MARBURGER_PER_K = 0.011

/** Share of the steel that is pearlite when soft, by carbon: all of it from about 0.77 %C (iron-carbon diagram). */
const EUTECTOID_WT_PCT = 0.77

/** A sharp step is spread over at least this much [K], so that no table holds a spike that a solver could step over. */
const LEAST_SPREAD_K = 24

/**
 * Soft steel on its way up through `ac1K`..`ac3K` [K]: ferrite with carbide below, austenite above, and the heat of the change between:
 * the pearlite's part just above Ac1, the ferrite's over the whole range.
 * After EN 1993-1-2 (2005), 3.4.1, with its peak moved to this steel's own temperatures.
 */
export function heatingMaterial(
  composition: Composition,
  { ac1K, ac3K }: { readonly ac1K: number; readonly ac3K: number },
): HeatProperties {
  const doneK = Math.max(ac3K, ac1K + LEAST_SPREAD_K)
  const pearlite = Math.min(1, composition.C / EUTECTOID_WT_PCT)
  const base = [...between(FERRITE_SPECIFIC_HEAT, ROOM_K, ac1K), ...between(AUSTENITE_SPECIFIC_HEAT, doneK, TOP_K)]
  return {
    densityKgPerM3: densityKgPerM3(composition),
    conductivity: [...between(softConductivity(composition), ROOM_K, ac1K), ...between(AUSTENITE_CONDUCTIVITY, doneK, TOP_K)],
    specificHeat: sumOf([
      base,
      hump(ac1K, Math.min(doneK, ac1K + 2 * LEAST_SPREAD_K), pearlite * AUSTENITE_HEAT_J_PER_KG),
      hump(ac1K, doneK, (1 - pearlite) * AUSTENITE_HEAT_J_PER_KG),
    ]),
  }
}

/**
 * Austenite in the bath: `martensiteShare` of it (0..1) gives off its heat below `msK` after Koistinen & Marburger, the rest
 * gives off the heat of pearlite between 920 and 770 K. Conductivity passes to that of the products.
 */
export function coolingMaterial(
  composition: Composition,
  { msK, martensiteShare }: { readonly msK: number; readonly martensiteShare: number },
): HeatProperties {
  const share = Math.min(1, Math.max(0, martensiteShare))
  const startK = Math.min(msK, PEARLITE_ENDS_K - 10)
  const soft = softConductivity(composition)
  return {
    densityKgPerM3: densityKgPerM3(composition),
    conductivity: sumOf([
      scaled(passing(martensiteConductivity(composition), AUSTENITE_CONDUCTIVITY, martensiteFractions(startK)), share),
      scaled(passing(soft, AUSTENITE_CONDUCTIVITY, PEARLITE_FRACTIONS), 1 - share),
    ]),
    specificHeat: sumOf([
      scaled(passing(MARTENSITE_SPECIFIC_HEAT, AUSTENITE_SPECIFIC_HEAT, martensiteFractions(startK)), share),
      scaled(passing(FERRITE_SPECIFIC_HEAT, AUSTENITE_SPECIFIC_HEAT, PEARLITE_FRACTIONS), 1 - share),
      martensiteHeat(startK, share * MARTENSITE_HEAT_J_PER_KG),
      hump(PEARLITE_ENDS_K, PEARLITE_STARTS_K, (1 - share) * PEARLITE_HEAT_J_PER_KG),
    ]),
  }
}

/** Steel that has not been above `ac1K`: it takes and gives no heat of transformation. Beyond Ac1 the last values are held. */
export function coldMaterial(composition: Composition, { ac1K }: { readonly ac1K: number }): HeatProperties {
  return {
    densityKgPerM3: densityKgPerM3(composition),
    conductivity: between(softConductivity(composition), ROOM_K, ac1K),
    specificHeat: between(FERRITE_SPECIFIC_HEAT, ROOM_K, ac1K),
  }
}

/** Hardened steel in the oven, up to about 700 C; the small heats of tempering are left out. */
export function temperedMaterial(composition: Composition): HeatProperties {
  return {
    densityKgPerM3: densityKgPerM3(composition),
    conductivity: temperedConductivity(composition),
    specificHeat: between(FERRITE_SPECIFIC_HEAT, ROOM_K, 973.15),
  }
}

/** A trapezium over `fromK`..`toK` with a quarter of its width at either end as a slope, and the area `jPerKg`. */
function hump(fromK: number, toK: number, jPerKg: number): Rows {
  const slopeK = (toK - fromK) / 4
  const top = jPerKg / (toK - fromK - slopeK)
  return [
    [fromK, 0],
    [fromK + slopeK, top],
    [toK - slopeK, top],
    [toK, 0],
  ]
}

/** Heat of martensite between `startK` and room temperature; its start is rounded over 12 K. */
function martensiteHeat(startK: number, jPerKg: number): Rows {
  if (startK <= ROOM_K + 20) return [[ROOM_K, 0]]
  const belowK = [200, 160, 120, 90, 60, 40, 20].filter((below) => startK - below > ROOM_K)
  const rows: Rows = [
    [ROOM_K, exp(-KOISTINEN_MARBURGER_PER_K * (startK - ROOM_K))],
    ...belowK.map((below) => [startK - below, exp(-KOISTINEN_MARBURGER_PER_K * below)] as const),
    [startK - 6, exp(-KOISTINEN_MARBURGER_PER_K * 6)],
    [startK + 6, 0],
  ]
  const released = jPerKg * (1 - exp(-KOISTINEN_MARBURGER_PER_K * (startK - ROOM_K)))
  return scaled(rows, released / integralOf(rows, ROOM_K, startK + 6))
}

/** Share that has transformed against temperature. */
function martensiteFractions(startK: number): Rows {
  const belowK = [320, 240, 160, 100, 50, 20].filter((below) => startK - below > ROOM_K)
  return [
    [ROOM_K, 1 - exp(-KOISTINEN_MARBURGER_PER_K * Math.max(0, startK - ROOM_K))],
    ...belowK.map((below) => [startK - below, 1 - exp(-KOISTINEN_MARBURGER_PER_K * below)] as const),
    [Math.max(startK, ROOM_K + 1), 0],
  ]
}

const PEARLITE_FRACTIONS: Rows = [
  [PEARLITE_ENDS_K, 1],
  [PEARLITE_STARTS_K, 0],
]

/** A property that goes from that of `before` to that of `after` as `fraction` of the steel changes. */
function passing(after: Rows, before: Rows, fraction: Rows): Rows {
  const places = [...after, ...before, ...fraction]
    .map(([kelvin]) => kelvin)
    .filter((kelvin) => kelvin >= ROOM_K && kelvin <= TOP_K)
    .sort((a, b) => a - b)
  const distinct = [ROOM_K, ...places, TOP_K].filter((kelvin, i, all) => i === 0 || kelvin - all[i - 1]! > 1e-9)
  return distinct.map((kelvin) => {
    const done = interpolate(fraction, kelvin)
    return [kelvin, done * interpolate(after, kelvin) + (1 - done) * interpolate(before, kelvin)] as const
  })
}
