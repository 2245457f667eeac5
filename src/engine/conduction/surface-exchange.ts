import { interpolate } from '#engine/arithmetic/table.ts'
import { type ContactFlux, contactFlux, fluxFluidSlope, fluxInto, fluxSlope } from './contact-flux.ts'
import type { MeshPlan } from './mesh-plan.ts'
import type { Contact, Surroundings } from './surroundings.ts'

/** A contact during a stage, with the warming of its fluid where that has a finite capacity. */
export interface ActiveContact extends ContactFlux {
  readonly given: Contact
  /** Rise of the fluid for each joule that it takes [K/J]; 0 for a fluid without end. */
  readonly kelvinPerJoule: number
  /** Rise of the fluid at the start of the step, and at the instant looked at [K]; the steppers set the latter. */
  riseStartK: number
  riseK: number
}

/** What the surface meets at one instant; `setTime` moves it. */
export interface SurfaceExchange {
  readonly plan: MeshPlan
  readonly surroundings: Surroundings
  readonly covered: ActiveContact
  readonly rest: ActiveContact
  /** Area of each surface node that the covered contact touches now [m2]. */
  readonly coveredArea: Float64Array
  /** Reach that `coveredArea` was made for [m]; NaN before the first time. */
  levelM: number
  /** Ends of the body's surface along the axis [m]. */
  readonly lowestM: number
  readonly highestM: number
  /** Heat flow into the steel through each contact at the last `exchange` [W]. */
  coveredW: number
  restW: number
}

export function surfaceExchange(plan: MeshPlan, surroundings: Surroundings): SurfaceExchange {
  if (surroundings.level.length === 0) throw new RangeError('surroundings: the level needs at least one row')
  const active = (given: Contact): ActiveContact => {
    if (given.capacityJPerK !== undefined && !(given.capacityJPerK > 0)) {
      throw new RangeError(`contact: capacityJPerK ${given.capacityJPerK} must be above 0`)
    }
    const kelvinPerJoule = given.capacityJPerK === undefined ? 0 : 1 / given.capacityJPerK
    return { ...contactFlux(given), given, kelvinPerJoule, riseStartK: 0, riseK: 0 }
  }
  return {
    plan,
    surroundings,
    covered: active(surroundings.covered),
    rest: active(surroundings.rest),
    coveredArea: new Float64Array(plan.surfaceNode.length),
    levelM: Number.NaN,
    lowestM: plan.partLowM.reduce((least, low) => Math.min(least, low), Number.POSITIVE_INFINITY),
    highestM: plan.partLowM.reduce((most, low, s) => Math.max(most, low + plan.partReachM[s]!), Number.NEGATIVE_INFINITY),
    coveredW: 0,
    restW: 0,
  }
}

/** Fluids, with the rises that they have now, and covered areas as they are at `timeS`. */
export function setTime(exchange: SurfaceExchange, timeS: number): void {
  setFluid(exchange.covered, timeS)
  setFluid(exchange.rest, timeS)
  const levelM = levelAt(exchange.surroundings.level, timeS)
  if (levelM === exchange.levelM) return
  exchange.levelM = levelM
  coverUpTo(exchange.plan, exchange.surroundings.fromM, levelM, exchange.coveredArea)
}

function setFluid(contact: ActiveContact, timeS: number): void {
  contact.fluidK = interpolate(contact.given.fluid, timeS) + contact.riseK
}

/** Sets a fluid's rise to what it has after giving `heatJ` to the steel since the start of the step. */
export function riseAfter(contact: ActiveContact, heatJ: number): void {
  contact.riseK = contact.riseStartK - contact.kelvinPerJoule * heatJ
}

/** Makes the rise after an accepted step, in which `heatJ` went into the steel, the start of the next. */
export function keepRise(contact: ActiveContact, heatJ: number): void {
  riseAfter(contact, heatJ)
  contact.riseStartK = contact.riseK
}

/** What W/K a fluid gains for a kelvin of its own over the area that it touches now; 0 for a fluid without end. */
function gainOfFluid(exchange: SurfaceExchange, contact: ActiveContact, covered: boolean, temperatureK: Float64Array): number {
  if (contact.kelvinPerJoule === 0) return 0
  const { surfaceNode, surfaceArea } = exchange.plan
  let gain = 0
  for (let k = 0; k < surfaceNode.length; k++) {
    const area = covered ? exchange.coveredArea[k]! : surfaceArea[k]! - exchange.coveredArea[k]!
    if (area > 0) gain += area * fluxFluidSlope(contact, temperatureK[surfaceNode[k]!]!)
  }
  return gain
}

/** How fast fluids of finite capacity run to the temperature of the steel [1/s]. */
export function fluidRate(exchange: SurfaceExchange, temperatureK: Float64Array): number {
  return Math.max(
    exchange.covered.kelvinPerJoule * gainOfFluid(exchange, exchange.covered, true, temperatureK),
    exchange.rest.kelvinPerJoule * gainOfFluid(exchange, exchange.rest, false, temperatureK),
  )
}

/** One Newton step of both fluids toward rise = known - scaleS W / capacity, with the heat flows of the last `exchangeInto`. */
export function settleFluids(
  exchange: SurfaceExchange,
  temperatureK: Float64Array,
  scaleS: number,
  coveredKnownK: number,
  restKnownK: number,
): void {
  settleFluid(
    exchange.covered,
    coveredKnownK,
    scaleS,
    exchange.coveredW,
    gainOfFluid(exchange, exchange.covered, true, temperatureK),
  )
  settleFluid(exchange.rest, restKnownK, scaleS, exchange.restW, gainOfFluid(exchange, exchange.rest, false, temperatureK))
}

function settleFluid(contact: ActiveContact, knownK: number, scaleS: number, flowW: number, gain: number): void {
  if (contact.kelvinPerJoule === 0) return
  const scale = scaleS * contact.kelvinPerJoule
  const change = (knownK - scale * flowW - contact.riseK) / (1 + scale * gain)
  contact.riseK += change
  contact.fluidK += change
}

/** Level at a time; a row at infinity makes no slope. */
function levelAt(level: Surroundings['level'], timeS: number): number {
  const height = interpolate(level, timeS)
  return Number.isNaN(height) ? Number.POSITIVE_INFINITY : height
}

/** Time in which the waterline, as it moves now, travels `travelM` [s]; Infinity while it stands or is off the body. */
export function levelTravelS({ surroundings, lowestM, highestM }: SurfaceExchange, timeS: number, travelM: number): number {
  const { level } = surroundings
  for (let row = 1; row < level.length; row++) {
    const [t0, z0] = level[row - 1]!
    const [t1, z1] = level[row]!
    if (timeS < t0 || timeS >= t1 || z0 === z1) continue
    if (Math.max(z0, z1) < lowestM || Math.min(z0, z1) > highestM || !Number.isFinite(z1 - z0)) return Number.POSITIVE_INFINITY
    const now = levelAt(level, timeS)
    const ahead = z1 > z0 ? lowestM - now : now - highestM
    const past = z1 > z0 ? now > highestM : now < lowestM
    return past ? Number.POSITIVE_INFINITY : ((Math.max(0, ahead) + travelM) * (t1 - t0)) / Math.abs(z1 - z0)
  }
  return Number.POSITIVE_INFINITY
}

/** Area of each surface node between `fromM` and `levelM`; a half-segment is wetted from its lower end up. */
function coverUpTo(plan: MeshPlan, fromM: number, levelM: number, coveredArea: Float64Array): void {
  const { partStart, partArea, partLowM, partReachM } = plan
  for (let k = 0; k < coveredArea.length; k++) {
    let area = 0
    for (let s = partStart[k]!; s < partStart[k + 1]!; s++) {
      const low = partLowM[s]!
      const reach = partReachM[s]!
      const upper = levelM - low >= reach ? 1 : Math.max(0, (levelM - low) / reach)
      const lower = fromM - low >= reach ? 1 : Math.max(0, (fromM - low) / reach)
      area += partArea[s]! * Math.max(0, upper - lower)
    }
    coveredArea[k] = area
  }
}

/** Adds the heat through the surface to `flow` [n, W] and notes the two sums. */
export function exchangeInto(exchange: SurfaceExchange, temperatureK: Float64Array, flow: Float64Array): void {
  const { covered, rest, coveredArea } = exchange
  const { surfaceNode, surfaceArea } = exchange.plan
  let coveredW = 0
  let restW = 0
  for (let k = 0; k < surfaceNode.length; k++) {
    const i = surfaceNode[k]!
    const t = temperatureK[i]!
    const wet = coveredArea[k]!
    const dry = surfaceArea[k]! - wet
    let into = 0
    if (wet > 0) {
      const heat = wet * fluxInto(covered, t)
      coveredW += heat
      into = heat
    }
    if (dry > 0) {
      const heat = dry * fluxInto(rest, t)
      restW += heat
      into += heat
    }
    flow[i] = flow[i]! + into
  }
  exchange.coveredW = coveredW
  exchange.restW = restW
}

/** Adds to `sums` [n, W/K] how much less heat each surface node takes for a kelvin more; falling fluxes only, never below 0. */
export function exchangeSlopes(exchange: SurfaceExchange, temperatureK: Float64Array, sums: Float64Array): void {
  const { covered, rest, coveredArea } = exchange
  const { surfaceNode, surfaceArea } = exchange.plan
  for (let k = 0; k < surfaceNode.length; k++) {
    const i = surfaceNode[k]!
    const t = temperatureK[i]!
    const wet = coveredArea[k]!
    const dry = surfaceArea[k]! - wet
    const slope = (wet > 0 ? wet * fluxSlope(covered, t) : 0) + (dry > 0 ? dry * fluxSlope(rest, t) : 0)
    if (slope < 0) sums[i] = sums[i]! - slope
  }
}
