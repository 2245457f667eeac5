import type { Forecast } from '#contract/answers.ts'
import type { Across } from './drawing-columns.ts'
import { heightOf, inOrder } from './figure-text.ts'
import { type HeightScale, radiusAt } from './height-scale.ts'
import { spreadLabels } from './label-places.ts'
import { element, label, pathThrough } from './svg.ts'

const MARK_PX = 10
const MARK_TALL_PX = 2 * MARK_PX + 4

/** Numbered marks: a square where it says stop, a heavy ring where it says mind, a thin ring for a note. */
export function marksOf(forecast: Forecast, scale: HeightScale, at: Across): string {
  const placed = inOrder(forecast.findings)
    .flatMap((finding, i) => {
      const heightMm = heightOf(finding, forecast)
      return heightMm === undefined ? [] : [{ finding, number: i + 1, heightMm }]
    })
    .slice(0, Math.floor((scale.totalPx - 4) / MARK_TALL_PX))
  const middles = spreadLabels(
    placed.map(({ heightMm }) => ({ atPx: scale.y(heightMm), tallPx: MARK_TALL_PX })),
    2,
    scale.totalPx - 2,
  )
  return placed
    .map(({ finding, number, heightMm }, i) => {
      const y = middles[i] ?? scale.y(heightMm)
      const skin = at.axisPx + radiusAt(forecast.outline_mm, heightMm) * scale.pxPerMm
      return (
        element('path', {
          d: pathThrough([
            [skin, scale.y(heightMm)],
            [at.marksPx - MARK_PX - 2, y],
            [at.marksPx - MARK_PX, y],
          ]),
          class: 'leader',
        }) +
        element('circle', { cx: skin, cy: scale.y(heightMm), r: 2, class: 'leader-foot' }) +
        findingMark(number, finding.severity, at.marksPx, y)
      )
    })
    .join('')
}

/** The mark of a finding about a middle point; the list of findings shows the same. */
export function findingMark(
  number: number,
  severity: Forecast['findings'][number]['severity'],
  xPx: number,
  yPx: number,
): string {
  const shape =
    severity === 'stop'
      ? element('rect', { x: xPx - MARK_PX, y: yPx - MARK_PX, width: 2 * MARK_PX, height: 2 * MARK_PX, class: 'mark-stop' })
      : element('circle', {
          cx: xPx,
          cy: yPx,
          r: MARK_PX - (severity === 'warn' ? 1 : 0.5),
          class: severity === 'warn' ? 'mark-warn' : 'mark-note',
        })
  return (
    shape + label(xPx, yPx + 4.5, String(number), { 'text-anchor': 'middle', class: severity === 'stop' ? 'on-ink' : 'strong' })
  )
}
