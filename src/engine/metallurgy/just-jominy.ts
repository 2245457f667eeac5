import { type Composition, compositionOf } from '#engine/materials/steel.ts'
import type { Correlation } from '#engine/provenance/correlation.ts'

/** Composition in the austenite, distance from the quenched end [mm] and ASTM grain number. */
export interface JustInput extends Composition {
  readonly distanceMm: number
  readonly grainSize: number
}

/** Hardness of the end-quench bar by Just's regression [HRC]: a second opinion beside A255, on which the band leans. */
export const justJominy: Correlation<JustInput> = {
  id: 'just-1969-jominy',
  source: 'E. Just, Metal Progress 96(5) (1969) 87',
  output: 'hardness at distance [HRC]',
  validFor: {
    distanceMm: [6, 80],
    C: [0.1, 0.6],
    Cr: [0, 2],
    Mn: [0, 2],
    Ni: [0, 4],
    Mo: [0, 0.5],
    V: [0, 0.2],
    grainSize: [3, 10],
  },
  checks: [
    {
      input: { ...compositionOf({ C: 0.45, Mn: 0.75, Si: 0.22 }), distanceMm: 20, grainSize: 8 },
      expected: 18.4,
      within: 0.1,
      from: 'worked by hand, 1045',
    },
    {
      input: { ...compositionOf({ C: 0.4, Mn: 0.85, Si: 0.25, Cr: 0.95, Mo: 0.2 }), distanceMm: 15, grainSize: 8 },
      expected: 46.1,
      within: 0.1,
      from: 'worked by hand, 4140',
    },
    {
      input: { ...compositionOf({ C: 0.4, Mn: 0.7, Si: 0.25, Ni: 1.8, Cr: 0.8, Mo: 0.25 }), distanceMm: 50, grainSize: 8 },
      expected: 41.9,
      within: 0.1,
      from: 'worked by hand, 4340',
    },
  ],
  evaluate: (c) => {
    const rootC = Math.sqrt(c.C)
    const e = c.distanceMm
    const sum =
      95 * rootC -
      0.00276 * e * e * rootC +
      20 * c.Cr +
      38 * c.Mo +
      14 * c.Mn +
      6 * c.Ni +
      6 * c.Si +
      39 * c.V +
      96 * c.P -
      0.81 * c.grainSize -
      12.28 * Math.sqrt(e) +
      0.898 * e -
      13
    return Math.min(60 * rootC + 20, sum)
  },
}
