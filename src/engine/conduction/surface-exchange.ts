import { interpolate } from '#engine/arithmetic/table.ts'
import { type ContactFlux, contactFlux, fluxInto, fluxSlope } from './contact-flux.ts'
import type { MeshPlan } from './mesh-plan.ts'
import type { Contact, Surroundings } from './surroundings.ts'

/** A contact during a stage, with the warming of its fluid where that has a finite capacity. */
export interface ActiveContact extends ContactFlux {
  readonly given: Contact
  /** Rise of the fluid so far [K], and how fast the last step made it rise [K/s]; the next step begins at `sinceS`. */
  riseK: number
  riseKPerS: number
  sinceS: number
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
    return { ...contactFlux(given), given, riseK: 0, riseKPerS: 0, sinceS: 0 }
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

/** Fluids and covered areas as they are at `timeS`. */
export function setTime(exchange: SurfaceExchange, timeS: number): void {
  setFluid(exchange.covered, timeS)
  setFluid(exchange.rest, timeS)
  const levelM = levelAt(exchange.surroundings.level, timeS)
  if (levelM === exchange.levelM) return
  exchange.levelM = levelM
  coverUpTo(exchange.plan, exchange.surroundings.fromM, levelM, exchange.coveredArea)
}

function setFluid(contact: ActiveContact, timeS: number): void {
  contact.fluidK = fluidAt(contact, timeS)
}

/** Temperature of the contact's fluid at `timeS`, within or at the end of the present step [K]. */
export function fluidAt(contact: ActiveContact, timeS: number): number {
  return interpolate(contact.given.fluid, timeS) + contact.riseK + contact.riseKPerS * (timeS - contact.sinceS)
}

/** Counts the heat of an accepted step [J into the steel] against the fluid. */
export function warmFluid(contact: ActiveContact, heatJ: number, stepS: number, endS: number): void {
  contact.sinceS = endS
  if (contact.given.capacityJPerK === undefined) return
  const rise = -heatJ / contact.given.capacityJPerK
  contact.riseK += rise
  contact.riseKPerS = rise / stepS
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
