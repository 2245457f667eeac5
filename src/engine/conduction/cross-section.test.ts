import { describe, expect, test } from 'vitest'
import { randomStream } from '#engine/arithmetic/random.ts'
import { type CrossSection, crossSectionOf, SECTION_LAW, type SectionLaw } from '#engine/geometry/cross-section.ts'
import type { SectionShape, SectionSize } from '#engine/geometry/profile.ts'
import { areaM2 } from '#engine/geometry/section-shapes.ts'
import { conductionInto } from './heat-flow.ts'
import { meshPlan } from './mesh-plan.ts'
import { runStage, type StageOutcome } from './stage.ts'

const CONDUCTIVITY = 30
const DENSITY = 7800
const SPECIFIC_HEAT = 600
const START_K = 1123.15
const FLUID_K = 293.15
const steel = {
  densityKgPerM3: DENSITY,
  conductivity: [[300, CONDUCTIVITY]],
  specificHeat: [[300, SPECIFIC_HEAT]],
} as const

/** Finer by `factor` in every direction. */
function finer(factor: number): SectionLaw {
  const { surfaceM, growth, cellsDeep } = SECTION_LAW
  return { surfaceM: surfaceM / factor, growth: growth / factor, cellsDeep: cellsDeep * factor }
}

function cooled(section: CrossSection, film: number, endS: number, more: object = {}): StageOutcome {
  const n = section.mesh.xM.length
  const contact = { fluid: [[0, FLUID_K]], film: [[300, film]], emissivity: 0 } as const
  return runStage({
    mesh: section.mesh,
    materials: [steel],
    materialOfNode: new Uint8Array(n),
    temperatureK: new Float64Array(n).fill(START_K),
    surroundings: { covered: contact, rest: contact, fromM: 0, level: [[0, Number.POSITIVE_INFINITY]] },
    endS,
    toleranceK: 0.1,
    ...more,
  })
}

/** Left of the difference at the mid-plane and at the surface of a plate (Carslaw & Jaeger, Conduction of Heat in Solids, 3.11). */
function plate(halfM: number, film: number, timeS: number): { readonly middle: number; readonly skin: number } {
  const biot = (film * halfM) / CONDUCTIVITY
  const fourier = (CONDUCTIVITY / (DENSITY * SPECIFIC_HEAT)) * (timeS / (halfM * halfM))
  let middle = 0
  let skin = 0
  for (let k = 0; k < 40; k++) {
    let low = k * Math.PI
    let high = low + Math.PI / 2
    for (let i = 0; i < 80; i++) {
      const z = (low + high) / 2
      if (z * Math.tan(z) < biot) low = z
      else high = z
    }
    const c = (4 * Math.sin(low)) / (2 * low + Math.sin(2 * low))
    const term = c * Math.exp(-low * low * fourier)
    middle += term
    skin += term * Math.cos(low)
  }
  return { middle, skin }
}

const left = (temperatureK: number): number => (temperatureK - FLUID_K) / (START_K - FLUID_K)

describe('[HC9] conduction across a long bar', () => {
  // From air-like (Biot 0.01) to brine-like (Biot above 3); a bar is the product of two plates.
  test.each([
    ['square', { acrossM: 0.0254 }, 60],
    ['square', { acrossM: 0.0254 }, 1000],
    ['square', { acrossM: 0.0508 }, 5000],
    ['flat', { acrossM: 0.005, widthM: 0.012 }, 5000],
    ['flat', { acrossM: 0.019, widthM: 0.025 }, 2000],
    ['flat', { acrossM: 0.0032, widthM: 0.0254 }, 8000],
  ] satisfies [SectionShape, SectionSize, number][])('%s %o in %i W/(m2 K) is the product of two plates', (shape, size, film) => {
    const thick = size.acrossM / 2
    const wide = ('widthM' in size ? (size.widthM as number) : size.acrossM) / 2
    const section = crossSectionOf(shape, size)
    for (const share of [0.5, 1, 2]) {
      const timeS = share * ((DENSITY * SPECIFIC_HEAT * thick * wide) / (thick + wide) / film + (0.5 * thick * thick) / 6.41e-6)
      const { temperatureK } = cooled(section, film, timeS)
      const across = plate(thick, film, timeS)
      const along = plate(wide, film, timeS)
      expect(Math.abs(left(temperatureK[section.centreNode]!) - across.middle * along.middle)).toBeLessThan(0.006)
      expect(Math.abs(left(temperatureK[section.faceNode]!) - across.skin * along.middle)).toBeLessThan(0.006)
      expect(Math.abs(left(temperatureK[section.cornerNode]!) - across.skin * along.skin)).toBeLessThan(0.006)
    }
  })

  // HS-004, HS-005, HS-019 and HS-020 of the project's thermal cases: exact series for a long round.
  test.each([
    [0.0127, 5000, 6.4, 208.93, 138.77],
    [0.0508, 1000, 118.4, 212.77, 151.69],
  ])('a slice of a %s m round in %i W/(m2 K) cools as its series says', (acrossM, film, timeS, centreC, skinC) => {
    const section = crossSectionOf('round', { acrossM })
    const { temperatureK } = cooled(section, film, timeS)
    expect(Math.abs(temperatureK[section.centreNode]! - 273.15 - centreC)).toBeLessThan(2.5)
    expect(Math.abs(temperatureK[section.faceNode]! - 273.15 - skinC)).toBeLessThan(2.5)
  })

  const all: [SectionShape, SectionSize][] = [
    ['square', { acrossM: 0.02 }],
    ['hexagon', { acrossM: 0.02 }],
    ['octagon', { acrossM: 0.02 }],
    ['flat', { acrossM: 0.006, widthM: 0.03 }],
  ]

  test.each(all)('%s: its parts make up the whole section and the whole way round it', (shape, size) => {
    const section = crossSectionOf(shape, size)
    const { volume, surfaceArea } = meshPlan(section.mesh)
    const sum = (values: Float64Array): number => section.parts * values.reduce((total, each) => total + each, 0)
    expect(sum(volume) / areaM2(shape, size)).toBeCloseTo(1, 12)
    const round = { square: 8 * 0.01, hexagon: 12 * 0.01 * Math.tan(Math.PI / 6), octagon: 16 * 0.01 * Math.tan(Math.PI / 8) }
    expect(sum(surfaceArea)).toBeCloseTo(shape === 'flat' ? 0.072 : round[shape as keyof typeof round], 12)
  })

  test.each(all)('%s: what leaves through the surface is what the steel loses, small baths included', (shape, size) => {
    const section = crossSectionOf(shape, size)
    const small = { fluid: [[0, FLUID_K]], film: [[300, 3000]], emissivity: 0, capacityJPerK: 40 } as const
    for (const integrator of ['explicit', 'implicit'] as const) {
      const out = cooled(section, 0, 8, {
        surroundings: { covered: small, rest: small, fromM: 0, level: [[0, Number.POSITIVE_INFINITY]] },
        integrator,
      })
      expect(out.heatFromRestJ).toBe(0)
      expect(Math.abs(out.heatFromCoveredJ / out.enthalpyChangeJ - 1)).toBeLessThan(1e-6)
      expect(out.fluidEndK - FLUID_K).toBeCloseTo(-out.heatFromCoveredJ / 40, 6)
    }
  })

  test.each(all)('%s: no place leaves the interval of its start and its surroundings', (shape, size) => {
    const section = crossSectionOf(shape, size)
    const { nodes } = meshPlan(section.mesh)
    let lowest = START_K
    let highest = FLUID_K
    let before = new Float64Array(nodes).fill(START_K)
    let rose = 0
    cooled(section, 12000, 20, {
      observe: (_: number, temperatureK: Float64Array) => {
        temperatureK.forEach((now, i) => {
          lowest = Math.min(lowest, now)
          highest = Math.max(highest, now)
          rose = Math.max(rose, now - before[i]!)
        })
        before = temperatureK.slice()
      },
    })
    expect(lowest).toBeGreaterThan(FLUID_K - 0.01)
    expect(highest).toBeLessThan(START_K + 0.01)
    expect(rose).toBeLessThan(0.2)
    // One hot node in a cold section cools, wherever it is, and no edge carries heat the wrong way.
    const plan = meshPlan(section.mesh)
    expect(Math.min(...plan.halfConductance)).toBeGreaterThan(0)
    const random = randomStream(5)
    const conductivity = new Float64Array(nodes).fill(30)
    const flow = new Float64Array(nodes)
    conductionInto(
      plan,
      Float64Array.from(conductivity, () => 600 + 200 * random.normal()),
      conductivity,
      flow,
    )
    expect(Math.abs(flow.reduce((sum, each) => sum + each, 0))).toBeLessThan(1e-6)
  })

  test.each(all)(
    '%s: cells half as large change cooling times by under 1.5 %, a quarter as large by under 2 %',
    (shape, size) => {
      const times = [1, 2, 4].map((factor) => {
        const section = crossSectionOf(shape, size, finer(factor))
        const passed = [section.centreNode, section.faceNode, section.cornerNode].map((node) => ({ node, upper: 0, lower: 0 }))
        let beforeK = new Float64Array(section.mesh.xM.length).fill(START_K)
        let beforeS = 0
        cooled(section, 4000, 30, {
          observe: (timeS: number, temperatureK: Float64Array) => {
            for (const at of passed) {
              const a = beforeK[at.node]!
              const b = temperatureK[at.node]!
              const when = (k: number): number => beforeS + ((timeS - beforeS) * (a - k)) / (a - b)
              if (a > 1073.15 && b <= 1073.15) at.upper = when(1073.15)
              if (a > 773.15 && b <= 773.15) at.lower = when(773.15)
            }
            beforeK = temperatureK.slice()
            beforeS = timeS
          },
        })
        return passed.map(({ upper, lower }) => lower - upper)
      })
      for (let place = 0; place < 3; place++) {
        const [coarse, middle, fine] = times.map((each) => each[place]!)
        expect(Math.abs(coarse! / middle! - 1)).toBeLessThan(0.015)
        expect(Math.abs(coarse! / fine! - 1)).toBeLessThan(0.02)
        expect(Math.abs(middle! / fine! - 1)).toBeLessThan(0.6 * Math.abs(coarse! / fine! - 1) + 0.001)
      }
    },
  )

  test('a section without size is refused', () => {
    expect(() => crossSectionOf('square', { acrossM: 0 })).toThrow(/0 m across/)
  })
})
