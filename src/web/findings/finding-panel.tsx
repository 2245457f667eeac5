import { useEffect, useRef } from 'preact/hooks'
import type { Forecast } from '#contract/answers.ts'
import type { Bench } from '#web/bench/bench.ts'
import type { Heights } from '#web/drawing/heights.ts'
import { SeverityMark } from '#web/look/severity-mark.tsx'
import type { PlacedFinding } from './finding-places.ts'
import { FindingWords } from './finding-words.tsx'

interface FindingPanelProps {
  readonly bench: Bench
  readonly placed: PlacedFinding
  readonly forecast: Forecast
  readonly heights: Heights
  readonly onClose: () => void
}

/** A finding opened: beside the drawing at its height on a wide page, along the foot of a narrow one. The drawing stays in sight. */
export function FindingPanel({ bench, placed, forecast, heights, onClose }: FindingPanelProps) {
  const panel = useRef<HTMLDivElement>(null)
  const { index, finding, heightMm } = placed
  useEffect(() => {
    // Read so that the focus moves on when another finding is opened.
    void index
    panel.current?.focus({ preventScroll: true })
  }, [index])
  const share = heightMm === undefined ? 0 : Math.min(1, Math.max(0, heights.yOf(heightMm) / Math.max(1, heights.heightPx)))
  return (
    <div
      class="finding-panel"
      ref={panel}
      role="dialog"
      aria-label={finding.says}
      tabIndex={-1}
      style={{ '--at': share }}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return
        event.stopPropagation()
        onClose()
      }}
    >
      <div class="panel-head">
        <SeverityMark severity={finding.severity} />
        <p class="strong">{finding.says}</p>
        <button type="button" class="button quiet small" onClick={onClose}>
          Close
        </button>
      </div>
      <FindingWords
        bench={bench}
        finding={finding}
        forecast={forecast}
        withoutSays
        onTried={() => {
          bench.selection.value = undefined
        }}
      />
    </div>
  )
}
