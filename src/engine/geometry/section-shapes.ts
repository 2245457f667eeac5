import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import type { SectionShape, SectionSize } from './profile.ts'

/** How a shape is turned into the long round whose centre cools alike: diameter over `acrossM`, its band, and where that comes from. */
export interface EquivalentRatio {
  readonly value: number
  readonly low: number
  readonly high: number
  readonly basis: 'published' | 'model' | 'memory'
  readonly source: string
}

/**
 * Diameters by the plane solve (docs/decisions/0012): rounds of this steel whose middle takes as long from 800 to 500 degC, bars of 4 to 50 mm in
 * still air, oil, water and brine. The band is the spread over baths and sizes, which no one figure can follow: gentle baths go by
 * surface and volume, fierce ones by the slowest mode. The value lies as near the middle of it as the printed ranges allow.
 */
const SOLVED = 'plane conduction, 4 to 50 mm in still air, oil, water and brine'

const SQUARE: EquivalentRatio = {
  value: 1.05,
  low: 0.96,
  high: 1.095,
  basis: 'model',
  source: `${SOLVED}: 0.94 to 1.10, mean 1.04; 1.05 to 1.08 after BS 5046 (memory)`,
}

const HEXAGON: EquivalentRatio = {
  value: 1.03,
  low: 0.98,
  high: 1.04,
  basis: 'model',
  source: `${SOLVED}: 0.98 to 1.04, mean 1.01; 1.03 to 1.06 in print (memory)`,
}

const OCTAGON: EquivalentRatio = {
  value: 1.01,
  low: 0.99,
  high: 1.022,
  basis: 'model',
  source: `${SOLVED}: 0.99 to 1.02, mean 1.01; slowest mode with the surface held cold 1.022`,
}

/** Equivalent round over thickness against width over thickness; the first row is the square's. */
const FLAT: Rows = [
  [1, SQUARE.value],
  [1.25, 1.15],
  [1.5, 1.25],
  [2, 1.39],
  [3, 1.54],
  [4, 1.575],
]
/** The spread of the solve for the same rows: it ends at 8, where a flat is a plate. */
const FLAT_LOW: Rows = [
  [1, SQUARE.low],
  [1.5, 1.15],
  [2, 1.32],
  [3, 1.45],
  [8, 1.46],
]
const FLAT_HIGH: Rows = [
  [1, SQUARE.high],
  [1.5, 1.32],
  [2, 1.46],
  [3, 1.66],
  [4, 1.83],
  [8, 2],
]
const FLAT_SOURCE = `${SOLVED}; within 5 % of a table in the style of BS 5046 (memory), 1.5 thicknesses for a wide plate`

/**
 * Diameter of the long round whose centre cools like that of a long bar of this shape, over the distance across its flats.
 * Speaks of the centre only: edges and corners of the true shape cool faster than anything on the equivalent round.
 *
 * - in: `widthOverThickness` [1], read for a flat only; below 1 it counts as 1
 */
export function equivalentRatio(shape: SectionShape, widthOverThickness = 1): EquivalentRatio {
  switch (shape) {
    case 'round':
      return { value: 1, low: 1, high: 1, basis: 'published', source: 'a round is its own equivalent' }
    case 'square':
      return SQUARE
    case 'hexagon':
      return HEXAGON
    case 'octagon':
      return OCTAGON
    case 'flat': {
      const value = interpolate(FLAT, widthOverThickness)
      const low = interpolate(FLAT_LOW, widthOverThickness)
      const high = interpolate(FLAT_HIGH, widthOverThickness)
      return { value, low, high, basis: 'model', source: FLAT_SOURCE }
    }
  }
}

/** Diameter of the equivalent round [m] of one section end. */
export function equivalentRoundM(shape: SectionShape, size: SectionSize): number {
  const wide = size.acrossM > 0 ? widthM(size) / size.acrossM : 1
  return size.acrossM * equivalentRatio(shape, wide).value
}

/** Area of the true cross-section [m2]; times density it is the mass per length. */
export function areaM2(shape: SectionShape, size: SectionSize): number {
  const a = size.acrossM
  switch (shape) {
    case 'round':
      return (Math.PI / 4) * a * a
    case 'square':
      return a * a
    case 'hexagon':
      return (Math.sqrt(3) / 2) * a * a
    case 'octagon':
      return 2 * (Math.SQRT2 - 1) * a * a
    case 'flat':
      return a * widthM(size)
  }
}

function widthM(size: SectionSize): number {
  return size.widthM ?? size.acrossM
}
