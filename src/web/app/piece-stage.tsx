import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import type { Bench } from '#web/bench/bench.ts'
import { bodyOfText } from '#web/drawing/body.ts'
import { heightsFor } from '#web/drawing/heights.ts'
import { PieceDrawing } from '#web/drawing/piece-drawing.tsx'
import { useStillHeights } from '#web/drawing/still-heights.ts'
import { Choice } from '#web/look/choice.tsx'
import { later } from './later.tsx'
import type { Side } from './piece-place.tsx'

// Drawn from an answer: they come while the engine works on the first one.
const FieldChoice = later(async () => (await import('./answer-views.ts')).FieldChoice, 'stage-field')
const AlongPicture = later(async () => (await import('./answer-views.ts')).AlongPicture)
const FindingFlags = later(async () => (await import('./answer-views.ts')).FindingFlags)

/** Below this the columns beside the drawing take turns [px]. */
const NARROW_PX = 700

/**
 * Everything that has a height on the piece, at that height: the drawing over its bath, the hardness along it, what was found.
 * On a narrow screen the last two take turns.
 */
export function PieceStage({ bench, side }: { readonly bench: Bench; readonly side: Side }) {
  const stage = useRef<HTMLDivElement>(null)
  const drawingBox = useRef<HTMLDivElement>(null)
  const box = useSignal({ widthPx: 0, heightPx: 0, stagePx: 0 })
  const beside = useSignal<'along' | 'found'>('along')
  useEffect(() => {
    const watch = new ResizeObserver(() => {
      const drawing = drawingBox.current?.getBoundingClientRect()
      const whole = stage.current?.getBoundingClientRect()
      if (drawing === undefined || whole === undefined) return
      box.value = { widthPx: drawing.width, heightPx: drawing.height, stagePx: whole.width }
    })
    if (stage.current !== null) watch.observe(stage.current)
    if (drawingBox.current !== null) watch.observe(drawingBox.current)
    return () => watch.disconnect()
  }, [box])

  const body = bodyOfText(bench.job.value, bench.outlook.answered.value?.forecast)
  const { widthPx, heightPx, stagePx } = box.value
  const narrow = stagePx < NARROW_PX
  // More than half of the room across is for measures and handles.
  const fitting = heightsFor(body.lengthMm, body.halfWidthMm, { widthPx: widthPx * (narrow ? 0.62 : 0.45), heightPx })
  const heights = useStillHeights(fitting)
  return (
    <div class="piece-stage" ref={stage} data-narrow={narrow}>
      <div class="stage-head">
        <FieldChoice bench={bench} />
        {narrow && (
          <Choice
            name="Beside the piece"
            nameHidden
            value={beside.value}
            values={[
              ['along', 'Along it'],
              ['found', 'Found'],
            ]}
            onChosen={(chosen) => {
              beside.value = chosen
            }}
          />
        )}
      </div>
      <div class="stage-drawing" ref={drawingBox}>
        {widthPx > 0 && <PieceDrawing bench={bench} body={body} heights={heights} widthPx={widthPx} shaping={side === 'shape'} />}
      </div>
      {(!narrow || beside.value === 'along') && <AlongPicture bench={bench} heights={heights} />}
      {(!narrow || beside.value === 'found') && <FindingFlags bench={bench} heights={heights} />}
    </div>
  )
}
