import type { Bench } from '#web/bench/bench.ts'
import type { DrawnBody } from './body.ts'
import type { Heights } from './heights.ts'

interface PieceDrawingProps {
  readonly bench: Bench
  readonly body: DrawnBody
  readonly heights: Heights
  readonly widthPx: number
  /** True while the shape is worked on: handles and measures to touch. */
  readonly shaping: boolean
}

export function PieceDrawing({ body, heights, widthPx }: PieceDrawingProps) {
  const axis = widthPx / 2
  return (
    <svg width={widthPx} height={heights.heightPx} role="img" aria-label="The piece over its bath">
      {body.sections.map(({ index, fromMm, lengthMm, acrossMm: [from, to] }) => (
        <path
          key={index}
          d={`M${axis - (from / 2) * heights.pxPerMm} ${heights.yOf(fromMm)}H${axis + (from / 2) * heights.pxPerMm}L${axis + (to / 2) * heights.pxPerMm} ${heights.yOf(fromMm + lengthMm)}H${axis - (to / 2) * heights.pxPerMm}Z`}
          fill="var(--metal)"
          stroke="var(--ink)"
          stroke-width="2.5"
        />
      ))}
    </svg>
  )
}
