import { type Envelope, envelopeOf } from './envelope.ts'
import { conductionInto } from './heat-flow.ts'
import { type EnvelopeMatrix, envelopeMatrix, factor, solveWith } from './ldlt.ts'
import type { MeshPlan } from './mesh-plan.ts'
import { type PropertyTable, readTemperature } from './properties.ts'
import { exchangeInto, exchangeSlopes, type SurfaceExchange, setTime, settleFluids } from './surface-exchange.ts'
import { BDF_G, BDF_N, ERROR_SCALE, GAMMA, WEIGHT_EARLY } from './tr-bdf2-formula.ts'

/** Arrays and matrix of the implicit stepper; the stage makes them once. After `stepImplicit` the new state stands in `latest*`. */
export interface ImplicitWork {
  readonly matrix: EnvelopeMatrix
  /** What `matrix` was factored for: gamma dt / 2 [s]; NaN when it must be made anew. */
  factoredS: number
  factorings: number
  /** How much smaller each pass was than the one before, at the last solve. */
  contraction: number
  /** Size of the last Newton pass [K], for messages. */
  lastChangeK: number
  readonly volume: Float64Array
  readonly middleTemperatureK: Float64Array
  readonly middleFlow: Float64Array
  readonly latestTemperatureK: Float64Array
  readonly latestEnthalpy: Float64Array
  readonly latestFlow: Float64Array
  readonly conductivity: Float64Array
  readonly capacity: Float64Array
  readonly enthalpy: Float64Array
  readonly flow: Float64Array
  readonly known: Float64Array
  readonly residual: Float64Array
  readonly change: Float64Array
  readonly sums: Float64Array
  readonly spare: Float64Array
  /** Rise of each fluid in the equation of the stage, without the heat of the stage itself [K]. */
  coveredKnownK: number
  restKnownK: number
  /** Heat into the steel in the step [J]. */
  coveredJ: number
  restJ: number
}

export function implicitWork(plan: MeshPlan): ImplicitWork {
  const array = (): Float64Array => new Float64Array(plan.nodes)
  return {
    matrix: envelopeMatrix(envelopeOf(plan)),
    factoredS: Number.NaN,
    factorings: 0,
    contraction: 0.2,
    lastChangeK: 0,
    volume: plan.volume,
    middleTemperatureK: array(),
    middleFlow: array(),
    latestTemperatureK: array(),
    latestEnthalpy: array(),
    latestFlow: array(),
    conductivity: array(),
    capacity: array(),
    enthalpy: array(),
    flow: array(),
    known: array(),
    residual: array(),
    change: array(),
    sums: array(),
    spare: array(),
    coveredKnownK: 0,
    restKnownK: 0,
    coveredJ: 0,
    restJ: 0,
  }
}

/** State at the start of a step [n each], with the temperatures one step earlier to guess from. */
export interface ImplicitStart {
  readonly temperatureK: Float64Array
  readonly enthalpy: Float64Array
  readonly flow: Float64Array
  readonly coveredW: number
  readonly restW: number
  readonly earlierK: Float64Array
  /** Length of the step that led from `earlierK` [s]; 0 when there was none. */
  readonly earlierStepS: number
}

/** A pass moves no node further than this [K], so that it can't jump over a latent peak and back for ever. */
const PASS_LIMIT_K = 120
const MOST_PASSES = 14

/**
 * One step of TR-BDF2 on the mesh. Newton with a symmetric matrix (the slope of k is left out) that is kept from pass to pass and from
 * step to step while it serves. Gives the estimate of the step's error [K], or NaN when the equations did not settle.
 * `table` and `offset` as from `propertyTables` and `tableOffsets`. Heat through the surface and gain of enthalpy agree to rounding.
 */
export function stepImplicit(
  plan: MeshPlan,
  table: PropertyTable,
  offset: Int32Array,
  exchange: SurfaceExchange,
  timeS: number,
  stepS: number,
  toleranceK: number,
  start: ImplicitStart,
  work: ImplicitWork,
): number {
  const { volume, middleTemperatureK, middleFlow, latestTemperatureK, latestEnthalpy, latestFlow, known } = work
  const n = plan.nodes
  const scaleS = 0.5 * GAMMA * stepS

  const ahead = start.earlierStepS > 0 ? (GAMMA * stepS) / start.earlierStepS : 0
  for (let i = 0; i < n; i++) {
    middleTemperatureK[i] = start.temperatureK[i]! + ahead * (start.temperatureK[i]! - start.earlierK[i]!)
    known[i] = volume[i]! * start.enthalpy[i]! + scaleS * start.flow[i]!
  }
  const { covered, rest } = exchange
  covered.riseK = covered.riseStartK
  rest.riseK = rest.riseStartK
  work.coveredKnownK = covered.riseStartK - scaleS * covered.kelvinPerJoule * start.coveredW
  work.restKnownK = rest.riseStartK - scaleS * rest.kelvinPerJoule * start.restW
  setTime(exchange, timeS + GAMMA * stepS)
  if (!settle(plan, table, offset, exchange, middleTemperatureK, scaleS, toleranceK, work)) return Number.NaN
  const middleCoveredW = exchange.coveredW
  const middleRestW = exchange.restW

  // The enthalpy kept is the one that the heat flows give, not that of the temperature: what Newton left over is made good
  // in the next solve and never lost.
  const on = (1 - GAMMA) / GAMMA
  for (let i = 0; i < n; i++) {
    const conserved = known[i]! + scaleS * work.flow[i]!
    middleFlow[i] = work.flow[i]!
    known[i] = BDF_G * conserved - BDF_N * volume[i]! * start.enthalpy[i]!
    latestTemperatureK[i] = middleTemperatureK[i]! + on * (middleTemperatureK[i]! - start.temperatureK[i]!)
  }
  work.coveredKnownK = BDF_G * covered.riseK - BDF_N * covered.riseStartK
  work.restKnownK = BDF_G * rest.riseK - BDF_N * rest.riseStartK
  setTime(exchange, timeS + stepS)
  if (!settle(plan, table, offset, exchange, latestTemperatureK, scaleS, toleranceK, work)) return Number.NaN

  for (let i = 0; i < n; i++) {
    latestFlow[i] = work.flow[i]!
    latestEnthalpy[i] = (known[i]! + scaleS * work.flow[i]!) / volume[i]!
    const spread = start.flow[i]! / GAMMA - middleFlow[i]! / (GAMMA * (1 - GAMMA)) + latestFlow[i]! / (1 - GAMMA)
    work.residual[i] = (ERROR_SCALE * stepS * spread) / scaleS
  }
  work.coveredJ = stepS * (WEIGHT_EARLY * (start.coveredW + middleCoveredW) + 0.5 * GAMMA * exchange.coveredW)
  work.restJ = stepS * (WEIGHT_EARLY * (start.restW + middleRestW) + 0.5 * GAMMA * exchange.restW)
  solveWith(work.matrix, work.residual, work.change, work.spare)
  return largestOf(work.change)
}

/**
 * Newton for `V H(T) - known - scaleS F(T) = 0`, in place. Leaves the flows at the answer in `work.flow` and `exchange`.
 * False when it does not settle with a fresh matrix either.
 */
function settle(
  plan: MeshPlan,
  table: PropertyTable,
  offset: Int32Array,
  exchange: SurfaceExchange,
  temperatureK: Float64Array,
  scaleS: number,
  toleranceK: number,
  work: ImplicitWork,
): boolean {
  const { volume, conductivity, capacity, enthalpy, flow, known, residual, change } = work
  const goalK = 0.03 * toleranceK
  let previousK = Number.POSITIVE_INFINITY
  let fresh = false
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    readTemperature(table, offset, temperatureK, conductivity, capacity, enthalpy)
    conductionInto(plan, temperatureK, conductivity, flow)
    if (exchange.covered.kelvinPerJoule + exchange.rest.kelvinPerJoule > 0) {
      // Only the two sums are wanted here, not the flows.
      exchangeInto(exchange, temperatureK, work.spare)
      settleFluids(exchange, temperatureK, scaleS, work.coveredKnownK, work.restKnownK)
    }
    exchangeInto(exchange, temperatureK, flow)
    if (work.factoredS !== scaleS) {
      if (!refactor(plan, exchange, temperatureK, scaleS, work)) return false
      fresh = true
    }
    for (let i = 0; i < residual.length; i++) residual[i] = flow[i]! + (known[i]! - volume[i]! * enthalpy[i]!) / scaleS
    solveWith(work.matrix, residual, change, work.spare)
    const sizeK = largestOf(change)
    work.lastChangeK = sizeK
    if (!(sizeK < 1e5)) return false
    addTo(temperatureK, change, sizeK > PASS_LIMIT_K ? PASS_LIMIT_K / sizeK : 1)
    const ratio = pass === 0 ? work.contraction : sizeK / previousK
    if (pass > 0) work.contraction = Math.min(0.9, Math.max(0.02, ratio))
    if (ratio < 1 && (sizeK * ratio) / (1 - ratio) < goalK) {
      readTemperature(table, offset, temperatureK, conductivity, capacity, enthalpy)
      conductionInto(plan, temperatureK, conductivity, flow)
      exchangeInto(exchange, temperatureK, flow)
      return true
    }
    // Slow: the matrix has aged, unless it is of this very solve and two passes old at most.
    if (pass > 0 && ratio > 0.3 && (!fresh || pass % 2 === 0)) {
      work.factoredS = Number.NaN
      fresh = false
    }
    previousK = sizeK
  }
  return false
}

/** The matrix M = V c / scale + K + slopes of the surface, at the properties last read, factored. False when a pivot fails. */
function refactor(
  plan: MeshPlan,
  exchange: SurfaceExchange,
  temperatureK: Float64Array,
  scaleS: number,
  work: ImplicitWork,
): boolean {
  const { matrix, capacity, conductivity, volume, sums } = work
  for (let i = 0; i < sums.length; i++) sums[i] = (volume[i]! * capacity[i]!) / scaleS
  exchangeSlopes(exchange, temperatureK, sums)
  assemble(plan, matrix.envelope, conductivity, sums, matrix)
  work.factorings++
  const failed = factor(matrix)
  work.factoredS = failed < 0 ? scaleS : Number.NaN
  return failed < 0
}

function assemble(
  plan: MeshPlan,
  envelope: Envelope,
  conductivity: Float64Array,
  sums: Float64Array,
  matrix: EnvelopeMatrix,
): void {
  const { edgeStart, edgeTo, halfConductance } = plan
  const { rowOfNode, placeOfEdge } = envelope
  const { values, diagonal } = matrix
  values.fill(0)
  for (let i = 0; i < plan.nodes; i++) {
    for (let edge = edgeStart[i]!; edge < edgeStart[i + 1]!; edge++) {
      const j = edgeTo[edge]!
      const g = halfConductance[edge]! * (conductivity[i]! + conductivity[j]!)
      sums[i] = sums[i]! + g
      sums[j] = sums[j]! + g
      values[placeOfEdge[edge]!] = -g
    }
  }
  for (let i = 0; i < plan.nodes; i++) diagonal[rowOfNode[i]!] = sums[i]!
}

function addTo(values: Float64Array, changes: Float64Array, share: number): void {
  for (let i = 0; i < values.length; i++) values[i] = values[i]! + share * changes[i]!
}

/** Largest size; NaN when any is NaN. */
function largestOf(values: Float64Array): number {
  let largest = 0
  for (let i = 0; i < values.length; i++) {
    const size = Math.abs(values[i]!)
    if (!(size <= largest)) largest = size
  }
  return largest
}
