import { describe, expect, test } from 'vitest'
import { randomStream } from '#engine/arithmetic/random.ts'
import { meshOf } from '#engine/geometry/axisymmetric-mesh.ts'
import type { MeshGrade } from '#engine/geometry/mesh.ts'
import { outlineOf } from '#engine/geometry/outline.ts'
import type { Profile } from '#engine/geometry/profile.ts'
import { conductionInto } from './heat-flow.ts'
import { meshPlan } from './mesh-plan.ts'

const round = (acrossMm: number, lengthMm: number) => ({
  shape: 'round' as const,
  from: { acrossM: acrossMm / 1000 },
  to: { acrossM: acrossMm / 1000 },
  lengthM: lengthMm / 1000,
})

/** A thin rod on a thick body: under its shoulder nodes stand close beside an axis that has few. */
const BODIES: Record<string, Profile> = {
  'a pin on a block': { sections: [round(35, 39), round(3.6, 11.5)] },
  'a wire on a bored bar': {
    sections: [{ ...round(46, 125), bore: { acrossM: 0.0095, depthM: 0.075 } }, round(38, 8), round(2.6, 7)],
  },
  'a plain bar': { sections: [round(25, 100)] },
}

describe.each(Object.entries(BODIES))('the cells of %s', (_, profile) => {
  test.each(['sketch', 'draft'] satisfies MeshGrade[])('let heat flow down, never up (%s mesh)', (grade) => {
    const plan = meshPlan(meshOf(outlineOf(profile), grade))
    const random = randomStream(3)
    const conductivity = new Float64Array(plan.nodes).fill(30)
    const flow = new Float64Array(plan.nodes)
    const temperatureK = new Float64Array(plan.nodes)
    for (let round = 0; round < 40; round++) {
      for (let i = 0; i < plan.nodes; i++) temperatureK[i] = 600 + 300 * random.normal()
      conductionInto(plan, temperatureK, conductivity, flow)
      // The rate at which differences even out: the sum of conductance times difference squared.
      const evening = -flow.reduce((sum, each, i) => sum + each * temperatureK[i]!, 0)
      expect(evening).toBeGreaterThan(0)
    }
    // One hot node in a cold body cools, wherever it is.
    for (let i = 0; i < plan.nodes; i++) {
      temperatureK.fill(300)
      temperatureK[i] = 900
      conductionInto(plan, temperatureK, conductivity, flow)
      expect(flow[i]).toBeLessThan(0)
    }
  })
})
