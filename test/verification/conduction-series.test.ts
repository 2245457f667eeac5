import { readFileSync } from 'node:fs'
import { parse } from 'csv-parse/sync'
import { describe, expect, test } from 'vitest'
import { runRadialStage } from '#engine/conduction/radial.ts'
import { amplitude, roots, type SeriesShape, seriesShare } from './conduction-series.ts'

interface CoefficientRow {
  readonly geometry: string
  readonly biot: string
  readonly zeta1_rad: string
  readonly c1: string
}
const coefficients: CoefficientRow[] = parse(
  readFileSync(new URL('./data/conduction-one-term-coefficients.csv', import.meta.url), 'utf8'),
  { columns: true },
)
const shapeOf = (geometry: string): SeriesShape => (geometry === 'slab' ? 'plate' : (geometry as SeriesShape))

// A body of radius 1 m, k 1, rho c 1: then the film is the Biot number and the time is the Fourier number. 1000 K above the fluid.
const material = { densityKgPerM3: 1, conductivity: [[300, 1]], specificHeat: [[300, 1]] } as const
const START_ABOVE_K = 1000
function shareLeft(shape: SeriesShape, biot: number, fourier: readonly number[], toleranceK: number): Map<number, Float64Array> {
  const at = new Map<number, Float64Array>()
  runRadialStage({
    shape,
    radiusM: 1,
    cells: 80,
    materials: [material],
    temperatureK: 400 + START_ABOVE_K,
    contact: { fluid: [[0, 400]], film: [[300, biot]], emissivity: 0 },
    endS: Math.max(...fourier),
    toleranceK,
    landOnS: fourier,
    observe: (timeS, temperatureK) => {
      if (fourier.includes(timeS))
        at.set(
          timeS,
          temperatureK.map((t) => (t - 400) / START_ABOVE_K),
        )
    },
  })
  return at
}

describe('series of this test', () => {
  // Expected: one-term coefficients by Biot number; source and provenance stand in each row of the file.
  test.each(coefficients)('first root and factor of a $geometry at Bi $biot are the published ones', (row) => {
    const shape = shapeOf(row.geometry)
    const z = roots(shape, Number(row.biot), 1)[0]!
    expect(z).toBeCloseTo(Number(row.zeta1_rad), 3)
    expect(amplitude(shape, z)).toBeCloseTo(Number(row.c1), 3)
  })
})

describe('[HC1] conduction along one coordinate', () => {
  const shapes = ['plate', 'cylinder', 'sphere'] as const
  test.each(shapes.flatMap((shape) => [0.1, 1, 10].map((biot) => ({ shape, biot }))))(
    'middle and surface of a $shape follow the series at Bi $biot to 0.1 % of the start difference',
    ({ shape, biot }) => {
      const fourier = [0.02, 0.1, 0.4, 1.5]
      const got = shareLeft(shape, biot, fourier, 0.05)
      for (const fo of fourier) {
        const share = got.get(fo)!
        expect(Math.abs(share[0]! - seriesShare(shape, biot, fo, 0))).toBeLessThan(1e-3)
        expect(Math.abs(share[80]! - seriesShare(shape, biot, fo, 1))).toBeLessThan(1e-3)
      }
    },
  )

  // Late in the cooling one term is left: its decay gives the root, its size the factor. Expected: the same published coefficients.
  test.each(coefficients.filter(({ biot }) => Number(biot) >= 0.2))(
    'decay of a $geometry at Bi $biot has the published root and factor',
    ({ geometry, biot, zeta1_rad, c1 }) => {
      const got = shareLeft(shapeOf(geometry), Number(biot), [0.5, 0.8], 0.01)
      const early = got.get(0.5)![0]!
      const late = got.get(0.8)![0]!
      const z2 = Math.log(early / late) / 0.3
      // Steps are judged in kelvin, and by Fo 0.8 few of the thousand are left: hence 0.3 %.
      expect(Math.abs(Math.sqrt(z2) / Number(zeta1_rad) - 1)).toBeLessThan(3e-3)
      expect(Math.abs(early - Number(c1) * Math.exp(-0.5 * Number(zeta1_rad) ** 2))).toBeLessThan(5e-4)
    },
  )
})
