import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { interpolate } from '#engine/arithmetic/table.ts'
import { enthalpyLookUp, readEnthalpy } from './enthalpy-table.ts'
import { milestones } from './milestones.ts'
import { propertyTables, readTemperature, tableOffsets } from './properties.ts'
import type { ThermalMaterial } from './thermal-material.ts'

const rows = fc
  .uniqueArray(fc.double({ min: 250, max: 1500, noNaN: true }), { minLength: 1, maxLength: 8 })
  .chain((xs) =>
    fc
      .array(fc.double({ min: 50, max: 4000, noNaN: true }), { minLength: xs.length, maxLength: xs.length })
      .map((ys) => [...xs].sort((a, b) => a - b).map((x, i) => [x, ys[i]!] as const)),
  )
  .filter((made) => made.every(([x], i) => i === 0 || x - made[i - 1]![0] > 1e-3))
const material = fc.record({ densityKgPerM3: fc.constant(7800), conductivity: rows, specificHeat: rows })

/** Exact integral of a piecewise linear table, by its own pieces [J/kg]. */
function integral(specificHeat: ThermalMaterial['specificHeat'], fromK: number, toK: number): number {
  const cuts = [fromK, ...specificHeat.map(([x]) => x).filter((x) => x > fromK && x < toK), toK]
  return cuts
    .slice(1)
    .reduce((sum, x, i) => sum + ((interpolate(specificHeat, x) + interpolate(specificHeat, cuts[i]!)) / 2) * (x - cuts[i]!), 0)
}

describe('lookup tables', () => {
  test('enthalpy between grid lines is the exact integral of any table, to the last latent joule', () => {
    fc.assert(
      fc.property(material, (made) => {
        const temperatureK = Float64Array.of(273.15, 1273.15)
        const [k, c, h] = [new Float64Array(2), new Float64Array(2), new Float64Array(2)]
        readTemperature(propertyTables([made]), tableOffsets(2, 1), temperatureK, k, c, h)
        return Math.abs((h[1]! - h[0]!) / 7800 / integral(made.specificHeat, 273.15, 1273.15) - 1) < 1e-9
      }),
    )
  })

  test('temperature from enthalpy undoes enthalpy from temperature to 0.01 K on a steel with a latent peak', () => {
    const steel = {
      densityKgPerM3: 7800,
      conductivity: [
        [300, 48],
        [1000, 27],
      ],
      specificHeat: [
        [300, 455],
        [973, 930],
        [998, 1000],
        [1023, 3600],
        [1048, 650],
        [1500, 680],
      ],
    } as const
    const temperatureK = Float64Array.from({ length: 5000 }, (_, i) => 250 + 0.27 * i)
    const n = temperatureK.length
    const [k, c, h, back, kBack] = [1, 2, 3, 4, 5].map(() => new Float64Array(n)) as [
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
    ]
    readTemperature(propertyTables([steel]), tableOffsets(n, 1), temperatureK, k, c, h)
    readEnthalpy(enthalpyLookUp([steel], new Uint8Array(n)), h, back, kBack)
    for (let i = 0; i < n; i++) {
      expect(Math.abs(back[i]! - temperatureK[i]!)).toBeLessThan(0.01)
      expect(Math.abs(kBack[i]! - k[i]!)).toBeLessThan(0.01)
    }
  })

  test('a material without sense is refused by what is wrong with it', () => {
    const good = { densityKgPerM3: 7800, conductivity: [[300, 30]], specificHeat: [[300, 500]] } as const
    expect(() => propertyTables([{ ...good, densityKgPerM3: 0 }])).toThrow(/density 0/)
    expect(() => propertyTables([{ ...good, conductivity: [[300, -1]] }])).toThrow(/conductivity -1 at 300 K/)
    expect(() =>
      propertyTables([
        {
          ...good,
          specificHeat: [
            [400, 500],
            [300, 600],
          ],
        },
      ]),
    ).toThrow(/specific heat rows must rise/)
  })
})

test('milestones are in order, once each, within the stage, and end with it', () => {
  expect(milestones(10, [3, 12, 0, 7], [7, 1.5], [])).toEqual([1.5, 3, 7, 10])
  expect(milestones(10, [10 - 1e-12])).toEqual([10])
})
