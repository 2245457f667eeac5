import { interpolate } from '#engine/arithmetic/table.ts'
import { cellOf, GRID_START_K, onGridLines } from './properties.ts'
import type { Contact } from './surroundings.ts'

/** Stefan-Boltzmann constant [W/(m2 K4)]: exact in the SI of 2019, CODATA 2018. */
export const STEFAN_BOLTZMANN = 5.670374419e-8

/** A contact made ready for stepping: its film on the 1 K grid and the temperature of its fluid now. */
export interface ContactFlux {
  /** Film coefficient on the grid lines [GRID_CELLS + 1, W/(m2 K)]. */
  readonly film: Float64Array
  /** Emissivity times the Stefan-Boltzmann constant [W/(m2 K4)]. */
  readonly radiation: number
  /** Temperature of the fluid at the instant looked at [K]; the stepper sets it. */
  fluidK: number
}

const films = new WeakMap<Contact['film'], Float64Array>()

/** Throws RangeError on an empty table, a negative film coefficient or an emissivity outside 0..1. */
export function contactFlux(contact: Contact): ContactFlux {
  if (contact.fluid.length === 0 || contact.film.length === 0)
    throw new RangeError('contact: fluid and film need at least one row')
  if (!(contact.emissivity >= 0 && contact.emissivity <= 1)) {
    throw new RangeError(`contact: emissivity ${contact.emissivity} must lie in 0..1`)
  }
  for (const [surfaceK, film] of contact.film) {
    if (!(film >= 0)) throw new RangeError(`contact: film coefficient ${film} W/(m2 K) at ${surfaceK} K must not be negative`)
  }
  let film = films.get(contact.film)
  if (film === undefined) {
    film = onGridLines(contact.film)
    films.set(contact.film, film)
  }
  return { film, radiation: contact.emissivity * STEFAN_BOLTZMANN, fluidK: interpolate(contact.fluid, 0) }
}

/** Heat flux into a surface at `surfaceK` [W/m2]. */
export function fluxInto({ film, radiation, fluidK }: ContactFlux, surfaceK: number): number {
  const cell = cellOf(surfaceK)
  const x = surfaceK - GRID_START_K - cell
  const h = held(film[cell]! + inside(x) * (film[cell + 1]! - film[cell]!))
  const f2 = fluidK * fluidK
  const s2 = surfaceK * surfaceK
  return (fluidK - surfaceK) * (h + radiation * (fluidK + surfaceK) * (f2 + s2))
}

/** Derivative of `fluxInto` with respect to the surface temperature [W/(m2 K)]; negative when a hotter surface takes less. */
export function fluxSlope({ film, radiation, fluidK }: ContactFlux, surfaceK: number): number {
  const cell = cellOf(surfaceK)
  const x = surfaceK - GRID_START_K - cell
  const rise = film[cell + 1]! - film[cell]!
  const h = held(film[cell]! + inside(x) * rise)
  return rise * (fluidK - surfaceK) - h - 4 * radiation * surfaceK * surfaceK * surfaceK
}

/** Derivative of `fluxInto` with respect to the temperature of the fluid [W/(m2 K)]. */
export function fluxFluidSlope({ film, radiation, fluidK }: ContactFlux, surfaceK: number): number {
  const cell = cellOf(surfaceK)
  const x = surfaceK - GRID_START_K - cell
  return held(film[cell]! + inside(x) * (film[cell + 1]! - film[cell]!)) + 4 * radiation * fluidK * fluidK * fluidK
}

/** Beyond the grid the film is held at its end. */
function inside(x: number): number {
  return Math.min(1, Math.max(0, x))
}

function held(film: number): number {
  return Math.max(0, film)
}
