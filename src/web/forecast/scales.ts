import { gammaOf, type Ramp, rampOf, rampThrough } from './ramps.ts'

/** What a field is drawn with: the figures at both ends of a ramp. */
export interface Scale {
  readonly low: number
  readonly high: number
  readonly ramp: Ramp
}

/** Hardness [HRC]: light is soft, dark is hard; the same ramp for every piece, so that pieces can be compared by eye. */
export const HARDNESS: Scale = {
  low: 10,
  high: 66,
  ramp: rampThrough([
    { at: 0, colour: '#f8f1dc' },
    { at: 0.3, colour: '#d3c9a6' },
    { at: 0.55, colour: '#99a39a' },
    { at: 0.78, colour: '#5c7383' },
    { at: 1, colour: '#22334f' },
  ]),
}

/** Width of the band [HRC]: light is sure, dark is doubtful. Another hue than hardness, and it is dotted. */
export const BAND: Scale = {
  low: 0,
  high: 30,
  ramp: rampThrough([
    { at: 0, colour: '#fbf6ec' },
    { at: 0.35, colour: '#dccadb' },
    { at: 0.7, colour: '#a587b0' },
    { at: 1, colour: '#6a4a80' },
  ]),
}

/** Steel begins to glow to an eye used to the dark at about this heat [degC]. */
export const GLOWS_FROM_C = 450
const GLOWS_ALL_C = 600

/**
 * A black body's colours, made a picture: Planck's law in Wien's form at three wavelengths gives how red, green and blue stand to each
 * other; how bright it is is squeezed into what a screen can show. The hottest is set to look white, as smiths name it.
 */
function heatRamp(low: number, high: number): Ramp {
  return rampOf((share) => {
    const celsius = low + share * (high - low)
    const alpha = Math.min(1, Math.max(0, (celsius - GLOWS_FROM_C) / (GLOWS_ALL_C - GLOWS_FROM_C)))
    return { rgb: glowOf(Math.max(celsius, GLOWS_FROM_C)), alpha }
  })
}

const SECOND_RADIATION_CONSTANT = 1.4388e-2
const WAVELENGTH_M = [620e-9, 545e-9, 450e-9] as const
const LOOKS_WHITE_K = 1750
/** Eyes see a glow in a dim shop redder than it is. */
const REDDER = 1.8
const DULLEST = 0.07
const BRIGHTEST_C = 1050

function glowOf(celsius: number): readonly [number, number, number] {
  const kelvin = celsius + 273.15
  const up = Math.min(1, (celsius - GLOWS_FROM_C) / (BRIGHTEST_C - GLOWS_FROM_C))
  const bright = DULLEST + (1 - DULLEST) * up * up
  const perRed = (wavelengthM: number): number => {
    const steeper = SECOND_RADIATION_CONSTANT * (1 / wavelengthM - 1 / WAVELENGTH_M[0])
    return Math.exp(REDDER * steeper * (1 / LOOKS_WHITE_K - 1 / kelvin))
  }
  return [gammaOf(bright), gammaOf(bright * perRed(WAVELENGTH_M[1])), gammaOf(bright * perRed(WAVELENGTH_M[2]))]
}

/** Temperature [degC]: plain while it does not glow, then as it glows. */
export const HEAT: Scale = { low: 20, high: 1300, ramp: heatRamp(20, 1300) }
