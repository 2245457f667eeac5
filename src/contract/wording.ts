import { IN_METRIC, type Wording } from '#engine/findings/wording.ts'
import { formatMass, formatVolume } from '#units/amount.ts'
import { formatLength } from '#units/length.ts'
import { formatTemperature } from '#units/temperature.ts'

/** Fahrenheit, inches to the sixteenth (the thirty-second below half an inch), gallons and pounds. */
const IN_INCHES: Wording = {
  ...IN_METRIC,
  temperature: (kelvin) => formatTemperature(kelvin, 'inch'),
  length: (metres) => formatLength(metres, 'inch', metres < 0.0127 ? 32 : 16),
  depth: (metres) => `${Number((metres / 0.0254).toFixed(3))} in`,
  volume: (cubicMetres) => formatVolume(cubicMetres, 'inch'),
  mass: (kilograms) => formatMass(kilograms, 'inch'),
}

/** How quantities are written for the smith who reads. */
export function wordingFor(units: 'metric' | 'inch'): Wording {
  return units === 'inch' ? IN_INCHES : IN_METRIC
}
