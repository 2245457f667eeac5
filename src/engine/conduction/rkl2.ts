import { ENTHALPY_STRIDE, type EnthalpyLookUp, readEnthalpy } from './enthalpy-table.ts'
import { conductionInto } from './heat-flow.ts'
import type { MeshPlan } from './mesh-plan.ts'
import { exchangeInto, riseAfter, type SurfaceExchange, setTime } from './surface-exchange.ts'

/** Arrays of the explicit stepper [n each]; the stage makes them once. After `stepExplicit` the new state stands in `latest*`. */
export interface ExplicitWork {
  first: Float64Array
  second: Float64Array
  third: Float64Array
  readonly stageFlow: Float64Array
  readonly latestFlow: Float64Array
  readonly latestTemperatureK: Float64Array
  readonly conductivity: Float64Array
  /** Volumetric enthalpy at the end of the step; one of the three arrays above. */
  latestEnthalpy: Float64Array
  /** Heat into the steel in the step [J]. */
  coveredJ: number
  restJ: number
}

export function explicitWork(n: number): ExplicitWork {
  const array = (): Float64Array => new Float64Array(n)
  const first = array()
  return {
    first,
    second: array(),
    third: array(),
    stageFlow: array(),
    latestFlow: array(),
    latestTemperatureK: array(),
    conductivity: array(),
    latestEnthalpy: first,
    coveredJ: 0,
    restJ: 0,
  }
}

/** Fewest stages, an odd number, with which RKL2 may step `stepS` when one explicit step may be `limitS` = 2 / largest eigenvalue. */
export function stagesFor(stepS: number, limitS: number): number {
  const stages = Math.ceil(0.5 * (Math.sqrt(9 + (16 * stepS) / limitS) - 1))
  return Math.max(3, stages % 2 === 1 ? stages : stages + 1)
}

/**
 * One step of RKL2 (Meyer, Balsara & Aslam, J. Comput. Phys. 257 (2014) 594-626) on the volumetric enthalpy: explicit, second
 * order, stable to (s^2 + s - 2) / 4 explicit steps. `enthalpy`, `flow`, `coveredW`, `restW` belong to `timeS`.
 * The heat through each contact, and with it the rise of its fluid, goes through the same recursion as the enthalpy, so that
 * nothing is lost but by rounding.
 */
export function stepExplicit(
  plan: MeshPlan,
  lookUp: EnthalpyLookUp,
  exchange: SurfaceExchange,
  timeS: number,
  stepS: number,
  stages: number,
  enthalpy: Float64Array,
  flow: Float64Array,
  coveredW: number,
  restW: number,
  work: ExplicitWork,
): void {
  const { stageFlow, latestTemperatureK, conductivity, latestFlow } = work
  const spread = stages * stages + stages - 2
  const w = (4 / spread) * stepS
  let older = work.third
  let old = work.first
  let next = work.second
  older.set(enthalpy)
  advance(plan.inverseVolume, enthalpy, flow, w / 3, old)
  let olderCovered = 0
  let olderRest = 0
  let oldCovered = (w / 3) * coveredW
  let oldRest = (w / 3) * restW
  for (let j = 2; j <= stages; j++) {
    riseAfter(exchange.covered, oldCovered)
    riseAfter(exchange.rest, oldRest)
    setTime(exchange, timeS + stepS * (j === 2 ? 4 / (3 * spread) : (j * j - j - 2) / spread))
    readEnthalpy(lookUp, old, latestTemperatureK, conductivity)
    conductionInto(plan, latestTemperatureK, conductivity, stageFlow)
    exchangeInto(exchange, latestTemperatureK, stageFlow)
    const mu = (((2 * j - 1) / j) * weight(j)) / weight(j - 1)
    const nu = ((-(j - 1) / j) * weight(j)) / weight(j - 2)
    const now = mu * w
    const start = (weight(j - 1) - 1) * mu * w
    combine(plan.inverseVolume, old, older, enthalpy, stageFlow, flow, mu, nu, now, start, next)
    const covered = mu * oldCovered + nu * olderCovered + now * exchange.coveredW + start * coveredW
    const rest = mu * oldRest + nu * olderRest + now * exchange.restW + start * restW
    olderCovered = oldCovered
    oldCovered = covered
    olderRest = oldRest
    oldRest = rest
    const free = older
    older = old
    old = next
    next = free
  }
  work.coveredJ = oldCovered
  work.restJ = oldRest
  work.latestEnthalpy = old

  riseAfter(exchange.covered, oldCovered)
  riseAfter(exchange.rest, oldRest)
  setTime(exchange, timeS + stepS)
  readEnthalpy(lookUp, old, latestTemperatureK, conductivity)
  conductionInto(plan, latestTemperatureK, conductivity, latestFlow)
  exchangeInto(exchange, latestTemperatureK, latestFlow)
}

/** b_j of the method. */
function weight(j: number): number {
  return j < 3 ? 1 / 3 : (j * j + j - 2) / (2 * j * (j + 1))
}

function advance(inverseVolume: Float64Array, from: Float64Array, flow: Float64Array, byS: number, to: Float64Array): void {
  for (let i = 0; i < to.length; i++) to[i] = from[i]! + byS * flow[i]! * inverseVolume[i]!
}

function combine(
  inverseVolume: Float64Array,
  old: Float64Array,
  older: Float64Array,
  start: Float64Array,
  flow: Float64Array,
  startFlow: Float64Array,
  mu: number,
  nu: number,
  nowS: number,
  startS: number,
  to: Float64Array,
): void {
  const keep = 1 - mu - nu
  for (let i = 0; i < to.length; i++) {
    to[i] = mu * old[i]! + nu * older[i]! + keep * start[i]! + inverseVolume[i]! * (nowS * flow[i]! + startS * startFlow[i]!)
  }
}

/**
 * Largest error of a step [K]: 0.8 (Y_n - Y_n+1) + 0.4 dt (L_n + L_n+1) over the heat capacity, the difference from the cubic that
 * fits both ends. Third order, so the step goes with its cube root.
 */
export function explicitErrorK(
  plan: MeshPlan,
  lookUp: EnthalpyLookUp,
  stepS: number,
  before: Float64Array,
  flowBefore: Float64Array,
  after: Float64Array,
  flowAfter: Float64Array,
): number {
  const { inverseVolume } = plan
  let largest = 0
  for (let i = 0; i < before.length; i++) {
    const off = 0.8 * (before[i]! - after[i]!) + 0.4 * stepS * inverseVolume[i]! * (flowBefore[i]! + flowAfter[i]!)
    const size = Math.abs(off) * kelvinPerJoule(lookUp, i, after[i]!)
    if (!(size <= largest)) largest = size
  }
  return largest
}

/** 2 / largest eigenvalue by Gershgorin [s]: the longest stable step of one explicit stage. `sums` as from `conductanceSums` and `exchangeSlopes`. */
export function explicitLimitS(plan: MeshPlan, lookUp: EnthalpyLookUp, enthalpy: Float64Array, sums: Float64Array): number {
  const { inverseVolume } = plan
  let fastest = 0
  for (let i = 0; i < enthalpy.length; i++) {
    const rate = sums[i]! * inverseVolume[i]! * kelvinPerJoule(lookUp, i, enthalpy[i]!)
    if (rate > fastest) fastest = rate
  }
  return 1 / fastest
}

/** dT/dH of a node [K m3/J]. */
export function kelvinPerJoule({ cells, scale, start, lastCell }: EnthalpyLookUp, i: number, enthalpy: number): number {
  const cell = Math.max(0, Math.min(lastCell[i]!, Math.floor(enthalpy * scale[i]!)))
  return cells[start[i]! + cell * ENTHALPY_STRIDE + 1]! * scale[i]!
}
