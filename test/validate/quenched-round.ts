import { exp } from '#engine/arithmetic/elementary.ts'
import { runRadialStage } from '#engine/conduction/radial.ts'
import type { Contact } from '#engine/conduction/surroundings.ts'
import type { ThermalMaterial } from '#engine/conduction/thermal-material.ts'
import { DwellClock } from '#engine/kinetics/dwell-clock.ts'
import { CLASSES } from '#engine/kinetics/temperature-classes.ts'
import type { Transformation } from '#engine/kinetics/transformation.ts'
import type { Composition } from '#engine/materials/steel.ts'
import { coolingMaterial } from '#engine/materials/thermal-properties.ts'
import { CoolingClock } from '#engine/metallurgy/cooling-clock.ts'
import type { HardeningResponse } from '#engine/metallurgy/hardening-response.ts'

const CELLS = 40
const SHARES = [1, 0.75, 0.5, 0.25, 0]
const LONGEST_S = 20000

/** A long round quenched as the program quenches a piece: a first run for the structure, a second with its heat. */
export interface QuenchedRound {
  /** Time from 800 to 500 degC of the place on the end-quench bar that turns as far [s], at a share of the radius: 0 is the centre, 1 the surface. */
  at(shareOfRadius: number): number
  /** Time from 800 to 500 degC there [s]. */
  timeAt(shareOfRadius: number): number
}

export function quenchedRound(
  composition: Composition,
  response: HardeningResponse,
  options: {
    readonly acrossM: number
    readonly fromK: number
    readonly msK: number
    readonly contact: Contact
    readonly turned: Transformation
  },
): QuenchedRound {
  const { acrossM, fromK, msK, contact, turned } = options
  const materials = SHARES.map((martensiteShare) => coolingMaterial(composition, { msK, martensiteShare }))
  const all = new Uint8Array(CELLS + 1)
  const first = timed(materials, all)
  const second = timed(
    materials,
    Uint8Array.from(first.times, (s) => Math.round((1 - response.martensiteFraction(s)) * (SHARES.length - 1))),
  )
  const placesS = Float64Array.from(second.times, (_, i) => exp(turned.lnCooling(second.dwellS, CELLS + 1, i)))
  const between = (values: Float64Array, share: number): number => {
    const r = share * second.radiusM[CELLS]!
    let i = 0
    while (i < CELLS - 1 && second.radiusM[i + 1]! < r) i++
    const u = (r - second.radiusM[i]!) / (second.radiusM[i + 1]! - second.radiusM[i]!)
    return values[i]! + u * (values[i + 1]! - values[i]!)
  }
  return { at: (share) => between(placesS, share), timeAt: (share) => between(second.times, share) }

  function timed(tables: readonly ThermalMaterial[], materialOfNode: Uint8Array) {
    const startK = new Float64Array(CELLS + 1).fill(fromK)
    const clock = new CoolingClock(startK, startK)
    const dwellS = new Float64Array(CLASSES * (CELLS + 1))
    const never = new Float64Array(CELLS + 1).fill(Number.POSITIVE_INFINITY)
    const dwell = new DwellClock(dwellS, startK, never, { settledK: msK - 100 })
    const { radiusM } = runRadialStage({
      shape: 'cylinder',
      radiusM: acrossM / 2,
      cells: CELLS,
      materials: tables,
      materialOfNode,
      temperatureK: fromK,
      contact,
      endS: LONGEST_S,
      toleranceK: 0.5,
      observe: (timeS, temperatureK) => {
        clock.update(timeS, temperatureK)
        dwell.at(timeS, temperatureK)
        return temperatureK[0]! < 500
      },
    })
    return { times: clock.times(), dwellS, radiusM }
  }
}
