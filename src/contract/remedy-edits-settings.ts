import { formatVolume } from '#units/amount.ts'
import { durationText, formatDuration } from '#units/duration.ts'
import { formatLength, lengthText, type System } from '#units/length.ts'
import { formatTemperature, temperatureText } from '#units/temperature.ts'

/** A figure that a shop can set: in SI, and as it is typed in a job and said to the smith. */
export interface Setting {
  readonly si: number
  readonly text: string
}

/** Which mark to take when a figure falls between two. */
export type Way = 'nearest' | 'up' | 'down'

const ZERO_C_K = 273.15
const NEARLY = 1e-6

/** 5 degC, or 10 degF. */
export function heatSetting(kelvin: number, units: System, way: Way = 'nearest'): Setting {
  const si =
    units === 'metric' ? ZERO_C_K + onMark(kelvin - ZERO_C_K, 5, way) : (onMark(kelvin * 1.8 - 459.67, 10, way) + 459.67) / 1.8
  return { si, text: temperatureText(si, units) }
}

/** A millimetre, half of one under ten; or a sixteenth of an inch. */
export function lengthSetting(metres: number, units: System, way: Way = 'nearest'): Setting {
  const si =
    units === 'metric'
      ? onMark(metres * 1000, metres < 0.01 ? 0.5 : 1, way) / 1000
      : onMark(metres / 0.0254, 1 / 16, way) * 0.0254
  return { si, text: lengthText(si, units) }
}

/** Whole minutes, never less than asked; quarters of an hour beyond two hours. */
export function holdSetting(seconds: number): Setting {
  const si = seconds > 7200 ? onMark(seconds, 900, 'up') : onMark(seconds, 60, 'up')
  return { si, text: durationText(si) }
}

/** Whole seconds, half of one under five. */
export function walkSetting(seconds: number): Setting {
  const si = onMark(seconds, seconds < 5 ? 0.5 : 1, 'down')
  return { si, text: durationText(si) }
}

/** Litres, or gallons, to the five and never less than asked. */
export function volumeSetting(cubicMetres: number, units: System): Setting {
  const unitM3 = units === 'metric' ? 0.001 : 0.003785411784
  const count = onMark(cubicMetres / unitM3, units === 'metric' ? 5 : 1, 'up')
  return { si: count * unitM3, text: `${count} ${units === 'metric' ? 'L' : 'gal'}` }
}

/** What stood there before, in the units of who reads. */
export const before = {
  heat: (kelvin: number, units: System): string => formatTemperature(kelvin, units),
  length: (metres: number, units: System): string => formatLength(metres, units),
  time: (seconds: number): string => formatDuration(seconds),
  volume: (cubicMetres: number, units: System): string => formatVolume(cubicMetres, units),
}

/** ` twice`, ` three times`; nothing for once. */
export function inTimes(times: number): string {
  return times === 1 ? '' : ([' twice', ' three times', ' four times'][times - 2] ?? ` ${times} times`)
}

/** The multiple of `step`, free of the noise of a product. */
function onMark(value: number, step: number, way: Way): number {
  const count = value / step
  const whole = way === 'nearest' ? Math.round(count) : way === 'up' ? Math.ceil(count - NEARLY) : Math.floor(count + NEARLY)
  return Number((whole * step).toPrecision(12))
}
