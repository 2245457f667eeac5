import type { Estimate } from '#engine/provenance/estimate.ts'
import { celsiusFromKelvin } from '#units/temperature.ts'
import type { Figure } from './answers.ts'

export function rounded(value: number, decimals: number): number {
  const scale = 10 ** decimals
  return Math.round(value * scale) / scale
}

/** An estimate in the unit of its field, after `convert`. */
export function figureOf(estimate: Estimate, decimals: number, convert: (value: number) => number = (value) => value): Figure {
  const [value, low, high] = [estimate.value, estimate.low, estimate.high].map((each) => rounded(convert(each), decimals))
  return { value: value as number, low: low as number, high: high as number, basis: estimate.basis, source: estimate.source }
}

/** An estimate in kelvin as a figure in degrees Celsius, to the whole degree. */
export function celsiusFigure(estimate: Estimate): Figure {
  return figureOf(estimate, 0, celsiusFromKelvin)
}

/** An estimate in Rockwell C, to the tenth. */
export function hrcFigure(estimate: Estimate): Figure {
  return figureOf(estimate, 1)
}
