import type { Picture } from '#contract/picture-fields.ts'
import type { System } from '#units/length.ts'
import type { Field } from '#web/bench/bench.ts'
import { roundLevels } from './contours.ts'
import { temperaturesAt } from './instants.ts'
import { BAND, HARDNESS, HEAT, type Scale } from './scales.ts'

/** A field that has a figure at every place, ready to be drawn. */
export interface FieldValues {
  /** At every node. */
  readonly values: Float32Array
  readonly scale: Scale
  /** Between which figures it lies. */
  readonly low: number
  readonly high: number
  /** Round figures that get a line, and how each is written on it. */
  readonly levels: readonly number[]
  readonly figureOf: (value: number) => string
  /** From one line to the next, as it is written on them; empty where there is at most one. */
  readonly every: string
  /** Stands once, beside the ramp. */
  readonly unit: string
}

const MOST_LINES = 6

/** The figures of a field at a time; `became` and `colours` have words instead. */
export function fieldValues(picture: Picture, field: Field, instantS: number, units: System): FieldValues | undefined {
  switch (field) {
    case 'heat':
      return heatValues(temperaturesAt(picture, instantS), units)
    case 'quenched':
      return hardnessValues(picture.quenchedHrc)
    case 'tempered':
      return hardnessValues(picture.temperedHrc)
    case 'band':
      return bandValues(picture.bandHrc)
    default:
      return undefined
  }
}

/** Shown temperature from degC, and back. */
export function shownDegrees(celsius: number, units: System): number {
  return units === 'metric' ? celsius : celsius * 1.8 + 32
}

export function celsiusShown(degrees: number, units: System): number {
  return units === 'metric' ? degrees : (degrees - 32) / 1.8
}

function heatValues(values: Float32Array, units: System): FieldValues {
  const [low, high] = endsOf(values)
  const steps = units === 'metric' ? [2, 5, 10, 20, 50, 100, 200] : [5, 10, 20, 50, 100, 200, 400]
  const levels = roundLevels(shownDegrees(low, units), shownDegrees(high, units), MOST_LINES, steps)
  return {
    values,
    scale: HEAT,
    low,
    high,
    levels: levels.map((degrees) => celsiusShown(degrees, units)),
    figureOf: (celsius) => `${Math.round(shownDegrees(celsius, units))}°`,
    every: everySays(levels, '°'),
    unit: units === 'metric' ? '°C' : '°F',
  }
}

/** The C scale is no measure below this [HRC]. */
const SCALE_BEGINS_HRC = 20

function hardnessValues(values: Float32Array): FieldValues {
  const [low, high] = endsOf(values)
  const levels = roundLevels(Math.max(low, SCALE_BEGINS_HRC - 1e-3), high, MOST_LINES, [1, 2, 5, 10, 20])
  return {
    values,
    scale: HARDNESS,
    low,
    high,
    levels,
    every: everySays(levels, ''),
    figureOf: (hrc) => (hrc < SCALE_BEGINS_HRC ? `under ${SCALE_BEGINS_HRC}` : String(Math.round(hrc))),
    unit: 'HRC',
  }
}

function bandValues(values: Float32Array): FieldValues {
  const [low, high] = endsOf(values)
  const levels = roundLevels(low, high, MOST_LINES, [1, 2, 5, 10])
  return {
    values,
    scale: BAND,
    low,
    high,
    levels,
    every: everySays(levels, ''),
    figureOf: (hrc) => String(Math.round(hrc)),
    unit: 'HRC wide',
  }
}

function everySays(levels: readonly number[], unit: string): string {
  const [first, second] = levels
  return first === undefined || second === undefined ? '' : `${Math.round(second - first)}${unit}`
}

function endsOf(values: Float32Array): [low: number, high: number] {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const value of values) {
    if (value < low) low = value
    if (value > high) high = value
  }
  return [low, high]
}
