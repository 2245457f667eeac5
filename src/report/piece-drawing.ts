import type { Forecast } from '#contract/answers.ts'
import type { System } from '#units/length.ts'
import { bathOf } from './bath-level.ts'
import { metalOf } from './cut-metal.ts'
import { acrossOf, type Plan } from './drawing-columns.ts'
import { bareLength, lengthOf } from './figure-text.ts'
import { marksOf } from './finding-marks.ts'
import { type HeightScale, widestMm } from './height-scale.ts'
import { measuresOf } from './piece-measures.ts'
import { picture } from './svg.ts'
import { zonesOf } from './zone-brackets.ts'

export interface PieceDrawing {
  readonly units: System
  readonly scale: HeightScale
  /** Different for each drawing on a page. */
  readonly id: string
  readonly plan: Plan
}

/**
 * The piece upright over its bath, working end down, to scale: the outside at the left of the centre line, cut open at the
 * right with lines of equal hardness. Zones, measures, the level of the bath and the findings stand at their height.
 */
export function pieceDrawing(forecast: Forecast, { units, scale, id, plan }: PieceDrawing): string {
  const at = acrossOf(forecast, scale, plan)
  return picture(
    id,
    { widthPx: at.widthPx, heightPx: scale.totalPx },
    `${forecast.piece}, working end down`,
    inWords(forecast, units),
    bathOf(forecast, units, scale, at),
    ...(plan === 'full' ? [measuresOf(forecast, units, scale, at)] : []),
    metalOf(forecast, scale, at),
    zonesOf(forecast, scale, at, plan),
    marksOf(forecast, scale, at),
  )
}

function inWords({ length_mm, outline_mm, zones, baths }: Forecast, units: System): string {
  const bath = baths.at(-1)
  return [
    `${lengthOf(length_mm, units)} long, ${lengthOf(2 * widestMm(outline_mm), units)} at its thickest.`,
    ...zones.map(
      ({ name, from_mm, to_mm, aim }) =>
        `${name}: ${bareLength(from_mm, units)} to ${lengthOf(to_mm, units)} from the working end, aim ${aim}.`,
    ),
    ...(bath === undefined
      ? []
      : [
          bath.line_mm === null
            ? `All of it goes into ${bath.name}.`
            : `The first ${lengthOf(bath.line_mm, units)} goes into ${bath.name}.`,
        ]),
  ].join(' ')
}
