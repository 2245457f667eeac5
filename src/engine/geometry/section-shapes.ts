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

const SQUARE: EquivalentRatio = {
  value: 1.07,
  low: 1.05,
  high: 1.08,
  basis: 'memory',
  source: 'BS 5046 gives 1.07 (memory); equal centre cooling by conduction gives 1.05 to 1.08, the most for a fierce bath',
}

const HEXAGON: EquivalentRatio = {
  value: 1.045,
  low: 1.03,
  high: 1.06,
  basis: 'memory',
  source: 'middle of 1.03 to 1.06, equal centre cooling (memory)',
}

const OCTAGON: EquivalentRatio = {
  value: 1.022,
  low: 1.01,
  high: 1.03,
  basis: 'model',
  source:
    'slowest mode of conduction in a regular octagon against that of a circle, surface held cold: 1.022; gentle cooling tends to 1',
}

/** Equivalent round over thickness against width over thickness; the first row is the square's. */
const FLAT: Rows = [
  [1, SQUARE.value],
  [1.5, 1.3],
  [2, 1.42],
  [3, 1.47],
  [4, 1.5],
]
const FLAT_SOURCE = 'centre of a rectangle, BS 5046 style table (memory), 1.5 thicknesses for a wide plate; within 5 %'

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
      return { value, low: 0.95 * value, high: 1.05 * value, basis: 'memory', source: FLAT_SOURCE }
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
