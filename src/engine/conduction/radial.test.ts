import { describe, expect, test } from 'vitest'
import { runRadialStage } from './radial.ts'

const steel = { densityKgPerM3: 7800, conductivity: [[300, 25]], specificHeat: [[300, 590]] } as const
const oil = { fluid: [[0, 333.15]], film: [[300, 2000]], emissivity: 0 } as const

describe('runRadialStage', () => {
  test('balances the heat through the surface with the enthalpy of the body', () => {
    const outcome = runRadialStage({
      shape: 'cylinder',
      radiusM: 0.0125,
      cells: 40,
      materials: [
        {
          ...steel,
          specificHeat: [
            [300, 450],
            [1000, 720],
            [1010, 3600],
            [1020, 640],
          ],
        },
      ],
      temperatureK: 1123,
      contact: { ...oil, emissivity: 0.8 },
      endS: 20,
    })
    expect(outcome.heatJ).toBeLessThan(-1e5)
    expect(Math.abs(outcome.heatJ / outcome.enthalpyChangeJ - 1)).toBeLessThan(1e-4)
  })

  test('warms a small bath by the heat that it takes', () => {
    const outcome = runRadialStage({
      shape: 'cylinder',
      radiusM: 0.0125,
      cells: 40,
      materials: [steel],
      temperatureK: 1123.15,
      contact: { ...oil, capacityJPerK: 8000 },
      endS: 600,
    })
    // Both end where the heat of the bar (per metre) and of the bath balance: (m c 1123.15 + 8000 * 333.15) / (m c + 8000).
    const bar = Math.PI * 0.0125 ** 2 * 7800 * 590
    const evenK = (bar * 1123.15 + 8000 * 333.15) / (bar + 8000)
    expect(outcome.fluidEndK).toBeCloseTo(evenK, 1)
    expect(outcome.temperatureK[0]).toBeCloseTo(evenK, 1)
  })

  test('steps end on the times asked for and the observer may end the stage', () => {
    const seen: number[] = []
    const outcome = runRadialStage({
      shape: 'sphere',
      radiusM: 0.01,
      cells: 20,
      materials: [steel],
      temperatureK: 1123,
      contact: oil,
      endS: 30,
      landOnS: [1.7, 9.3],
      observe: (timeS) => {
        seen.push(timeS)
        return timeS > 9
      },
    })
    expect(seen[0]).toBe(0)
    expect(seen).toContain(1.7)
    expect(outcome.endedS).toBe(9.3)
  })

  test('refuses a radius, a material or a contact without meaning', () => {
    const good = {
      shape: 'plate',
      radiusM: 0.01,
      cells: 10,
      materials: [steel],
      temperatureK: 900,
      contact: oil,
      endS: 1,
    } as const
    expect(() => runRadialStage({ ...good, radiusM: 0 })).toThrow(/radius 0 m/)
    expect(() => runRadialStage({ ...good, materials: [] })).toThrow(/at least one material/)
    expect(() => runRadialStage({ ...good, contact: { ...oil, emissivity: 1.2 } })).toThrow(/emissivity 1.2/)
    expect(() => runRadialStage({ ...good, endS: Number.NaN })).toThrow(/endS NaN/)
  })
})
