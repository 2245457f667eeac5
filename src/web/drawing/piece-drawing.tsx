import './piece-drawing.css'
import { useSignal } from '@preact/signals'
import { useRef } from 'preact/hooks'
import { later } from '#web/app/later.tsx'
import type { Bench } from '#web/bench/bench.ts'
import { BathNow } from '#web/forecast/bath-now.tsx'
import { type DrawnBody, fieldRadiusMm } from './body.ts'
import { FigureLayer } from './figure-layer.tsx'
import { HandleLayer } from './handle-layer.tsx'
import type { Heights } from './heights.ts'
import { LineLayer } from './line-layer.tsx'
import { isMetal, sectionAt } from './metal.ts'
import { MetalLayer } from './metal-layer.tsx'
import { halfPath } from './outline-path.ts'
import { inWords } from './piece-words.ts'
import { PointMark } from './point-mark.tsx'
import { ProblemMarks } from './problem-marks.tsx'
import { zoneBandsOf } from './zone-bands.ts'

// Drawn from an answer: it comes while the engine works on the first one.
const CutAway = later(async () => (await import('#web/app/answer-views.ts')).CutAway, 'out-of-sight')

interface PieceDrawingProps {
  readonly bench: Bench
  readonly body: DrawnBody
  readonly heights: Heights
  readonly widthPx: number
  /** True while the shape is worked on: handles and measures to touch. */
  readonly shaping: boolean
}

/**
 * The piece upright over its bath, to scale and in its true sizes: outside at the left of the centre line, cut open at the right. While it
 * is shaped, everything that has a size can be taken hold of.
 */
export function PieceDrawing({ bench, body, heights, widthPx, shaping }: PieceDrawingProps) {
  const frame = useRef<HTMLElement>(null)
  /** The figure that is being typed over. */
  const typing = useSignal<string | undefined>(undefined)
  const axisPx = widthPx / 2
  const job = bench.job.value
  const selection = bench.selection.value
  const bands = zoneBandsOf(job, body.lengthMm, bench.outlook.answered.value?.forecast)
  const shared = { bench, body, heights, widthPx, axisPx }

  /** A tap on the metal: its section is taken in hand; in the cut half it is also a place to look into. */
  const onTap = (event: MouseEvent): void => {
    if (event.target !== event.currentTarget) return
    const box = frame.current?.getBoundingClientRect()
    if (box === undefined) return
    const xMm = heights.xAt(event.clientY - box.top)
    const rMm = (event.clientX - box.left - axisPx) / heights.pxPerMm
    if (!isMetal(body, xMm, rMm)) return
    if (rMm >= 0) bench.point.value = { xMm, rMm: fieldRadiusMm(body, xMm, rMm) }
    const section = sectionAt(body, xMm)
    if (shaping && section !== undefined) bench.selection.value = { kind: 'section', index: section }
  }

  return (
    <section
      class="piece-drawing"
      ref={frame}
      aria-label="The piece over its bath"
      style={{ width: `${widthPx}px`, height: `${heights.heightPx}px` }}
    >
      <p class="out-of-sight">{inWords(job, body.lengthMm, bench.device.units.value)}</p>
      <BathNow bench={bench} heights={heights} widthPx={widthPx} />
      <MetalLayer job={job} body={body} heights={heights} widthPx={widthPx} axisPx={axisPx} />
      <div class="drawing-field" style={{ clipPath: `path('${metalPath(body, heights, axisPx)}')` }}>
        <CutAway bench={bench} body={body} heights={heights} axisPx={axisPx} widthPx={widthPx} />
      </div>
      <LineLayer
        job={job}
        body={body}
        heights={heights}
        widthPx={widthPx}
        axisPx={axisPx}
        bands={bands}
        selection={selection}
        shaping={shaping}
      />
      {/* biome-ignore lint/a11y/noStaticElementInteractions: by keyboard the same is done with the place mark and the list */}
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: as above */}
      <div class="drawing-touch" onClick={onTap} />
      <PointMark bench={bench} body={body} heights={heights} axisPx={axisPx} />
      {shaping && <HandleLayer {...shared} bands={bands} typing={typing} />}
      <FigureLayer {...shared} bands={bands} shaping={shaping} typing={typing} />
      <ProblemMarks {...shared} />
    </section>
  )
}

/** Everything that is metal: the outside at the left, what is cut at the right. */
function metalPath(body: DrawnBody, heights: Heights, axisPx: number): string {
  return halfPath(body, body.outside, heights, { axisPx, side: -1 }) + halfPath(body, body.outline, heights, { axisPx, side: 1 })
}
