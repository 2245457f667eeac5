import './cut-away.css'
import { useLayoutEffect, useRef } from 'preact/hooks'
import type { Bench } from '#web/bench/bench.ts'
import { bodyOfText, type DrawnBody } from '#web/drawing/body.ts'
import type { Heights } from '#web/drawing/heights.ts'
import { CutPainter } from './cut-painter.ts'
import { FIELD_NAMES, spanSays } from './field-words.ts'
import { standingOf } from './standing.ts'

interface CutAwayProps {
  readonly bench: Bench
  readonly body: DrawnBody
  readonly heights: Heights
  /** Where the axis stands in the column, and how wide that is. */
  readonly axisPx: number
  readonly widthPx: number
}

/**
 * The metal of the drawing: at the right of the axis the field over the cut half with lines that carry their figure, at the left the
 * outside as it would be seen. Lies under the outline.
 */
export function CutAway({ bench, body, heights, axisPx, widthPx }: CutAwayProps) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const painter = useRef<CutPainter | undefined>(undefined)
  const answered = bench.outlook.answered.value
  const standing = standingOf(bench.outlook)
  const field = bench.field.value
  // Only the heat changes with the time of the cursor.
  const instantS = field === 'heat' ? bench.instantS.value : Number.POSITIVE_INFINITY
  const ground = bench.device.ground.value
  const units = bench.device.units.value
  useLayoutEffect(() => {
    if (canvas.current === null) return
    painter.current ??= new CutPainter(canvas.current)
    const ratio = Math.min(2, devicePixelRatio)
    painter.current.paint(
      { body, heights, axisPx, widthPx, ratio, ground, units, field, instantS, standing },
      answered === undefined ? undefined : { picture: answered.picture, was: bodyOfText(answered.job) },
    )
  })
  const span = answered === undefined ? '' : spanSays(answered.picture, field, instantS, units)
  return (
    <canvas
      ref={canvas}
      class="cut-away"
      data-standing={standing}
      role="img"
      aria-label={`The metal, cut open. ${FIELD_NAMES[field][1]}${span === '' ? '' : `: ${span}`}`}
    />
  )
}
