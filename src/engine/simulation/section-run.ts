import { meshPlan } from '#engine/conduction/mesh-plan.ts'
import { runStage } from '#engine/conduction/stage.ts'
import type { Contact, Surroundings } from '#engine/conduction/surroundings.ts'
import { type CrossSection, crossSectionOf } from '#engine/geometry/cross-section.ts'
import { radiusAt } from '#engine/geometry/outline.ts'
import type { SectionShape, SectionSize } from '#engine/geometry/profile.ts'
import { CoolingClock } from '#engine/metallurgy/cooling-clock.ts'
import type { Bench } from './bench.ts'
import { type Body, readAt } from './body.ts'
import { NodeState } from './node-state.ts'
import { coolingMaterials } from './quenching.ts'

/** What a cross-section is sent through: the stages that its piece met, and its steel. */
export type Hardening = Pick<Bench, 'met' | 'critical' | 'response' | 'tables'>

/** From 800 to 500 degC at the places of a cross-section [s]; Infinity where it was never passed. */
export interface SectionCooling {
  readonly centreS: number
  readonly faceS: number
  readonly cornerS: number
}

/** Error allowed in a step [K]. */
const TOLERANCE_K = 1.5
const ROUGH_TOLERANCE_K = 6
const BLACK_K = 770
/** Once colder than this everywhere, no place gets another cooling time [K]. */
const SETTLED_K = 620

/**
 * The cross-section of a long bar of this shape and size, out of the fire as the piece was at height `xM`, through the walk, the bath and the
 * air that the piece met there. Heat flows across the section alone, none along the bar. Undefined without a hardening heat and a quench.
 *
 * It leaves the fire as warm as the body of revolution there, from middle to skin: at the end of a hold the two differ by 1 or 2 K, while
 * thin ends are warmed and cooled along the bar. A small bath warms as it does for the piece: the section has its share of it by volume.
 */
export function sectionThrough(
  shape: SectionShape,
  size: SectionSize,
  xM: number,
  body: Body,
  hardening: Hardening,
): SectionCooling | undefined {
  const section = crossSectionOf(shape, size)
  const { mesh } = section
  const state = new NodeState(mesh.xM.length)
  const bench = { ...hardening, state }
  let clock: CoolingClock | undefined
  let expectedS: Float64Array | undefined
  let clockS = 0
  for (const stage of hardening.met) {
    if (stage.as === 'fire') {
      state.temperatureK.set(acrossFrom(body, xM, stage.temperatureK, section))
      state.peakK.set(acrossFrom(body, xM, stage.peakK, section))
      continue
    }
    if (!(stage.lastedS > 0)) continue
    const surroundings = atHeight(stage.surroundings, xM, section, body)
    if (stage.as === 'bath') {
      expectedS ??= roughCooling(bench, section, surroundings, stage.lastedS)
      clock = new CoolingClock(state.temperatureK, state.peakK)
      clockS = 0
    }
    const sinceS = clockS
    const outcome = runStage({
      mesh,
      ...coolingMaterials(bench, stage.as === 'bath' ? expectedS : clock?.times()),
      temperatureK: state.temperatureK,
      surroundings,
      endS: stage.lastedS,
      toleranceK: TOLERANCE_K,
      integrator: 'implicit',
      observe: (timeS, temperatureK) => {
        clock?.update(sinceS + timeS, temperatureK)
        return clock !== undefined && hottest(temperatureK) < SETTLED_K
      },
    })
    clockS += outcome.endedS
    state.temperatureK.set(outcome.temperatureK)
    if (clock !== undefined && hottest(state.temperatureK) < SETTLED_K) break
  }
  if (clock === undefined) return undefined
  const coolingS = clock.times()
  return {
    centreS: coolingS[section.centreNode]!,
    faceS: coolingS[section.faceNode]!,
    cornerS: coolingS[section.cornerNode]!,
  }
}

/** A first, rough run: how much martensite to expect where, so that the latent heat falls in its right place. */
function roughCooling(
  bench: Parameters<typeof coolingMaterials>[0],
  { mesh }: CrossSection,
  surroundings: Surroundings,
  endS: number,
): Float64Array {
  const { temperatureK, peakK } = bench.state
  const clock = new CoolingClock(temperatureK, peakK)
  runStage({
    mesh,
    ...coolingMaterials(bench, undefined),
    temperatureK,
    surroundings,
    endS,
    toleranceK: ROUGH_TOLERANCE_K,
    integrator: 'implicit',
    observe: (timeS, nowK) => {
      clock.update(timeS, nowK)
      return hottest(nowK) < BLACK_K
    },
  })
  return clock.times()
}

function hottest(temperatureK: Float64Array): number {
  let most = temperatureK[0]!
  for (let i = 1; i < temperatureK.length; i++) if (temperatureK[i]! > most) most = temperatureK[i]!
  return most
}

/** A field of the piece at a height, laid over the section by how far out each of its nodes lies: 0 in the middle, 1 on the skin [K]. */
function acrossFrom(body: Body, xM: number, fieldK: Float64Array, { mesh, centreNode, cornerNode }: CrossSection): Float64Array {
  const skinM = radiusAt(body.outline, xM)
  const [middleK, skinK] = readAt(body, fieldK, [
    { xM, rM: 0 },
    { xM, rM: skinM },
  ])
  const wayX = mesh.xM[cornerNode]! - mesh.xM[centreNode]!
  const wayR = mesh.rM[cornerNode]! - mesh.rM[centreNode]!
  return mesh.xM.map((x, i) => {
    const outX = wayX > 0 ? x / wayX : 0
    const outR = wayR > 0 ? mesh.rM[i]! / wayR : 0
    const out = Math.max(outX, outR)
    return middleK! + (skinK! - middleK!) * out * out
  })
}

/** What stands about the piece at one height, as the section sees it, which lies at height 0. */
function atHeight({ covered, rest, fromM, level }: Surroundings, xM: number, section: CrossSection, body: Body): Surroundings {
  const topM = level.reduce((top, [, zM]) => Math.max(top, zM), Number.NEGATIVE_INFINITY)
  return {
    covered: sharedOut(covered, section, body, (x) => x >= fromM && x <= topM),
    rest: sharedOut(rest, section, body, (x) => x < fromM || x > topM),
    fromM: fromM - xM,
    level: level.map(([timeS, zM]) => [timeS, zM - xM] as const),
  }
}

function sharedOut(contact: Contact, section: CrossSection, { mesh }: Body, touches: (xM: number) => boolean): Contact {
  const { capacityJPerK } = contact
  if (capacityJPerK === undefined) return contact
  let volume = 0
  for (let i = 0; i < mesh.xM.length; i++) if (touches(mesh.xM[i]!)) volume += mesh.volumeM3[i]!
  const own = meshPlan(section.mesh).volume.reduce((sum, each) => sum + each, 0)
  return volume > 0 ? { ...contact, capacityJPerK: (capacityJPerK * own) / volume } : contact
}
