import './along-picture.css'
import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { formatLength } from '#units/length.ts'
import type { Bench } from '#web/bench/bench.ts'
import { bodyOfText } from '#web/drawing/body.ts'
import type { Heights } from '#web/drawing/heights.ts'
import type { Answered } from '#web/work/desk.ts'
import { AlongAims } from './along-aims.tsx'
import { AlongBands } from './along-bands.tsx'
import {
  type AlongPoint,
  alongAt,
  alongPoints,
  DRAWN_FROM_HRC,
  DRAWN_TO_HRC,
  type HardState,
  heightNow,
  hrcSays,
  SCALE_BEGINS_HRC,
} from './along-reading.ts'
import { AlongTable } from './along-table.tsx'
import { standingOf } from './standing.ts'

/** Hardness along the piece at the heights of the drawing: skin and middle with their band, against the aims. */
export function AlongPicture({ bench, heights }: { readonly bench: Bench; readonly heights: Heights }) {
  const box = useRef<HTMLElement>(null)
  const widthPx = useSignal(0)
  useEffect(() => {
    if (box.current === null) return
    const watch = new ResizeObserver(([entry]) => {
      if (entry !== undefined) widthPx.value = entry.contentRect.width
    })
    watch.observe(box.current)
    return () => watch.disconnect()
  }, [widthPx])
  const answered = bench.outlook.answered.value
  return (
    <section class="along-picture" ref={box} aria-label="Hardness along the piece" data-standing={standingOf(bench.outlook)}>
      {answered === undefined ? (
        <p class="soft">{bench.outlook.untreated.value ? 'Hardness stands here once there is a treatment.' : ''}</p>
      ) : (
        widthPx.value > 0 && <Along bench={bench} heights={heights} answered={answered} widthPx={widthPx.value} />
      )}
    </section>
  )
}

interface AlongProps {
  readonly bench: Bench
  readonly heights: Heights
  readonly answered: Answered
  readonly widthPx: number
}

const SIDE_PX = 10
const TICKS = [20, 30, 40, 50, 60]
const STEP_MM = 1
/** From this width on there is room to say what the band is [px]. */
const WORDY_PX = 250
/** Height of the figures at the cursor [px]. */
const TAG_PX = 84

function Along({ bench, heights, answered, widthPx }: AlongProps) {
  const looked = useSignal<number | undefined>(undefined)
  const { forecast } = answered
  const units = bench.device.units.value
  const state: HardState = bench.field.value === 'quenched' ? 'quenched' : 'tempered'
  const heightOf = heightNow(bodyOfText(answered.job), bodyOfText(bench.job.value))
  const skin = alongPoints(forecast, 'skin', state, heightOf)
  const centre = alongPoints(forecast, 'centre', state, heightOf)
  const xOf = (hrc: number): number =>
    SIDE_PX +
    ((Math.min(DRAWN_TO_HRC, Math.max(DRAWN_FROM_HRC, hrc)) - DRAWN_FROM_HRC) / (DRAWN_TO_HRC - DRAWN_FROM_HRC)) *
      (widthPx - 2 * SIDE_PX)
  const topPx = heights.yOf(heights.lengthMm)
  const bottomPx = heights.workingEndPx
  const atMm = looked.value
  const says = (points: readonly AlongPoint[], xMm: number): string => {
    const found = alongAt(points, xMm)
    return found === undefined ? '' : hrcSays(found)
  }
  const look = (xMm: number): void => {
    looked.value = Math.min(heights.lengthMm, Math.max(0, xMm))
  }
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = event.shiftKey || event.key.startsWith('Page') ? 10 * STEP_MM : STEP_MM
    const from = atMm ?? 0
    if (event.key === 'ArrowUp' || event.key === 'PageUp') look(from + step)
    else if (event.key === 'ArrowDown' || event.key === 'PageDown') look(from - step)
    else if (event.key === 'Home') look(0)
    else if (event.key === 'End') look(heights.lengthMm)
    else if (event.key === 'Escape') looked.value = undefined
    else return
    event.preventDefault()
  }
  const onPointer = (event: PointerEvent & { readonly currentTarget: HTMLElement }): void =>
    look(heights.xAt(event.clientY - event.currentTarget.getBoundingClientRect().top))
  return (
    <>
      <svg width={widthPx} height={heights.heightPx} aria-hidden="true">
        <rect class="along-soft" x={0} y={topPx} width={xOf(SCALE_BEGINS_HRC)} height={bottomPx - topPx} />
        {TICKS.map((hrc) => (
          <g key={hrc}>
            <path class="along-grid" d={`M${xOf(hrc)} ${topPx}V${bottomPx}`} />
            <text class="along-text" x={xOf(hrc)} y={bottomPx + 20} text-anchor="middle">
              {hrc}
            </text>
          </g>
        ))}
        <text class="along-text" x={widthPx / 2} y={bottomPx + 39} text-anchor="middle">
          HRC {state}
          {widthPx < WORDY_PX ? '' : ', band for nine in ten'}
        </text>
        <path class="along-grid" d={`M0 ${topPx}H${widthPx}M0 ${bottomPx}H${widthPx}`} />
        <AlongAims forecast={forecast} heights={heights} heightOf={heightOf} xOf={xOf} widthPx={widthPx} layer="zones" />
        <AlongBands forecast={forecast} state={state} heights={heights} heightOf={heightOf} xOf={xOf} />
        <AlongAims forecast={forecast} heights={heights} heightOf={heightOf} xOf={xOf} widthPx={widthPx} layer="words" />
      </svg>
      <p class="along-head">
        <i class="time-key" /> skin <i class="time-key centre" /> middle
      </p>
      <div
        class="along-touch"
        role="slider"
        tabIndex={0}
        aria-label={`Hardness ${state} at a height`}
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={Math.round(heights.lengthMm)}
        aria-valuenow={Math.round(atMm ?? 0)}
        aria-valuetext={`${formatLength((atMm ?? 0) / 1000, units)} from the working end: skin ${says(skin, atMm ?? 0)}, middle ${says(centre, atMm ?? 0)}`}
        onKeyDown={onKeyDown}
        onPointerDown={onPointer}
        onPointerMove={onPointer}
        onPointerLeave={() => {
          looked.value = undefined
        }}
      >
        {atMm !== undefined && (
          <>
            <span class="along-cursor" style={{ top: `${heights.yOf(atMm)}px` }} />
            <span
              class="along-tag"
              data-side={heights.yOf(atMm) < TAG_PX ? 'below' : 'above'}
              style={{ top: `${heights.yOf(atMm)}px` }}
            >
              <span>{formatLength(atMm / 1000, units)} up</span>
              <span>
                skin <strong>{says(skin, atMm)}</strong>
              </span>
              <span>
                middle <strong>{says(centre, atMm)}</strong>
              </span>
            </span>
          </>
        )}
      </div>
      <AlongTable forecast={forecast} units={units} />
    </>
  )
}
