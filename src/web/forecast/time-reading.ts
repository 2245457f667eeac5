import type { Forecast } from '#contract/answers.ts'
import { formatDuration } from '#units/duration.ts'
import type { System } from '#units/length.ts'
import { formatTemperature, kelvinFromCelsius } from '#units/temperature.ts'
import { stretchName } from './step-names.ts'
import type { TimeScale } from './time-scale.ts'
import { readAt, type WholeCurves } from './whole-curves.ts'

/** What stands under the cursor of the time line. */
export interface TimeReading {
  /** In which step, how far into it. */
  readonly when: string
  readonly figures: readonly { readonly key: 'skin' | 'centre' | 'here'; readonly name: string; readonly says: string }[]
}

export function readingAt(
  scale: TimeScale,
  forecast: Pick<Forecast, 'steps'>,
  { timeS, skinC, centreC }: WholeCurves,
  hereC: readonly number[] | undefined,
  atS: number,
  units: System,
): TimeReading {
  const stretch = scale.stretchAt(atS)
  const sinceS = stretch === undefined ? 0 : atS - stretch.startS
  const says = (values: readonly number[]): string => formatTemperature(kelvinFromCelsius(readAt(timeS, values, atS)), units)
  const name = stretch === undefined ? '' : `${stretchName(stretch, forecast)}${stretch.rounds > 1 ? ` ${stretch.round}` : ''}`
  return {
    when: atS >= scale.endS ? 'at the end' : `${name}, ${formatDuration(sinceS)} in`,
    figures: [
      { key: 'skin', name: 'skin', says: says(skinC) },
      { key: 'centre', name: 'middle', says: says(centreC) },
      ...(hereC === undefined ? [] : [{ key: 'here' as const, name: 'here', says: says(hereC) }]),
    ],
  }
}
