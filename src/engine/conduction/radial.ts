import { interpolate } from '#engine/arithmetic/table.ts'
import { contactFlux, fluxFluidSlope, fluxInto } from './contact-flux.ts'
import { milestones } from './milestones.ts'
import { propertyTables, tableOffsets } from './properties.ts'
import { type RadialShape, radialGrid } from './radial-grid.ts'
import { heatFlow, lookUp, newtonPass, radialWork } from './radial-newton.ts'
import type { Contact } from './surroundings.ts'
import type { ThermalMaterial } from './thermal-material.ts'
import { BDF_G, BDF_N, ERROR_SCALE, GAMMA, nextStep, WEIGHT_EARLY } from './tr-bdf2-formula.ts'

/** One stage of a body whose heat flows along one coordinate. */
export interface RadialInput {
  readonly shape: RadialShape
  /** Radius; half the thickness of a plate [m]. */
  readonly radiusM: number
  /** Number of cells from the axis to the surface; the nodes are one more. 60 suits a quench. */
  readonly cells: number
  readonly materials: readonly ThermalMaterial[]
  /** Index into `materials` of each node from the axis outward [cells + 1]; absent, all are of the first. */
  readonly materialOfNode?: Uint8Array
  /** At the start: one for all, or one a node from the axis outward [cells + 1, K]. Left alone. */
  readonly temperatureK: number | Float64Array
  /**
   * What the surface meets. `capacityJPerK` is the fluid's share: for one square metre of half a plate, one metre of a
   * cylinder, or the whole sphere.
   */
  readonly contact: Contact
  readonly endS: number
  /** Error allowed in a step [K]; 0.3 when absent. */
  readonly toleranceK?: number
  readonly maxStepS?: number
  /** Steps end on these times. */
  readonly landOnS?: readonly number[]
  /** After every accepted step and at t = 0, with the temperatures from axis to surface (valid during the call); true ends the stage. */
  readonly observe?: (timeS: number, temperatureK: Float64Array) => unknown
}

export interface RadialOutcome {
  /** Node places [n, m]: 0 is the axis, the last is the surface. */
  readonly radiusM: Float64Array
  readonly temperatureK: Float64Array
  readonly endedS: number
  readonly steps: number
  /** Heat into the steel through the surface, negative when it cools [J, for the amount of body named at `contact`]. */
  readonly heatJ: number
  readonly enthalpyChangeJ: number
  readonly fluidEndK: number
}

const MOST_PASSES = 10
/** A Newton pass moves no node further than this, so that it can't jump over a latent peak and back for ever. */
const PASS_LIMIT_K = 120
/** Full turn of a cylinder, full solid angle of a sphere: the grid works per radian and per steradian. */
const WHOLE = { plate: 1, cylinder: 2 * Math.PI, sphere: 4 * Math.PI } as const

/**
 * Transient conduction in a plate, a long cylinder or a sphere, in enthalpy form: nodes on the surface, TR-BDF2 in time with
 * the step fitted to `toleranceK`, full Newton on a tridiagonal matrix (docs/model.md, rules [HC..]).
 *
 * Kinks of `contact.fluid` end steps. Throws RangeError on input outside its meaning, and Error with time, step and residual
 * when the equations of a step can't be solved.
 */
export function runRadialStage(input: RadialInput): RadialOutcome {
  const { shape, contact, endS, observe } = input
  const toleranceK = input.toleranceK ?? 0.3
  const maxStepS = input.maxStepS ?? Number.POSITIVE_INFINITY
  if (!(endS > 0)) throw new RangeError(`radial stage: endS ${endS} must be above 0`)
  if (!(toleranceK > 0 && maxStepS > 0)) throw new RangeError('radial stage: toleranceK and maxStepS must be above 0')
  const grid = radialGrid(shape, input.radiusM, input.cells)
  const n = input.cells + 1
  const last = n - 1
  const table = propertyTables(input.materials)
  const offset = tableOffsets(n, input.materials.length, input.materialOfNode)
  const surface = contactFlux(contact)
  const fluidTimes = contact.fluid.map(([timeS]) => timeS)
  const stops = milestones(endS, input.landOnS ?? [], fluidTimes)
  const work = radialWork(n)
  const { volume } = grid

  const now = startTemperature(input.temperatureK, n)
  const before = now.slice()
  const middle = new Float64Array(n)
  const next = new Float64Array(n)
  const known = new Float64Array(n)
  const enthalpyNow = new Float64Array(n)
  const enthalpyMiddle = new Float64Array(n)
  const flowNow = new Float64Array(n)
  const flowMiddle = new Float64Array(n)

  // A fluid of finite capacity rises with the heat that it takes: one more equation of the same scheme.
  const { surfaceArea } = grid
  const kelvinPerJoule = contact.capacityJPerK === undefined ? 0 : (WHOLE[shape] * surfaceArea) / contact.capacityJPerK
  let riseNowK = 0
  let riseKnownK = 0
  let riseK = 0
  const setFluid = (timeS: number): void => {
    surface.fluidK = interpolate(contact.fluid, timeS) + riseK
  }
  /** One Newton step of the fluid at a surface temperature; the share of a surface slope that is left once the fluid gives way. */
  const settleFluid = (surfaceK: number, scaleS: number): number => {
    const scale = scaleS * kelvinPerJoule
    const yields = 1 + scale * fluxFluidSlope(surface, surfaceK)
    const change = (riseKnownK - scale * fluxInto(surface, surfaceK) - riseK) / yields
    riseK += change
    surface.fluidK += change
    return 1 / yields
  }

  /** Newton on `temperatureK` for the right-hand side `known`; leaves the enthalpy in `work`. False when it does not settle. */
  let changeK = 0
  const solve = (temperatureK: Float64Array, scaleS: number): boolean => {
    let previousK = 0
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      lookUp(table, offset, temperatureK, work)
      if (kelvinPerJoule > 0) work.slopeShare = settleFluid(temperatureK[last]!, scaleS)
      changeK = newtonPass(grid, surface, temperatureK, known, scaleS, PASS_LIMIT_K, work, false)
      // Quadratic: the next pass would move about (this / before)^2 as far as this one, so a small one is left out.
      if (changeK < 0.01 * toleranceK || changeK * changeK * changeK < 0.002 * toleranceK * previousK * previousK) {
        lookUp(table, offset, temperatureK, work)
        if (kelvinPerJoule > 0) settleFluid(temperatureK[last]!, scaleS)
        return true
      }
      if (!Number.isFinite(changeK)) return false
      previousK = changeK
    }
    return false
  }

  lookUp(table, offset, now, work)
  enthalpyNow.set(work.enthalpy)
  const enthalpyStart = weighted(volume, enthalpyNow)
  setFluid(0)
  heatFlow(grid, surface, now, work, flowNow)
  let fluxNow = fluxInto(surface, now[last]!)

  let timeS = 0
  let steps = 0
  let heat = 0
  let wantedS = Math.min(firstStep(volume, work.capacity, flowNow, toleranceK), endS)
  let lastStepS = 0
  let stop = 0
  let ended = observe?.(0, now) === true
  while (!ended && stop < stops.length) {
    // Land on the stop; what is left before it is shared in two rather than leaving a sliver.
    const leftS = stops[stop]! - timeS
    const allowedS = Math.min(wantedS, maxStepS)
    const landing = allowedS >= leftS * 0.9999
    const stepS = landing ? leftS : Math.min(allowedS, 0.5 * leftS)
    const scaleS = 0.5 * GAMMA * stepS
    if (!(stepS >= 1e-12 * endS))
      throw new Error(`radial stage: at ${timeS} s the step has shrunk to ${stepS} s without an answer`)

    // Trapezium to the middle point, started from where the last step was heading.
    const ahead = lastStepS > 0 ? (GAMMA * stepS) / lastStepS : 0
    for (let i = 0; i < n; i++) {
      known[i] = volume[i]! * enthalpyNow[i]! + scaleS * flowNow[i]!
      middle[i] = now[i]! + ahead * (now[i]! - before[i]!)
    }
    riseK = riseNowK
    riseKnownK = riseNowK - scaleS * kelvinPerJoule * fluxNow
    setFluid(timeS + GAMMA * stepS)
    let settled = solve(middle, scaleS)
    let fluxMiddle = 0
    if (settled) {
      // Backward formula over both points.
      fluxMiddle = fluxInto(surface, middle[last]!)
      enthalpyMiddle.set(work.enthalpy)
      for (let i = 0; i < n; i++) {
        flowMiddle[i] = (volume[i]! * (enthalpyMiddle[i]! - enthalpyNow[i]!)) / scaleS - flowNow[i]!
        known[i] = volume[i]! * (BDF_G * enthalpyMiddle[i]! - BDF_N * enthalpyNow[i]!)
        next[i] = middle[i]! + ((1 - GAMMA) / GAMMA) * (middle[i]! - now[i]!)
      }
      riseKnownK = BDF_G * riseK - BDF_N * riseNowK
      setFluid(timeS + stepS)
      settled = solve(next, scaleS)
    }
    if (!settled) {
      if (stepS < 1e-9 * endS) {
        throw new Error(`radial stage: no answer at ${timeS} s with a step of ${stepS} s; the last pass still moved ${changeK} K`)
      }
      wantedS = 0.25 * stepS
      lastStepS = 0
      continue
    }

    // Error of the step, smoothed by one solve with the matrix so that stiff parts raise no false alarm.
    for (let i = 0; i < n; i++) {
      const flowNext = (volume[i]! * work.enthalpy[i]! - known[i]!) / scaleS
      const spread = flowNow[i]! / GAMMA - flowMiddle[i]! / (GAMMA * (1 - GAMMA)) + flowNext / (1 - GAMMA)
      middle[i] = flowNext
      known[i] = ERROR_SCALE * stepS * spread
    }
    const errorK = newtonPass(grid, surface, next, known, scaleS, PASS_LIMIT_K, work, true)
    const suggestedS = nextStep(stepS, errorK, toleranceK)
    if (!(errorK <= toleranceK)) {
      if (stepS < 1e-9 * endS) {
        throw new Error(`radial stage: at ${timeS} s the error stays at ${errorK} K with a step of ${stepS} s`)
      }
      wantedS = suggestedS
      continue
    }

    // Accepted. Heat is counted with the weights that the scheme gives the three flows.
    const fluxNext = fluxInto(surface, next[last]!)
    const stepHeat = surfaceArea * stepS * (WEIGHT_EARLY * (fluxNow + fluxMiddle) + 0.5 * GAMMA * fluxNext)
    heat += stepHeat
    riseNowK -= kelvinPerJoule * (stepHeat / surfaceArea)
    fluxNow = fluxNext
    for (let i = 0; i < n; i++) {
      flowNow[i] = middle[i]!
      enthalpyNow[i] = work.enthalpy[i]!
      before[i] = now[i]!
      now[i] = next[i]!
    }
    steps++
    lastStepS = stepS
    // A short last step before a stop says nothing against the step that was wanted.
    wantedS = stepS < wantedS ? Math.max(wantedS, suggestedS) : suggestedS
    timeS = landing ? stops[stop++]! : timeS + stepS
    ended = observe?.(timeS, now) === true
  }

  return {
    radiusM: grid.radiusM,
    temperatureK: now,
    endedS: timeS,
    steps,
    heatJ: WHOLE[shape] * heat,
    enthalpyChangeJ: WHOLE[shape] * (weighted(volume, enthalpyNow) - enthalpyStart),
    fluidEndK: interpolate(contact.fluid, timeS) + riseNowK,
  }
}

function startTemperature(given: number | Float64Array, n: number): Float64Array {
  if (typeof given === 'number') return new Float64Array(n).fill(given)
  if (given.length !== n) throw new RangeError(`radial stage: ${given.length} start temperatures for ${n} nodes`)
  return given.slice()
}

function weighted(volume: Float64Array, enthalpy: Float64Array): number {
  let sum = 0
  for (let i = 0; i < volume.length; i++) sum += volume[i]! * enthalpy[i]!
  return sum
}

/** A step in which the fastest node, left to itself, moves by a few times the tolerance [s]. */
function firstStep(volume: Float64Array, capacity: Float64Array, flow: Float64Array, toleranceK: number): number {
  let fastest = 1e-12
  for (let i = 0; i < volume.length; i++) fastest = Math.max(fastest, Math.abs(flow[i]!) / (volume[i]! * capacity[i]!))
  return (4 * toleranceK) / fastest
}
