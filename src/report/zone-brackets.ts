import type { Forecast } from '#contract/answers.ts'
import { type Across, LINE_PX, type Plan } from './drawing-columns.ts'
import { aimWords } from './figure-text.ts'
import type { HeightScale } from './height-scale.ts'
import { brokenIntoLines, spreadLabels } from './label-places.ts'
import { element, label, pathThrough } from './svg.ts'

/** A bracket along each zone; its name and aim beside it where there is room. */
export function zonesOf({ zones }: Forecast, scale: HeightScale, at: Across, plan: Plan): string {
  const brackets = zones.map(({ from_mm, to_mm, assumed }) => {
    const d = `M${at.bracketPx} ${scale.y(to_mm) + 1}h-6V${scale.y(from_mm) - 1}h6`
    return element('path', { d, class: assumed ? 'bracket assumed' : 'bracket' })
  })
  if (plan === 'narrow') return brackets.join('')
  // Names give way to each other by lines; where there is no room for one line each, the table below has them.
  const lowPx = 18
  const highPx = scale.bottomPx + 16
  const most = Math.min(4, Math.floor((highPx - lowPx) / (Math.max(1, zones.length) * (LINE_PX + 2))))
  if (most < 1) return brackets.join('')
  const texts = zones.map(({ name, aim, assumed }) =>
    [...brokenIntoLines(name, 13, Math.max(1, Math.min(2, most - 1))), aimWords(aim), ...(assumed ? ['(assumed)'] : [])].slice(
      0,
      most,
    ),
  )
  const middles = spreadLabels(
    zones.map(({ from_mm, to_mm }, i) => ({
      atPx: scale.y((from_mm + to_mm) / 2),
      tallPx: (texts[i]?.length ?? 1) * LINE_PX + 2,
    })),
    lowPx,
    highPx,
  )
  const names = zones.map(({ from_mm, to_mm }, i) => {
    const lines = texts[i] ?? []
    const middle = middles[i] ?? 0
    const top = middle - (lines.length * LINE_PX) / 2 + 12
    const right = at.bracketPx - 16
    return (
      element('path', {
        d: pathThrough([
          [at.bracketPx - 6, scale.y((from_mm + to_mm) / 2)],
          [right + 3, middle],
        ]),
        class: 'measure',
      }) +
      lines
        .map((each, k) => label(right, top + k * LINE_PX, each, { 'text-anchor': 'end', class: k === 0 ? 'strong' : 'plain' }))
        .join('')
    )
  })
  return [...brackets, ...names].join('')
}
