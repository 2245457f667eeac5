import { describe, expect, test } from 'vitest'
import { enthalpyLookUp } from '#engine/conduction/enthalpy-table.ts'
import { conductionInto } from '#engine/conduction/heat-flow.ts'
import { meshPlan } from '#engine/conduction/mesh-plan.ts'
import { propertyTables, readTemperature, tableOffsets } from '#engine/conduction/properties.ts'
import { explicitWork, stepExplicit } from '#engine/conduction/rkl2.ts'
import { runStage } from '#engine/conduction/stage.ts'
import { exchangeInto, setTime, surfaceExchange } from '#engine/conduction/surface-exchange.ts'
import { implicitWork, stepImplicit } from '#engine/conduction/tr-bdf2.ts'
import { evenly, rectangleMesh } from './conduction-rectangle.ts'
import { mode, roots } from './conduction-series.ts'

const RADIUS_M = 0.0125
const unit = { densityKgPerM3: 4600, conductivity: [[300, 25]], specificHeat: [[300, 1000]] } as const
const closed = { fluid: [[0, 400]], film: [[300, 0]], emissivity: 0 } as const

/** Order seen in errors at sizes 1, 1/2, 1/4 ... */
const orders = (errors: readonly number[]): number[] => errors.slice(1).map((error, i) => Math.log2(errors[i]! / error))

describe('[HC2] order in space', () => {
  // The first mode of a long cylinder keeps its shape and decays by exp(-z^2 Fo): exact, and smooth from the start.
  test('halving the cells of a cylinder quarters its error', () => {
    const biot = 2
    const z = roots('cylinder', biot, 1)[0]!
    const fourier = 0.3
    const endS = (fourier * 4.6e6 * RADIUS_M ** 2) / 25
    const errors = [8, 16, 32].map((cells) => {
      const mesh = rectangleMesh(evenly(0, 0.004, 2), evenly(0, RADIUS_M, cells), ['outer'])
      const shape = mesh.rM.map((r) => mode('cylinder', z, r / RADIUS_M))
      const outcome = runStage({
        mesh,
        materials: [unit],
        materialOfNode: new Uint8Array(mesh.xM.length),
        temperatureK: shape.map((share) => 400 + 500 * share),
        surroundings: { covered: { ...closed, film: [[300, (biot * 25) / RADIUS_M]] }, rest: closed, fromM: -1, level: [[0, 1]] },
        endS,
        toleranceK: 1e-4,
        integrator: 'implicit',
      })
      const left = Math.exp(-z * z * fourier)
      return shape.reduce((worst, share, i) => Math.max(worst, Math.abs(outcome.temperatureK[i]! - 400 - 500 * share * left)), 0)
    })
    expect(errors[0]).toBeLessThan(2)
    for (const order of orders(errors)) expect(order).toBeGreaterThan(1.9)
  })
})

describe('[HC3] order in time', () => {
  // A smooth nonlinear cooling on one mesh, by fixed steps; what very small steps give is the reference.
  const mesh = rectangleMesh(evenly(0, 0.02, 8), evenly(0, RADIUS_M, 6), ['low x', 'outer', 'high x'])
  const plan = meshPlan(mesh)
  const n = plan.nodes
  const materials = [
    {
      densityKgPerM3: 7800,
      conductivity: [
        [200, 45],
        [2000, 20],
      ],
      specificHeat: [
        [200, 450],
        [2000, 900],
      ],
    },
  ] as const
  const node = new Uint8Array(n)
  const table = propertyTables(materials)
  const offset = tableOffsets(n, 1, node)
  const lookUp = enthalpyLookUp(materials, node)
  const air = {
    fluid: [
      [0, 300],
      [1000, 900],
    ],
    film: [
      [200, 900],
      [2000, 300],
    ],
    emissivity: 0.8,
  } as const
  const startK = mesh.rM.map((r, i) => 1100 - 1.5e6 * r * r - 2000 * mesh.xM[i]!)
  const END_S = 8

  function march(steps: number, integrator: 'explicit' | 'implicit'): Float64Array {
    const stepS = END_S / steps
    const exchange = surfaceExchange(plan, { covered: air, rest: air, fromM: 0, level: [[0, 1]] })
    let temperatureK = Float64Array.from(startK)
    const [conductivity, capacity, enthalpy, flow] = [1, 2, 3, 4].map(() => new Float64Array(n)) as [
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
    ]
    readTemperature(table, offset, temperatureK, conductivity, capacity, enthalpy)
    setTime(exchange, 0)
    conductionInto(plan, temperatureK, conductivity, flow)
    exchangeInto(exchange, temperatureK, flow)
    const explicit = explicitWork(n)
    const implicit = implicitWork(plan)
    let earlierK = temperatureK
    for (let step = 0; step < steps; step++) {
      const [coveredW, restW] = [exchange.coveredW, exchange.restW]
      if (integrator === 'explicit')
        stepExplicit(plan, lookUp, exchange, step * stepS, stepS, 21, enthalpy, flow, coveredW, restW, explicit)
      else {
        const start = { temperatureK, enthalpy, flow, coveredW, restW, earlierK, earlierStepS: step === 0 ? 0 : stepS }
        expect(stepImplicit(plan, table, offset, exchange, step * stepS, stepS, 1e-6, start, implicit)).toBeGreaterThan(0)
      }
      const made = integrator === 'explicit' ? explicit : implicit
      earlierK = temperatureK
      temperatureK = made.latestTemperatureK.slice()
      enthalpy.set(made.latestEnthalpy)
      flow.set(made.latestFlow)
    }
    return temperatureK
  }

  const reference = march(640, 'implicit')
  const errorOf = (got: Float64Array): number => got.reduce((worst, t, i) => Math.max(worst, Math.abs(t - reference[i]!)), 0)

  test('RKL2 is of second order', () => {
    const seen = orders([16, 32, 64].map((steps) => errorOf(march(steps, 'explicit'))))
    for (const order of seen) expect(Math.abs(order - 2)).toBeLessThan(0.3)
  })

  test('TR-BDF2 is of second order', () => {
    const seen = orders([10, 20, 40].map((steps) => errorOf(march(steps, 'implicit'))))
    for (const order of seen) expect(Math.abs(order - 2)).toBeLessThan(0.3)
  })

  test('both come to the same answer', () => {
    expect(errorOf(march(320, 'explicit'))).toBeLessThan(0.01)
  })
})
