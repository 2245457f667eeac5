import type { Forecast } from '#contract/answers.ts'
import { formatDuration } from '#units/duration.ts'
import type { System } from '#units/length.ts'

type Colours = NonNullable<Forecast['steps'][number]['colours']>

/** What there is of time to stop a colour, from the lift on [s]. */
export interface ColourReading {
  readonly short: string
  readonly says: readonly string[]
  readonly stopS: number
  readonly fromS: number
  /** Absent: within its aim as far as it was followed. */
  readonly untilS?: number
  /** To the end of the picture. */
  readonly lastS: number
}

/** Undefined where the heat was not enough, or nobody aims at anything there. */
export function readColours(colours: Colours | undefined, units: System): ColourReading | undefined {
  if (colours?.reached_s == null || colours.window_s === undefined) return undefined
  const { reached_s: stopS, window_s, within_K, rise_K_per_s } = colours
  const { from: fromS, until } = window_s
  const told = (s: number): number => (s < 10 ? Math.round(10 * s) / 10 : Math.round(s))
  const span = until === null ? undefined : Math.max(0, told(until) - told(fromS))
  const stopsWell = stopS >= fromS && (until === null || stopS <= until)
  return {
    short:
      span === undefined
        ? `No hurry: good from ${formatDuration(fromS)} after the lift on`
        : `${formatDuration(span)} to catch it: ${formatDuration(told(fromS))} to ${formatDuration(told(fromS) + span)} after the lift`,
    says: [
      ...(stopsWell
        ? []
        : [`The stop comes ${stopS < fromS ? 'before' : 'after'} that: choose a ${stopS < fromS ? 'later' : 'paler'} colour.`]),
      ...eyeSays(within_K, rise_K_per_s, units),
    ],
    stopS,
    fromS,
    ...(until === null ? {} : { untilS: until }),
    lastS: 1.15 * Math.max(stopS, until ?? 2 * stopS - Math.min(fromS, stopS), fromS + 1),
  }
}

/** How far the eye is off in heat, and what that is in time. */
function eyeSays(withinK: number, risePerS: number, units: System): string[] {
  if (!(risePerS > 0.05)) return []
  const degrees = units === 'inch' ? `${Math.round(withinK * 1.8)} °F` : `${Math.round(withinK)} °C`
  return [
    `A colour tells the heat within ${degrees}: some ${formatDuration(Math.max(1, Math.round(withinK / risePerS)))} either way at the pace it has there.`,
  ]
}
