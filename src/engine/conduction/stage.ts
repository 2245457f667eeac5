import type { TriangleMesh } from '#engine/geometry/mesh.ts'
import { type EnthalpyLookUp, enthalpyLookUp } from './enthalpy-table.ts'
import { conductanceSums, conductionInto } from './heat-flow.ts'
import { choose, dearestStages, type Integrator } from './integrator-choice.ts'
import { meshPlan } from './mesh-plan.ts'
import { milestones } from './milestones.ts'
import { propertyTables, readTemperature, tableOffsets } from './properties.ts'
import { explicitErrorK, explicitLimitS, explicitWork, stagesFor, stepExplicit } from './rkl2.ts'
import { exchangeInto, exchangeSlopes, fluidRate, keepRise, levelTravelS, setTime, surfaceExchange } from './surface-exchange.ts'
import type { Surroundings } from './surroundings.ts'
import type { ThermalMaterial } from './thermal-material.ts'
import { implicitWork, stepImplicit } from './tr-bdf2.ts'
import { nextStep } from './tr-bdf2-formula.ts'

/** One stage of a process: a body on its mesh, what it is of, how hot it starts and what it meets. */
export interface StageInput {
  readonly mesh: TriangleMesh
  readonly materials: readonly ThermalMaterial[]
  /** Index into `materials` of each node [n]. */
  readonly materialOfNode: Uint8Array
  /** At the start [n, K]; left alone. */
  readonly temperatureK: Float64Array
  readonly surroundings: Surroundings
  readonly endS: number
  /** Error allowed in a step [K]: 1 for a draft, 0.3 for a forecast, 0.1 for a fire or a check. */
  readonly toleranceK: number
  /** Longest step [s], or that at a time of the stage. */
  readonly maxStepS?: number | ((timeS: number) => number)
  /** While a waterline moves along the body a step takes it no further than this [m]; a millimetre unless given. */
  readonly waterlineTravelM?: number
  /** Steps end on these times. */
  readonly landOnS?: readonly number[]
  /** After every accepted step and at t = 0, with temperatures valid during the call; true ends the stage there. */
  readonly observe?: (timeS: number, temperatureK: Float64Array) => unknown
  /** Holds the stage to one way of stepping, for checks of either; absent, the cheaper one is taken from step to step. */
  readonly integrator?: Integrator
}

export interface StageOutcome {
  readonly temperatureK: Float64Array
  readonly endedS: number
  readonly steps: number
  /** Heat into the steel through the covered length and through the rest, negative when it cools [J]. */
  readonly heatFromCoveredJ: number
  readonly heatFromRestJ: number
  readonly enthalpyChangeJ: number
  readonly fluidEndK: number
  /** The ways of stepping that were used, for the record. */
  readonly method: string
}

const WATERLINE_TRAVEL_M = 1e-3
/** Share of the stability limit that is used; heat capacity may fall within a step. */
const STABLE_SHARE = 0.9

/**
 * Transient conduction in a body of revolution or across a long bar (docs/model.md, rules [HC..]). Explicit RKL2 while the wanted step needs few stages,
 * TR-BDF2 when it needs many; both on the same heat flows, both with the step fitted to `toleranceK`.
 *
 * Kinks of the level and of the fluids end steps. Throws RangeError on input outside its meaning, and Error with time, step and
 * residual when a step can't be made.
 */
export function runStage(input: StageInput): StageOutcome {
  const { materials, materialOfNode, surroundings, endS, toleranceK, observe } = input
  const { maxStepS = Number.POSITIVE_INFINITY } = input
  const maxStepAt = typeof maxStepS === 'function' ? maxStepS : (): number => maxStepS
  const travelM = input.waterlineTravelM ?? WATERLINE_TRAVEL_M
  mustMakeSense(input)
  const plan = meshPlan(input.mesh)
  const n = plan.nodes
  const table = propertyTables(materials)
  const offset = tableOffsets(n, materials.length, materialOfNode)
  const exchange = surfaceExchange(plan, surroundings)
  const { covered, rest, level } = surroundings
  const times = (rows: readonly (readonly [number, number])[]): number[] => rows.map(([timeS]) => timeS)
  const stops = milestones(endS, input.landOnS ?? [], times(level), times(covered.fluid), times(rest.fluid))

  const temperatureK = input.temperatureK.slice()
  const earlierK = temperatureK.slice()
  const enthalpy = new Float64Array(n)
  const flow = new Float64Array(n)
  const conductivity = new Float64Array(n)
  const sums = new Float64Array(n)
  readTemperature(table, offset, temperatureK, conductivity, sums, enthalpy)
  const enthalpyStart = totalOf(plan.volume, enthalpy)
  setTime(exchange, 0)
  // Tables by enthalpy are made when an explicit step may be taken: some stages never do.
  let lookUp: EnthalpyLookUp | undefined
  const explicit = explicitWork(n)
  const implicit = implicitWork(plan)
  const dearest = dearestStages(plan)

  /** Heat flows at the present state, afresh. */
  const evaluate = (timeS: number): void => {
    setTime(exchange, timeS)
    conductionInto(plan, temperatureK, conductivity, flow)
    exchangeInto(exchange, temperatureK, flow)
  }
  evaluate(0)
  let coveredW = exchange.coveredW
  let restW = exchange.restW
  let timeS = 0
  let steps = 0
  let coveredJ = 0
  let restJ = 0
  let last: Integrator = input.integrator ?? 'explicit'
  let wantedS = firstStepS(plan.inverseVolume, flow, sums, toleranceK, endS)
  let earlierStepS = 0
  let stop = 0
  let limitS = 0
  const used = { explicit: 0, implicit: 0 }
  let ended = observe?.(0, temperatureK) === true

  while (!ended && stop < stops.length) {
    // Land on the stop; what is left before it is shared in two rather than leaving a sliver.
    const leftS = stops[stop]! - timeS
    const allowedS = Math.min(wantedS, maxStepAt(timeS), levelTravelS(exchange, timeS, travelM))
    const landing = allowedS >= leftS * 0.9999
    const stepS = landing ? leftS : Math.min(allowedS, 0.5 * leftS)
    if (input.integrator !== 'implicit' && (last === 'explicit' || steps % 8 === 0 || stepS < 4 * limitS)) {
      lookUp ??= enthalpyLookUp(materials, materialOfNode)
      conductanceSums(plan, conductivity, sums)
      exchangeSlopes(exchange, temperatureK, sums)
      limitS = STABLE_SHARE * Math.min(explicitLimitS(plan, lookUp, enthalpy, sums), 1 / fluidRate(exchange, temperatureK))
    }
    const stages = stagesFor(stepS, limitS)
    const integrator = input.integrator ?? choose(stages, dearest, last)

    let errorK: number
    if (integrator === 'explicit') {
      lookUp ??= enthalpyLookUp(materials, materialOfNode)
      if (last === 'implicit') {
        const held = totalOf(plan.volume, enthalpy)
        readTemperature(table, offset, temperatureK, conductivity, sums, enthalpy)
        spread(held - totalOf(plan.volume, enthalpy), plan.volume, sums, enthalpy)
        evaluate(timeS)
        coveredW = exchange.coveredW
        restW = exchange.restW
      }
      stepExplicit(plan, lookUp, exchange, timeS, stepS, stages, enthalpy, flow, coveredW, restW, explicit)
      errorK = explicitErrorK(plan, lookUp, stepS, enthalpy, flow, explicit.latestEnthalpy, explicit.latestFlow)
    } else {
      const start = { temperatureK, enthalpy, flow, coveredW, restW, earlierK, earlierStepS }
      errorK = stepImplicit(plan, table, offset, exchange, timeS, stepS, toleranceK, start, implicit)
    }
    last = integrator

    const suggestedS = nextStep(stepS, errorK, toleranceK)
    if (!(errorK <= toleranceK)) {
      if (stepS < 1e-9 * endS || stepS < 1e-9) throw new Error(sayFailed(timeS, stepS, errorK, integrator, implicit.lastChangeK))
      wantedS = suggestedS
      continue
    }

    // Accepted.
    earlierK.set(temperatureK)
    earlierStepS = stepS
    const made = integrator === 'explicit' ? explicit : implicit
    temperatureK.set(made.latestTemperatureK)
    enthalpy.set(made.latestEnthalpy)
    flow.set(made.latestFlow)
    conductivity.set(made.conductivity)
    coveredW = exchange.coveredW
    restW = exchange.restW
    coveredJ += made.coveredJ
    restJ += made.restJ
    const nowS = landing ? stops[stop]! : timeS + stepS
    keepRise(exchange.covered, made.coveredJ)
    keepRise(exchange.rest, made.restJ)
    if (landing) stop++
    timeS = nowS
    steps++
    used[integrator]++
    // A step cut short by a stop says nothing against the one that was wanted; one nearly right is kept, and its factor with it.
    if (stepS < wantedS) wantedS = Math.max(wantedS, suggestedS)
    else wantedS = integrator === 'implicit' && suggestedS > 0.95 * stepS && suggestedS < 1.25 * stepS ? stepS : suggestedS
    ended = observe?.(timeS, temperatureK) === true
  }

  setTime(exchange, timeS)
  return {
    temperatureK,
    endedS: timeS,
    steps,
    heatFromCoveredJ: coveredJ,
    heatFromRestJ: restJ,
    enthalpyChangeJ: totalOf(plan.volume, enthalpy) - enthalpyStart,
    fluidEndK: exchange.covered.fluidK,
    method: [used.explicit > 0 ? `RKL2 (${used.explicit})` : '', used.implicit > 0 ? `TR-BDF2 (${used.implicit})` : '']
      .filter((part) => part !== '')
      .join(', '),
  }
}

function mustMakeSense({ mesh, temperatureK, endS, toleranceK, maxStepS }: StageInput): void {
  if (!(endS > 0 && endS < Number.POSITIVE_INFINITY)) throw new RangeError(`stage: endS ${endS} must be above 0 and finite`)
  if (!(toleranceK > 0)) throw new RangeError(`stage: toleranceK ${toleranceK} must be above 0`)
  if (typeof maxStepS === 'number' && !(maxStepS > 0)) throw new RangeError(`stage: maxStepS ${maxStepS} must be above 0`)
  if (temperatureK.length !== mesh.xM.length) {
    throw new RangeError(`stage: ${temperatureK.length} start temperatures for ${mesh.xM.length} nodes`)
  }
  const cold = temperatureK.findIndex((t) => !(t > 0 && t < 5000))
  if (cold >= 0) throw new RangeError(`stage: node ${cold} starts at ${temperatureK[cold]} K; 0 to 5000 K was expected`)
}

function sayFailed(timeS: number, stepS: number, errorK: number, integrator: Integrator, lastChangeK: number): string {
  const why = Number.isFinite(errorK)
    ? `its error stays at ${errorK} K`
    : `its equations do not settle, the last pass still moved ${lastChangeK} K`
  return `stage: at ${timeS} s a step of ${stepS} s (${integrator}) can't be made: ${why}`
}

function totalOf(volume: Float64Array, enthalpy: Float64Array): number {
  let sum = 0
  for (let i = 0; i < enthalpy.length; i++) sum += volume[i]! * enthalpy[i]!
  return sum
}

/**
 * Gives every node its share of heat that Newton left over, by heat capacity. Explicit steps start from enthalpies that belong to the
 * temperatures, or stiff nodes would ring; the sum stays what the surface let through.
 */
function spread(heatJ: number, volume: Float64Array, capacity: Float64Array, enthalpy: Float64Array): void {
  const share = heatJ / totalOf(volume, capacity)
  for (let i = 0; i < enthalpy.length; i++) enthalpy[i] = enthalpy[i]! + share * capacity[i]!
}

/** A step in which the fastest node, left to itself, moves by a few times the tolerance [s]. */
function firstStepS(
  inverseVolume: Float64Array,
  flow: Float64Array,
  capacity: Float64Array,
  toleranceK: number,
  endS: number,
): number {
  let fastest = (4 * toleranceK) / endS
  for (let i = 0; i < flow.length; i++) {
    const rate = (Math.abs(flow[i]!) * inverseVolume[i]!) / capacity[i]!
    if (rate > fastest) fastest = rate
  }
  return (4 * toleranceK) / fastest
}
