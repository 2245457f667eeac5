import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { runStage } from '#engine/conduction/stage.ts'
import { evenly, rectangleMesh } from './conduction-rectangle.ts'

const steel = {
  densityKgPerM3: 7800,
  conductivity: [
    [300, 40],
    [1300, 25],
  ],
  specificHeat: [
    [300, 480],
    [1000, 750],
  ],
} as const
const peaked = {
  densityKgPerM3: 7700,
  conductivity: [
    [300, 26],
    [1300, 28],
  ],
  specificHeat: [
    [300, 500],
    [550, 700],
    [560, 2600],
    [600, 2400],
    [610, 580],
    [1300, 660],
  ],
} as const
const air = { fluid: [[0, 293]], film: [[300, 10]], emissivity: 0.8 } as const
const water = {
  fluid: [[0, 298]],
  film: [
    [293, 500],
    [373, 1000],
    [433, 7000],
    [573, 8000],
    [773, 5000],
    [1073, 1000],
  ],
  emissivity: 0,
} as const
const bar = rectangleMesh(evenly(0, 0.06, 24), evenly(0, 0.01, 8), ['low x', 'outer', 'high x'])
const HOT = new Float64Array(bar.xM.length).fill(1120)
const mixed = Uint8Array.from(bar.xM, (x) => (x < 0.03 ? 0 : 1))
const dipped = [
  [0, 0],
  [0.2, 0.04],
  [4, 0.04],
  [4.3, 0.1],
] as const

describe('[HC4] energy', () => {
  const stages = [
    { name: 'dip with a moving level, two materials, latent heat, by RKL2', integrator: 'explicit' },
    { name: 'the same by TR-BDF2', integrator: 'implicit' },
    { name: 'the same by whichever is cheaper', integrator: undefined },
  ] as const
  test.each(stages)('$name: heat through the surface is the change of enthalpy', ({ integrator }) => {
    const outcome = runStage({
      mesh: bar,
      materials: [steel, peaked],
      materialOfNode: mixed,
      temperatureK: HOT,
      surroundings: { covered: water, rest: air, fromM: 0, level: dipped },
      endS: 20,
      toleranceK: 0.5,
      ...(integrator === undefined ? {} : { integrator }),
    })
    expect(outcome.enthalpyChangeJ).toBeLessThan(-5e4)
    expect(outcome.heatFromRestJ).toBeLessThan(0)
    const through = outcome.heatFromCoveredJ + outcome.heatFromRestJ
    expect(Math.abs(through / outcome.enthalpyChangeJ - 1)).toBeLessThan(1e-9)
  })

  test('[HC6] a small bath takes up what the bar gives, and both end level', () => {
    const capacityJPerK = 900
    const outcome = runStage({
      mesh: bar,
      materials: [steel],
      materialOfNode: new Uint8Array(bar.xM.length),
      temperatureK: HOT,
      surroundings: { covered: { ...water, film: [[300, 3000]], capacityJPerK }, rest: air, fromM: 0, level: [[0, 1]] },
      endS: 400,
      toleranceK: 0.3,
    })
    expect((outcome.fluidEndK - 298) * capacityJPerK).toBeCloseTo(-outcome.heatFromCoveredJ, 3)
    for (const t of outcome.temperatureK) expect(Math.abs(t - outcome.fluidEndK)).toBeLessThan(0.2)
  })

  test('[HC5] through a latent peak no heat is lost: rising through it takes what falling through it gives', () => {
    const through = (startK: number, fluidK: number, integrator: 'explicit' | 'implicit'): number =>
      runStage({
        mesh: bar,
        materials: [peaked],
        materialOfNode: new Uint8Array(bar.xM.length),
        temperatureK: new Float64Array(bar.xM.length).fill(startK),
        surroundings: {
          covered: { fluid: [[0, fluidK]], film: [[300, 4000]], emissivity: 0 },
          rest: air,
          fromM: 0,
          level: [[0, 1]],
        },
        endS: 120,
        toleranceK: 0.5,
        integrator,
      }).enthalpyChangeJ
    // 400 to 900 K: the exact integral of the table times the mass.
    const perKg = (550 - 400) * (500 + (200 * 100) / 250 + 700) * 0.5 + 16500 + 40 * 2500 + 14900 + 290 * (580 + (80 * 145) / 690)
    const massKg = 7700 * Math.PI * 0.01 ** 2 * 0.06
    for (const integrator of ['explicit', 'implicit'] as const) {
      expect(through(400, 900, integrator) / (perKg * massKg)).toBeCloseTo(1, 3)
      expect(through(900, 400, integrator) / (-perKg * massKg)).toBeCloseTo(1, 3)
    }
  })
})

describe('[HC4] any surroundings', () => {
  const kelvin = fc.integer({ min: 250, max: 1400 })
  const film = fc.integer({ min: 0, max: 12000 })
  const contact = fc.record({
    fluid: kelvin.map((t) => [[0, t]] as const),
    film: fc.tuple(film, film, film).map(
      ([cold, middle, hot]) =>
        [
          [300, cold],
          [700, middle],
          [1200, hot],
        ] as const,
    ),
    emissivity: fc.constantFrom(0, 0.3, 0.9),
  })
  test('heat through the surface is the change of enthalpy, small baths and latent peaks included', () => {
    fc.assert(
      fc.property(
        contact,
        kelvin,
        fc.constantFrom(50, 700, 20000, undefined),
        fc.integer({ min: -10, max: 80 }),
        fc.integer({ min: 2, max: 4000 }),
        (covered, startK, capacityJPerK, levelMm, endS) => {
          const outcome = runStage({
            mesh: bar,
            materials: [steel, peaked],
            materialOfNode: mixed,
            temperatureK: new Float64Array(bar.xM.length).fill(startK),
            surroundings: {
              covered: capacityJPerK === undefined ? covered : { ...covered, capacityJPerK },
              rest: air,
              fromM: 0,
              level: [
                [0, 0],
                [1.5, levelMm / 1000],
              ],
            },
            endS,
            toleranceK: 1,
          })
          const through = outcome.heatFromCoveredJ + outcome.heatFromRestJ
          return Math.abs(through - outcome.enthalpyChangeJ) <= 1e-8 * Math.abs(outcome.enthalpyChangeJ) + 1e-3
        },
      ),
      { numRuns: 40 },
    )
  })

  test('maximum principle: no node leaves the interval between the coldest and the hottest of start and surroundings', () => {
    fc.assert(
      fc.property(
        contact,
        contact,
        kelvin,
        fc.integer({ min: -400, max: 400 }),
        fc.integer({ min: 0, max: 60 }),
        fc.constantFrom('explicit', 'implicit', undefined),
        (covered, rest, baseK, tiltK, levelMm, integrator) => {
          const temperatureK = bar.xM.map((x) => Math.min(1400, Math.max(250, baseK + tiltK * (x / 0.06))))
          const all = [...temperatureK, covered.fluid[0]![1], rest.fluid[0]![1]]
          // Second-order steps may ring by a share of the error they are allowed.
          const toleranceK = 0.3
          const low = Math.min(...all) - toleranceK
          const high = Math.max(...all) + toleranceK
          let inside = true
          runStage({
            mesh: bar,
            materials: [steel],
            materialOfNode: new Uint8Array(bar.xM.length),
            temperatureK,
            surroundings: { covered, rest, fromM: 0, level: [[0, levelMm / 1000]] },
            endS: 6,
            toleranceK,
            ...(integrator === undefined ? {} : { integrator }),
            observe: (_, now) => {
              for (const t of now) inside &&= t >= low && t <= high
            },
          })
          return inside
        },
      ),
      { numRuns: 60 },
    )
  })
})
