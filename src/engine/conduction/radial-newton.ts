import { type ContactFlux, fluxInto, fluxSlope } from './contact-flux.ts'
import { GRID_CELLS, GRID_START_K, type PropertyTable, STRIDE } from './properties.ts'
import type { RadialGrid } from './radial-grid.ts'

/** Arrays that the radial solver works in [n each]; made once for a stage. */
export interface RadialWork {
  readonly conductivity: Float64Array
  readonly conductivitySlope: Float64Array
  readonly capacity: Float64Array
  /** Volumetric enthalpy at the temperatures of the last `lookUp` [J/m3]. */
  readonly enthalpy: Float64Array
  readonly upper: Float64Array
  readonly change: Float64Array
  /** Share of the surface's slope that counts: less than 1 where the fluid itself gives way. */
  slopeShare: number
}

export function radialWork(n: number): RadialWork {
  const array = (): Float64Array => new Float64Array(n)
  return {
    conductivity: array(),
    conductivitySlope: array(),
    capacity: array(),
    enthalpy: array(),
    upper: array(),
    change: array(),
    slopeShare: 1,
  }
}

/** Properties of every node at its temperature, into `work`. */
export function lookUp(table: PropertyTable, offset: Int32Array, temperatureK: Float64Array, work: RadialWork): void {
  const { conductivity, conductivitySlope, capacity, enthalpy } = work
  for (let i = 0; i < temperatureK.length; i++) {
    const above = temperatureK[i]! - GRID_START_K
    let cell = above | 0
    if (above < 0) cell = 0
    else if (cell >= GRID_CELLS) cell = GRID_CELLS - 1
    const x = above - cell
    const at = offset[i]! + cell * STRIDE
    const c0 = table[at + 2]!
    const c1 = table[at + 3]!
    conductivity[i] = table[at]! + x * table[at + 1]!
    conductivitySlope[i] = table[at + 1]!
    capacity[i] = c0 + x * c1
    enthalpy[i] = table[at + 4]! + x * (c0 + 0.5 * x * c1)
  }
}

/** Heat flow into every node at the temperatures of the last `lookUp` [W]. */
export function heatFlow(
  grid: RadialGrid,
  surface: ContactFlux,
  temperatureK: Float64Array,
  work: RadialWork,
  flow: Float64Array,
): void {
  const { conductance } = grid
  const { conductivity } = work
  const last = temperatureK.length - 1
  let fromInside = 0
  for (let i = 0; i < last; i++) {
    const outward = conductance[i]! * 0.5 * (conductivity[i]! + conductivity[i + 1]!) * (temperatureK[i]! - temperatureK[i + 1]!)
    flow[i] = fromInside - outward
    fromInside = outward
  }
  flow[last] = fromInside + grid.surfaceArea * fluxInto(surface, temperatureK[last]!)
}

/**
 * Prepare and solve one Newton pass for `volume H(T) - known - scaleS F(T) = 0`, in place on `temperatureK`; needs `lookUp`
 * at the present temperatures. The slopes of conductivity and film are in the matrix, so the passes converge quadratically.
 * `stepLimitK` keeps a pass from jumping across a latent peak. Gives the largest change [K]. `forError` solves with the
 * same matrix for the right-hand side in `known` instead and leaves the answer in `work.change`.
 */
export function newtonPass(
  grid: RadialGrid,
  surface: ContactFlux,
  temperatureK: Float64Array,
  known: Float64Array,
  scaleS: number,
  stepLimitK: number,
  work: RadialWork,
  forError: boolean,
): number {
  const { volume, conductance } = grid
  const { conductivity: k, conductivitySlope: dk, capacity, enthalpy, upper, change } = work
  const last = temperatureK.length - 1
  // Row i couples to i - 1 by `lower` and to i + 1 by `beyond`; elimination runs with the assembly.
  let lower = 0
  let innerDiagonal = 0
  let fromInside = 0
  for (let i = 0; i <= last; i++) {
    const mass = volume[i]! * capacity[i]!
    let diagonal = mass + innerDiagonal
    let beyond = 0
    let nextLower = 0
    let nextDiagonal = 0
    let flow = fromInside
    if (i < last) {
      const g = scaleS * conductance[i]!
      const drop = temperatureK[i + 1]! - temperatureK[i]!
      const mean = 0.5 * (k[i]! + k[i + 1]!)
      diagonal += g * (mean - 0.5 * dk[i]! * drop)
      beyond = -g * (mean + 0.5 * dk[i + 1]! * drop)
      nextLower = -g * (mean - 0.5 * dk[i]! * drop)
      nextDiagonal = g * (mean + 0.5 * dk[i + 1]! * drop)
      const inward = g * mean * drop
      flow += inward
      fromInside = -inward
    } else {
      const area = scaleS * grid.surfaceArea
      const full = diagonal - area * work.slopeShare * fluxSlope(surface, temperatureK[i]!)
      // Film boiling: the flux grows as the surface cools. A diagonal that this drives toward 0 would throw Newton off.
      diagonal = Math.max(full, 0.3 * diagonal)
      flow += area * fluxInto(surface, temperatureK[i]!)
    }
    const wanted = forError ? known[i]! : known[i]! + flow - volume[i]! * enthalpy[i]!
    const pivot = i > 0 ? diagonal - lower * upper[i - 1]! : diagonal
    upper[i] = beyond / pivot
    change[i] = (i > 0 ? wanted - lower * change[i - 1]! : wanted) / pivot
    lower = nextLower
    innerDiagonal = nextDiagonal
  }
  for (let i = last - 1; i >= 0; i--) change[i] = change[i]! - upper[i]! * change[i + 1]!

  let largest = 0
  for (let i = 0; i <= last; i++) {
    const size = Math.abs(change[i]!)
    if (!(size <= largest)) largest = size
  }
  if (!forError) {
    const share = largest > stepLimitK ? stepLimitK / largest : 1
    for (let i = 0; i <= last; i++) temperatureK[i] = temperatureK[i]! + share * change[i]!
  }
  return largest
}
