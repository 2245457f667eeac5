import type { Forecast } from '#contract/answers.ts'
import type { System } from '#units/length.ts'
import { type Across, LINE_PX } from './drawing-columns.ts'
import { bareLength } from './figure-text.ts'
import { type HeightScale, radiusAt } from './height-scale.ts'
import { spreadLabels } from './label-places.ts'
import { cornersOf, runsOf } from './outline-shape.ts'
import { element, label, pathThrough } from './svg.ts'

/** Distances from the working end at the corners, and how thick it is between them. */
export function measuresOf(forecast: Forecast, units: System, scale: HeightScale, at: Across): string {
  const { outline_mm, length_mm } = forecast
  const stations = [
    ...new Map(
      [[0, 0] as [number, number], ...cornersOf(outline_mm), [length_mm, 0] as [number, number]].map(([x, r]) => [
        Math.round(x * 10),
        { x, r },
      ]),
    ).values(),
  ]
    .sort((a, b) => a.x - b.x)
    .filter(({ x }, i, all) => i === 0 || x === length_mm || (x - (all[i - 1]?.x ?? 0)) * scale.pxPerMm > 5)
  const lowPx = scale.topPx - 22
  const highPx = scale.bottomPx + 14
  const room = Math.floor((highPx - lowPx) / LINE_PX)
  const wishes = [
    ...stations.map(({ x }) => ({
      atPx: scale.y(x),
      text: bareLength(x, units),
      fromPx: at.axisPx + radiusAt(outline_mm, x) * scale.pxPerMm + 3,
    })),
    ...thicknessesOf(forecast, units, scale).map((each) => ({ ...each, fromPx: undefined })),
  ].slice(0, room)
  const middles = spreadLabels(
    wishes.map(({ atPx }) => ({ atPx, tallPx: LINE_PX })),
    lowPx,
    highPx,
  )
  return (
    wishes
      .map(({ atPx, text, fromPx }, i) => {
        const textPx = middles[i] ?? atPx
        const turn = at.measuresPx + 2
        const leader =
          fromPx === undefined
            ? ''
            : element('path', {
                d: pathThrough([
                  [fromPx, atPx],
                  [turn - 6, atPx],
                  [turn, textPx],
                ]),
                class: 'measure',
              })
        return leader + label(turn + 3, textPx + 4.5, text, { class: 'soft' })
      })
      .join('') + label(at.widthPx - 2, 14, units === 'metric' ? 'mm' : 'inches', { class: 'soft', 'text-anchor': 'end' })
  )
}

const SHAPE_SIGNS = { round: '⌀ ', square: '□ ', hexagon: 'hex ', octagon: 'oct ', flat: '' } as const

/** How thick it is along each straight stretch: once where it stays the same, at both ends where it tapers. */
function thicknessesOf({ outline_mm, sections }: Forecast, units: System, scale: HeightScale): { atPx: number; text: string }[] {
  const stretches =
    sections?.map(({ from_mm, to_mm, shape, across_mm, width_mm }) => ({
      fromMm: from_mm,
      toMm: to_mm,
      texts: [0, 1].map((end) => {
        const across = bareLength(across_mm[end] ?? 0, units)
        return shape === 'flat' ? `${across}×${bareLength(width_mm?.[end] ?? 0, units)}` : SHAPE_SIGNS[shape] + across
      }),
    })) ??
    runsOf(outline_mm).map(({ fromMm, toMm, fromRadiusMm, toRadiusMm }) => ({
      fromMm,
      toMm,
      texts: [fromRadiusMm, toRadiusMm].map((radius) => `⌀ ${bareLength(2 * radius, units)}`),
    }))
  return stretches.flatMap(({ fromMm, toMm, texts: [low = '', high = ''] }) => {
    const tallPx = (toMm - fromMm) * scale.pxPerMm
    if (low === high) return tallPx < 30 ? [] : [{ atPx: scale.y((fromMm + toMm) / 2), text: low }]
    if (tallPx < 56) return []
    return [
      { atPx: scale.y(fromMm) - 20, text: low },
      { atPx: scale.y(toMm) + 20, text: high },
    ]
  })
}
