/** Figures that a smith can set and measure: every proposed temperature, length and time is one of these. */
export interface Rounding {
  /** Nearest setting of a dial [K]. */
  readonly temperatureK: (kelvin: number) => number
  /** Nearest setting that is not hotter [K]. */
  readonly atMostK: (kelvin: number) => number
  /** From one setting to the next [K]. */
  readonly temperatureStepK: number
  /** Nearest mark of the rule [m]. */
  readonly lengthM: (metres: number) => number
  readonly lengthStepM: number
}

const CELSIUS_K = 273.15
const FAHRENHEIT_K = 459.67
const NEARLY = 1e-6

/** 5 degC and 5 mm. */
export const METRIC_ROUNDING: Rounding = roundingOf({
  stepK: 5,
  fromNought: (degrees) => degrees + CELSIUS_K,
  toNought: (kelvin) => kelvin - CELSIUS_K,
  lengthStepM: 0.005,
})

/** 10 degF and a quarter of an inch. */
export const INCH_ROUNDING: Rounding = roundingOf({
  stepK: 50 / 9,
  fromNought: (degrees) => degrees + FAHRENHEIT_K / 1.8,
  toNought: (kelvin) => kelvin - FAHRENHEIT_K / 1.8,
  lengthStepM: 0.00635,
})

function roundingOf(scale: {
  readonly stepK: number
  readonly fromNought: (degrees: number) => number
  readonly toNought: (kelvin: number) => number
  readonly lengthStepM: number
}): Rounding {
  const { stepK, lengthStepM } = scale
  const setting = (steps: number): number => scale.fromNought(steps * stepK)
  return {
    temperatureK: (kelvin) => setting(Math.round(scale.toNought(kelvin) / stepK)),
    atMostK: (kelvin) => setting(Math.floor(scale.toNought(kelvin) / stepK + NEARLY)),
    temperatureStepK: stepK,
    // Whole millimetres and quarters of an inch, free of the noise of a product.
    lengthM: (metres) => Math.round(Math.round(metres / lengthStepM) * lengthStepM * 1e6) / 1e6,
    lengthStepM,
  }
}

/** A hold as a smith would say it: whole minutes, never less than asked. */
export function wholeMinutes(seconds: number): number {
  return Math.ceil(seconds / 60 - NEARLY) * 60
}
