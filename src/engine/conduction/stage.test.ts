import { describe, expect, test } from 'vitest'
import { meshOf } from '#engine/geometry/axisymmetric-mesh.ts'
import { outlineFrom } from '#engine/geometry/outline.ts'
import { runStage, type StageInput } from './stage.ts'

const mesh = meshOf(
  outlineFrom(
    [
      [0, 0],
      [0, 9],
      [70, 9],
      [70, 0],
    ],
    0.001,
  ),
  'draft',
)
const steel = { densityKgPerM3: 7800, conductivity: [[300, 30]], specificHeat: [[300, 600]] } as const
const water = { fluid: [[0, 298]], film: [[300, 4000]], emissivity: 0 } as const
const air = { fluid: [[0, 293]], film: [[300, 10]], emissivity: 0.8 } as const
const quench: StageInput = {
  mesh,
  materials: [steel],
  materialOfNode: new Uint8Array(mesh.xM.length),
  temperatureK: new Float64Array(mesh.xM.length).fill(1123),
  surroundings: { covered: water, rest: air, fromM: 0, level: [[0, 0.03]] },
  endS: 12,
  toleranceK: 1,
}
const nodeAt = (xM: number): number => {
  let best = 0
  mesh.xM.forEach((x, i) => {
    if (Math.abs(x - xM) + mesh.rM[i]! < Math.abs(mesh.xM[best]! - xM) + mesh.rM[best]!) best = i
  })
  return best
}

describe('runStage', () => {
  test('cools what is covered and little else, and leaves the start alone', () => {
    const { temperatureK, heatFromCoveredJ, heatFromRestJ } = runStage(quench)
    expect(temperatureK[nodeAt(0)]!).toBeLessThan(400)
    expect(temperatureK[nodeAt(0.07)]!).toBeGreaterThan(1020)
    expect(heatFromCoveredJ).toBeLessThan(10 * heatFromRestJ)
    expect(quench.temperatureK.every((t) => t === 1123)).toBe(true)
  })

  test('a whole dip covers both ends: alike from either of them', () => {
    const { temperatureK, heatFromRestJ } = runStage({ ...quench, surroundings: { ...quench.surroundings, level: [[0, 0.07]] } })
    expect(heatFromRestJ).toBe(0)
    expect(Math.abs(temperatureK[nodeAt(0)]! - temperatureK[nodeAt(0.07)]!)).toBeLessThan(1)
  })

  test('a level without end and a covered length that begins part way both work', () => {
    const top = runStage({
      ...quench,
      surroundings: { ...quench.surroundings, fromM: 0.04, level: [[0, Number.POSITIVE_INFINITY]] },
    })
    const foot = runStage(quench)
    expect(Math.abs(top.heatFromCoveredJ / foot.heatFromCoveredJ - 1)).toBeLessThan(0.03)
    expect(top.temperatureK[nodeAt(0.07)]!).toBeLessThan(400)
  })

  test('steps end on the times asked for, on kinks of the level and of the fluid, and on the end', () => {
    const seen: number[] = []
    runStage({
      ...quench,
      surroundings: {
        covered: water,
        rest: {
          ...air,
          fluid: [
            [0, 293],
            [7.7, 320],
          ],
        },
        fromM: 0,
        level: [
          [0, 0],
          [0.3, 0.05],
          [2.5, 0.05],
        ],
      },
      landOnS: [1.1, 5.3],
      observe: (timeS) => {
        seen.push(timeS)
      },
    })
    expect(seen).toEqual(expect.arrayContaining([0, 0.3, 1.1, 2.5, 5.3, 7.7, 12]))
  })

  test('the observer ends it where it says so', () => {
    const { endedS, temperatureK } = runStage({ ...quench, observe: (_, now) => now[nodeAt(0)]! < 800 })
    expect(endedS).toBeGreaterThan(1)
    expect(endedS).toBeLessThan(6)
    expect(temperatureK[nodeAt(0)]!).toBeLessThan(800)
  })

  test('takes long steps in an oven, and none longer than allowed', () => {
    const oven = { ...quench, temperatureK: quench.temperatureK.map(() => 300), endS: 7200, toleranceK: 0.3 }
    const surroundings = {
      ...quench.surroundings,
      rest: { fluid: [[0, 480]], film: [[300, 15]], emissivity: 0.6 },
      level: [[0, -1]],
    } as const
    const free = runStage({ ...oven, surroundings })
    const held = runStage({ ...oven, surroundings, maxStepS: 60 })
    expect(free.steps).toBeLessThan(60)
    expect(free.method).toContain('TR-BDF2')
    expect(held.steps).toBeGreaterThanOrEqual(120)
    expect(Math.abs(free.temperatureK[0]! - 480)).toBeLessThan(0.5)
    const times: number[] = []
    const eased = runStage({
      ...oven,
      surroundings,
      maxStepS: (timeS) => Math.max(30, 0.1 * timeS),
      observe: (timeS) => times.push(timeS) < 0,
    })
    expect(eased.steps).toBeLessThan(held.steps)
    for (const [k, timeS] of times.entries())
      if (k > 0) expect(timeS - times[k - 1]!).toBeLessThanOrEqual(Math.max(30, 0.1 * times[k - 1]!) * 1.001)
  })

  test('refuses input outside its meaning, by name', () => {
    expect(() => runStage({ ...quench, endS: 0 })).toThrow(/endS 0/)
    expect(() => runStage({ ...quench, toleranceK: Number.NaN })).toThrow(/toleranceK NaN/)
    expect(() => runStage({ ...quench, temperatureK: new Float64Array(3) })).toThrow(/3 start temperatures/)
    expect(() => runStage({ ...quench, temperatureK: quench.temperatureK.map(() => Number.NaN) })).toThrow(/starts at NaN K/)
    expect(() => runStage({ ...quench, materialOfNode: new Uint8Array(mesh.xM.length).fill(2) })).toThrow(/is of material 2/)
  })

  test('says when, with what step and what was left when a step cannot be made', () => {
    const wild = {
      ...water,
      fluid: [
        [0, 298],
        [3, Number.NaN],
      ],
    } as const
    expect(() => runStage({ ...quench, surroundings: { ...quench.surroundings, covered: wild } })).toThrow(
      /stage: at .* s a step of .* s/,
    )
  })
})
