import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks'
import { textWidthPx } from '#report/svg.ts'
import { formatDuration } from '#units/duration.ts'
import type { Bench } from '#web/bench/bench.ts'
import type { Answered } from '#web/work/desk.ts'
import { historyAtPoint } from './point-history.tsx'
import { RunButton } from './run-button.tsx'
import { LOW_SCREEN, useScreen } from './screen.ts'
import { keyedTime } from './scrubbing.ts'
import { stretchName, stretchSays } from './step-names.ts'
import { LEFT_PX, RIGHT_PX, TimePlot } from './time-plot.tsx'
import { readingAt } from './time-reading.ts'
import { carriedTime, timeScale } from './time-scale.ts'
import { readAt, wholeCurves } from './whole-curves.ts'

interface ThroughTimeProps {
  readonly bench: Bench
  readonly answered: Answered
  readonly widthPx: number
  readonly children: ComponentChildren
}

const PLOT_PX = 132
const LOW_PLOT_PX = 92
/** Words of a step that do not stand on the line whole are left out: the cursor tells them. Their type, in ours narrower than in others, and the room beside it [px]. */
const WORD_PX = 12.8
const BESIDE_PX = 10

/** The temperature of skin and middle through the whole treatment, with a cursor that can be taken hold of. */
export function ThroughTime({ bench, answered, widthPx, children }: ThroughTimeProps) {
  const low = useScreen(LOW_SCREEN)
  const { forecast } = answered
  const units = bench.device.units.value
  const scale = useMemo(() => timeScale(forecast.steps), [forecast])
  const scaleBefore = useRef(scale)
  useLayoutEffect(() => {
    const before = scaleBefore.current
    scaleBefore.current = scale
    if (before !== scale) bench.instantS.value = carriedTime(before, scale, bench.instantS.value)
  }, [bench, scale])
  const curves = useMemo(() => wholeCurves(forecast), [forecast])
  const point = bench.point.value
  const history = historyAtPoint(answered, point, units)
  const hereC = useMemo(
    () => (history === undefined ? undefined : curves.timeS.map((atS) => readAt(history.timeS, history.temperatureC, atS))),
    [history, curves],
  )
  const atS = Math.min(scale.endS, Math.max(scale.startS, bench.instantS.value))
  const share = scale.shareOf(atS)
  const reading = readingAt(scale, forecast, curves, hereC, atS, units)
  const chosen = bench.selection.value
  const linePx = widthPx - LEFT_PX - RIGHT_PX
  const goTo = (timeS: number): void => {
    bench.instantS.value = timeS >= scale.endS ? Number.POSITIVE_INFINITY : timeS
    bench.field.value = 'heat'
  }

  const onPointer = (event: PointerEvent & { readonly currentTarget: HTMLElement }): void => {
    if (event.type === 'pointerdown') event.currentTarget.setPointerCapture(event.pointerId)
    else if (!event.currentTarget.hasPointerCapture(event.pointerId)) return
    const box = event.currentTarget.getBoundingClientRect()
    goTo(scale.timeAt((event.clientX - box.left) / box.width))
  }
  const onKeyDown = (event: KeyboardEvent): void => {
    const timeS = keyedTime(scale, atS, event.key, event.shiftKey)
    if (timeS === undefined) return
    event.preventDefault()
    goTo(timeS)
  }
  return (
    <>
      <div class="time-head">
        {children}
        <p class="time-reading">
          <strong>{reading.when}</strong>
          {reading.figures.map(({ key, name, says }) => (
            <span key={key}>
              <i class={`time-key ${key}`} />
              {name} <strong>{says}</strong>
            </span>
          ))}
        </p>
        <RunButton scale={scale} atS={atS} goTo={goTo} />
      </div>
      <div class="time-field">
        <TimePlot
          scale={scale}
          curves={curves}
          hereC={hereC}
          critical={forecast.critical}
          units={units}
          ground={bench.device.ground.value}
          widthPx={widthPx}
          heightPx={low ? LOW_PLOT_PX : PLOT_PX}
        />
        <div class="time-blocks" aria-hidden="true">
          {scale.stretches.map((stretch, i) => {
            const from = scale.shareOf(stretch.startS)
            const share = scale.shareOf(stretch.endS) - from
            const roomPx = share * linePx - BESIDE_PX
            const [name, lasts] = [
              stretch.round > 1 ? 'again' : stretchName(stretch, forecast),
              formatDuration(stretch.endS - stretch.startS),
            ].map((words) => (textWidthPx(words, WORD_PX) <= roomPx ? words : ''))
            const held = chosen?.kind === 'step' && chosen.index === stretch.step && !stretch.air
            return (
              <div
                key={stretch.startS}
                class={`time-block${i % 2 === 0 ? ' even' : ''}${stretch.air ? ' air' : ''}${held ? ' chosen' : ''}`}
                style={{ left: `${100 * from}%`, width: `${100 * share}%` }}
                title={stretchSays(stretch, forecast)}
              >
                <span>{name}</span>
                <span class="soft">{lasts}</span>
              </div>
            )
          })}
        </div>
        <div
          class="time-touch"
          role="slider"
          tabIndex={0}
          aria-label="Time in the treatment"
          aria-orientation="horizontal"
          aria-valuemin={0}
          aria-valuemax={Math.round(scale.endS)}
          aria-valuenow={Math.round(atS)}
          aria-valuetext={[reading.when, ...reading.figures.map(({ name, says }) => `${name} ${says}`)].join(', ')}
          style={{ left: `${LEFT_PX}px`, right: `${RIGHT_PX}px` }}
          onPointerDown={onPointer}
          onPointerMove={onPointer}
          onKeyDown={onKeyDown}
        >
          {scale.stretches.slice(1).map(({ startS }) => (
            <span key={startS} class="time-edge" style={{ left: `${100 * scale.shareOf(startS)}%` }} />
          ))}
          <span class="time-cursor" style={{ left: `${100 * share}%` }} />
        </div>
      </div>
    </>
  )
}
