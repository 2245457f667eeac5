import { useSignal } from '@preact/signals'
import { useLayoutEffect } from 'preact/hooks'
import type { Forecast } from '#contract/answers.ts'
import { radiusAt } from '#report/height-scale.ts'
import { type DrawnBody, trueRadiusMm } from '#web/drawing/body.ts'
import type { Heights } from '#web/drawing/heights.ts'
import type { Flag } from './flag-layout.ts'

interface FlagLeadersProps {
  readonly forecast: Forecast
  readonly body: DrawnBody
  readonly heights: Heights
  readonly flags: readonly Flag[]
  readonly flagPx: number
  readonly opened: number | undefined
  readonly column: { readonly current: HTMLElement | null }
}

/** How far the column lies from the middle of the drawing [px]; nothing before it is measured, or where no drawing stands beside it. */
interface Reach {
  readonly axisPx: number
}

/** Room at the left of the flags in which a leader turns from its height to its flag [px]. */
const TURN_PX = 14

/** Lines from the flags over to the metal, each ending in a dot on the skin. They lie over what stands between and take no touch. */
export function FlagLeaders({ forecast, body, heights, flags, flagPx, opened, column }: FlagLeadersProps) {
  const reach = useSignal<Reach | undefined>(undefined)
  useLayoutEffect(() => {
    const drawing = column.current?.parentElement?.querySelector('.stage-drawing')
    if (drawing === null || drawing === undefined) return undefined
    const measure = (): void => {
      const own = column.current?.getBoundingClientRect()
      const from = drawing.getBoundingClientRect()
      const axisPx = own === undefined ? 0 : own.left - (from.left + from.width / 2)
      if (axisPx !== reach.peek()?.axisPx) reach.value = axisPx > 0 ? { axisPx } : undefined
    }
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(drawing)
    if (column.current !== null) watch.observe(column.current)
    return () => watch.disconnect()
  }, [column, reach])
  const axisPx = reach.value?.axisPx ?? 0
  const widthPx = axisPx + TURN_PX
  return (
    <svg class="flag-leaders" width={widthPx} height={heights.heightPx} style={{ left: `${-axisPx}px` }} aria-hidden="true">
      {flags.map(({ placed, topPx, anchorPx }) => {
        if (anchorPx === undefined || placed.heightMm === undefined) return null
        const drawnMm = trueRadiusMm(body, placed.heightMm, radiusAt(forecast.outline_mm, placed.heightMm))
        const skinPx = axisPx === 0 ? 0 : drawnMm * heights.pxPerMm
        const open = placed.index === opened
        return (
          <g key={placed.index} class={`leader ${placed.finding.severity}`} data-open={open}>
            <path class="leader-line" d={`M${skinPx} ${anchorPx}H${axisPx}L${widthPx} ${topPx + flagPx / 2}`} />
            <circle class="leader-dot" cx={skinPx} cy={anchorPx} r={placed.finding.severity === 'note' ? 3 : 4.5} />
          </g>
        )
      })}
    </svg>
  )
}
