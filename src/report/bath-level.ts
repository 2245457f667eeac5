import type { Forecast } from '#contract/answers.ts'
import type { System } from '#units/length.ts'
import { type Across, LINE_PX, TEXT_PX } from './drawing-columns.ts'
import { temperatureOf } from './figure-text.ts'
import type { HeightScale } from './height-scale.ts'
import { brokenIntoLines } from './label-places.ts'
import { element, label, line } from './svg.ts'

/** Level of the bath as a drawing shows a liquid, its name below the working end. */
export function bathOf(forecast: Forecast, units: System, scale: HeightScale, at: Across): string {
  const bath = forecast.baths.at(-1)
  if (bath === undefined) return ''
  const air = /air$/u.test(bath.kind)
  const named = bath.name === bath.kind ? bath.name : `${bath.name}, ${bath.kind}`
  const warms = Math.abs(bath.end_C - bath.start_C) < 1
  const heat = warms
    ? temperatureOf(bath.start_C, units)
    : `${temperatureOf(bath.start_C, units)} to ${temperatureOf(bath.end_C, units)}`
  const letters = Math.floor((at.widthPx - 8) / (TEXT_PX * 0.64))
  const words = brokenIntoLines(air ? `cools in ${named}` : `${named}, ${heat}`, letters, 3)
  const text = words
    .map((each, i) =>
      label(at.widthPx / 2, scale.bottomPx + BELOW_FOOT_PX + i * LINE_PX, each, { class: 'soft', 'text-anchor': 'middle' }),
    )
    .join('')
  const levelPx = levelPxOf(forecast, scale)
  if (levelPx === undefined) return text
  const sign = at.bracketPx + 2
  return (
    element('rect', { x: 0, y: levelPx, width: at.widthPx, height: scale.totalPx - levelPx, class: 'liquid' }) +
    levelLines(levelPx, at, bath.line_mm === null) +
    element('path', { d: `M${sign - 6} ${levelPx - 10}h12l-6 10z`, class: 'level-sign' }) +
    [3, 6.5, 10]
      .map((down, i) => line(sign - 9 + 3 * i, levelPx + down, sign + 9 - 3 * i, levelPx + down, 'level-dash'))
      .join('') +
    text
  )
}

/** Height of the liquid's surface on the paper; undefined where it cools in air. */
export function levelPxOf({ baths }: Forecast, scale: HeightScale): number | undefined {
  const bath = baths.at(-1)
  if (bath === undefined || /air$/u.test(bath.kind)) return undefined
  return bath.line_mm === null ? scale.topPx - 16 : scale.y(bath.line_mm)
}

/** The surface of the liquid, open where numbers stand beside the metal. */
function levelLines(levelPx: number, at: Across, over: boolean): string {
  if (over) return line(0, levelPx, at.widthPx, levelPx, 'level')
  return (
    line(Math.max(0, at.bracketPx - 12), levelPx, at.contoursPx, levelPx, 'level') +
    line(at.measuresPx - 2, levelPx, at.widthPx, levelPx, 'level')
  )
}

const BELOW_FOOT_PX = 30
