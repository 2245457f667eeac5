import type { Forecast } from '#contract/answers.ts'
import type { System } from '#units/length.ts'
import {
  bracketsOf,
  LABELS_BELOW_MM,
  type LabelPlace,
  type Level,
  labelsDrawn,
  labelsThatFit,
  round,
  wrapped,
  type ZoneName,
} from './card-labels.ts'
import { type Face, MM_PER_PT, widthOf } from './card-type.ts'
import { aimWords, lengthOf, temperatureOf } from './figure-text.ts'
import { cornersOf, hollowsOf } from './outline-shape.ts'
import { trueHalfWidths } from './silhouette.ts'
import { element, label, line, pathThrough } from './svg.ts'

export interface CardPiece {
  readonly units: System
  readonly widthMm: number
  /** At most so high; it takes what it needs. */
  readonly heightMm: number
  readonly sizePt: number
  readonly face: Face
}

const SIDE_MM = 1.1
/** From the piece to the brackets of its zones, and on to their names. */
const BRACKET_MM = 2.4
const STEM_MM = 4
const BELOW_MM = 2.2

/**
 * The piece as it hangs from the tongs, working end down, to scale and in its true sizes, in the bath of its quench: the level of each
 * dip, and at their height the zones with their aims. All lengths of the drawing are millimetres of paper.
 */
export function cardPiece(
  forecast: Forecast,
  { units, widthMm, heightMm: roomiestMm, sizePt, face }: CardPiece,
): { readonly svg: string; readonly heightMm: number } {
  const lineMm = sizePt * MM_PER_PT * 1.15
  const shape = trueHalfWidths(forecast)
  const widest = shape.reduce((most, [, half]) => Math.max(most, half), 1e-3)
  const bathLines = bathWords(forecast, units).flatMap((each) => wrapped(each, widthMm, sizePt, face, 3))
  const topMm = lineMm + STEM_MM
  const belowMm = BELOW_MM + bathLines.length * lineMm + 1
  const roomMm = roomiestMm - topMm - belowMm
  const zones: ZoneName[] = forecast.zones.map(({ name, aim, assumed, from_mm, to_mm }) => ({
    name,
    says: aimWords(aim),
    assumed,
    from_mm,
    to_mm,
  }))
  const labelMm =
    zones.length === 0
      ? 0
      : Math.min(
          widthMm * 0.5,
          Math.max(...zones.flatMap(({ name, says }) => [widthOf(name, sizePt, face) * 1.12, widthOf(says, sizePt, face)])) + 0.5,
        )
  const scale = Math.min(
    (widthMm - 2 * SIDE_MM - (labelMm > 0 ? labelMm + BRACKET_MM : 0)) / (2 * widest),
    roomMm / Math.max(forecast.length_mm, 1e-3),
  )
  const spareMm = widthMm - 2 * widest * scale - (labelMm > 0 ? labelMm + BRACKET_MM : 0)
  const axisMm = Math.max(SIDE_MM, spareMm / 2) + widest * scale
  const bottomMm = topMm + forecast.length_mm * scale
  const y = (xMm: number) => bottomMm - xMm * scale
  const at = {
    axisMm,
    scale,
    y,
    lineMm,
    sizePt,
    face,
    widthMm,
    topMm: y(forecast.length_mm),
    bracketMm: axisMm + widest * scale + 1.2,
    labelsMm: axisMm + widest * scale + BRACKET_MM + 0.4,
  }
  const levels = levelsOf(forecast, units, at)
  const { labels, extraMm } = labelsThatFit(zones, levels, at, forecast.length_mm * scale, roomiestMm - bottomMm - belowMm)
  const heightMm = bottomMm + belowMm + extraMm
  const svg = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'qw-piece',
      role: 'img',
      'aria-label': inWords(forecast, units),
      viewBox: `0 0 ${round(widthMm)} ${round(heightMm)}`,
      style: `width:${round(widthMm)}mm;height:${round(heightMm)}mm;font-size:${round(sizePt * MM_PER_PT)}px`,
    },
    liquid(levels, at, heightMm, labels.length > 0),
    metal(forecast, shape, at),
    bracketsOf(zones, at),
    labelsDrawn(labels, at, y(0) + LABELS_BELOW_MM + extraMm),
    label(widthMm / 2, at.topMm - STEM_MM - 0.35 * lineMm, `${lengthOf(forecast.length_mm, units)} long`, {
      'text-anchor': 'middle',
    }),
    ...bathLines.map((text, i) =>
      label(widthMm / 2, bottomMm + extraMm + BELOW_MM + (i + 0.8) * lineMm, text, { 'text-anchor': 'middle' }),
    ),
  )
  return { svg, heightMm }
}

interface Place extends LabelPlace {
  readonly axisMm: number
  readonly scale: number
}

/** `4 oil drum, 50 °C, whole under`. */
function bathWords({ baths, length_mm }: Forecast, units: System): string[] {
  return baths.map(({ step, name, kind, start_C, line_mm }) =>
    kind.endsWith('air')
      ? `${step + 1}: cools in ${name}`
      : `${step + 1}: ${name}, ${temperatureOf(start_C, units)}, ${line_mm === null || line_mm >= length_mm ? 'whole under' : `${lengthOf(line_mm, units)} deep`}`,
  )
}

function levelsOf({ baths, length_mm }: Forecast, units: System, { y, topMm }: Pick<Place, 'y' | 'topMm'>): Level[] {
  const levels = baths
    .filter(({ kind }) => !kind.endsWith('air'))
    .map(({ line_mm }): Level => {
      const whole = line_mm === null || line_mm >= length_mm
      return whole ? { atMm: topMm - STEM_MM / 2, says: undefined } : { atMm: y(line_mm), says: lengthOf(line_mm, units) }
    })
  return [...new Map(levels.map((each) => [Math.round(each.atMm * 10), each])).values()]
}

/** The tank, the liquid up to its highest level, and a line with its sign at each, open where names may stand on it. */
function liquid(levels: readonly Level[], { widthMm, labelsMm }: Place, heightMm: number, named: boolean): string {
  if (levels.length === 0) return ''
  const highest = levels.reduce((least, { atMm }) => Math.min(least, atMm), heightMm)
  const sign = widthMm - 2.4
  const surface = (level: Level) =>
    named && level.says !== undefined
      ? line(0, level.atMm, labelsMm - 0.6, level.atMm, 'qw-level') +
        line(widthMm - 4.4, level.atMm, widthMm, level.atMm, 'qw-level')
      : line(0, level.atMm, widthMm, level.atMm, 'qw-level')
  return [
    element('rect', { x: 0, y: highest, width: widthMm, height: heightMm - highest, class: 'qw-liquid' }),
    element('path', {
      d: `M0.2 ${round(highest - 2)}V${round(heightMm - 0.2)}H${round(widthMm - 0.2)}V${round(highest - 2)}`,
      class: 'qw-tank',
    }),
    ...levels.flatMap((level) => [
      surface(level),
      element('path', { d: `M${round(sign - 1.2)} ${round(level.atMm - 2)}h2.4l-1.2 2z`, class: 'qw-sign' }),
      ...[0.7, 1.3].map((down, i) =>
        line(sign - 1.5 + 0.6 * i, level.atMm + down, sign + 1.5 - 0.6 * i, level.atMm + down, 'qw-dash'),
      ),
    ]),
  ].join('')
}

/** Outside with its hollows hidden, centre line, and the stem that it hangs by. */
function metal(
  { outline_mm, length_mm }: Forecast,
  shape: readonly (readonly [number, number])[],
  { axisMm, scale, y, topMm }: Place,
): string {
  const side =
    (way: 1 | -1) =>
    (point: readonly [number, number]): [number, number] => [axisMm + way * point[1] * scale, y(point[0])]
  const around = [...shape.map(side(-1)), ...[...shape].reverse().map(side(1))]
  const halfAt = (xMm: number) =>
    shape.filter(([x]) => Math.abs(x - xMm) < 0.05).reduce((most, [, half]) => Math.max(most, half), 0)
  const edges = cornersOf(outline_mm)
    .map(([x]) => x)
    .filter((x) => x > 0.05 && x < length_mm - 0.05 && halfAt(x) > 0)
    .map((x) => line(axisMm - halfAt(x) * scale, y(x), axisMm + halfAt(x) * scale, y(x), 'qw-edge'))
  const hidden = hollowsOf(outline_mm).flatMap((points) =>
    ([1, -1] as const).map((way) => element('path', { d: pathThrough(points.map(side(way))), class: 'qw-hidden' })),
  )
  return [
    element('path', { d: pathThrough(around, true), class: 'qw-metal' }),
    ...edges,
    ...hidden,
    line(axisMm, topMm - STEM_MM, axisMm, y(0) + 1.6, 'qw-axis'),
  ].join('')
}

function inWords({ piece, length_mm, zones, baths: dips }: Forecast, units: System): string {
  const under = dips.map(({ name, line_mm }) =>
    line_mm === null ? `whole into ${name}` : `${lengthOf(line_mm, units)} deep into ${name}`,
  )
  return [
    `${piece}, working end down, ${lengthOf(length_mm, units)} long`,
    ...under,
    ...zones.map(({ name, aim }) => `${name}: aim ${aimWords(aim)}`),
  ].join('; ')
}
