import { durationText, parseDuration } from '#units/duration.ts'
import { lengthText, parseLength, type System } from '#units/length.ts'
import { parseTemperature, temperatureText } from '#units/temperature.ts'

type Direction = 1 | -1

/**
 * One step of an arrow key on a quantity as typed, in the unit it was typed in: to the next round figure that way. Undefined where the
 * text cannot be read, or where the step would lead to nothing at all.
 */
export function steppedTemperature(typed: string, direction: Direction): string | undefined {
  const read = parseTemperature(typed)
  if (!read.ok) return undefined
  const { temperatureK } = read.value
  if (/k/iu.test(typed)) return `${next(temperatureK, 5, direction)} K`
  const units: System = /f/iu.test(typed) ? 'inch' : 'metric'
  const [nought, kelvin, step] = units === 'inch' ? [459.67, 5 / 9, 10] : [273.15, 1, 5]
  const degrees = next(temperatureK / kelvin - nought, step, direction)
  return temperatureText((degrees + nought) * kelvin, units)
}

/** Seconds below a minute, then minutes, five minutes, quarters of an hour, half hours. */
export function steppedDuration(typed: string, direction: Direction, { zero = false } = {}): string | undefined {
  const read = parseDuration(typed, { zero: true })
  if (!read.ok) return undefined
  const { durationS } = read.value
  // Just below a border the finer step holds, so that a step back undoes a step forth.
  const at = direction > 0 ? durationS : durationS - 1e-6
  const step = at < 10 ? 0.5 : at < 60 ? 5 : at < 1200 ? 60 : at < 3600 ? 300 : at < 14_400 ? 900 : 1800
  const seconds = next(durationS, step, direction)
  if (seconds < 0 || (seconds === 0 && !zero)) return undefined
  return seconds === 0 ? '0 min' : durationText(seconds)
}

/** Millimetres, five of them from 30 on; sixteenths of an inch, eighths from two inches on. */
export function steppedLength(typed: string, direction: Direction, { zero = false } = {}): string | undefined {
  const read = parseLength(typed, { zero: true })
  if (!read.ok) return undefined
  const inches = /in|["″”]/iu.test(typed)
  const unitM = inches ? 0.0254 : 0.001
  const count = read.value.lengthM / unitM
  const at = direction > 0 ? count : count - 1e-9
  const step = inches ? (at < 2 ? 1 / 16 : 1 / 8) : at < 30 ? 1 : 5
  const length = next(count, step, direction)
  if (length < 0 || (length === 0 && !zero)) return undefined
  return length === 0 ? `0 ${inches ? 'in' : 'mm'}` : lengthText(length * unitM, inches ? 'inch' : 'metric')
}

/** The next multiple of `step` that way; a figure off the grid comes onto it. */
function next(value: number, step: number, direction: Direction): number {
  const count = value / step
  const there = direction > 0 ? Math.floor(count + 1e-6) + 1 : Math.ceil(count - 1e-6) - 1
  return Number((there * step).toFixed(6))
}
