import { bodyOfText } from '#web/drawing/body.ts'
import { heightsFor } from '#web/drawing/heights.ts'
import { edgePath, halfPath, px } from '#web/drawing/outline-path.ts'
import type { JobText } from '#web/job/job-text.ts'

interface SmallOutlineProps {
  readonly job: JobText
  readonly widthPx: number
  readonly heightPx: number
}

/** A piece as a small drawing: working end down, the broad side of a flat as a thin outline. */
export function SmallOutline({ job, widthPx, heightPx }: SmallOutlineProps) {
  const body = bodyOfText(job)
  const heights = heightsFor(body.lengthMm, body.halfWidthMm, { widthPx: widthPx - 6, heightPx, abovePx: 4, belowPx: 4 })
  const axisPx = widthPx / 2
  const broad = body.sections.flatMap(({ fromMm, lengthMm, widthMm }) =>
    widthMm === undefined
      ? []
      : ([-1, 1] as const).map((side) => {
          const at = (mm: number): string => px(axisPx + (side * mm * heights.pxPerMm) / 2)
          return `M${px(axisPx)} ${px(heights.yOf(fromMm))}H${at(widthMm[0])}L${at(widthMm[1])} ${px(heights.yOf(fromMm + lengthMm))}H${px(axisPx)}`
        }),
  )
  return (
    <svg class="small-outline" width={widthPx} height={heightPx} aria-hidden="true">
      <path d={broad.join('')} fill="none" stroke="var(--ink-soft)" stroke-width="1" />
      {([-1, 1] as const).map((side) => (
        <g key={side}>
          <path
            d={halfPath(body, side < 0 ? body.outside : body.outline, heights, { axisPx, side })}
            fill={side < 0 ? 'var(--metal)' : 'var(--cut)'}
          />
          <path
            d={edgePath(body, side < 0 ? body.outside : body.outline, heights, { axisPx, side })}
            fill="none"
            stroke="var(--ink)"
            stroke-width="1.75"
          />
        </g>
      ))}
    </svg>
  )
}
