import './time-line.css'
import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { useLocation } from 'preact-iso'
import { later } from '#web/app/later.tsx'
import type { Bench } from '#web/bench/bench.ts'
import { Choice } from '#web/look/choice.tsx'
import { PointHistory } from './point-history.tsx'
import { standingOf } from './standing.ts'
import { ThroughTime } from './through-time.tsx'

// Asked for by a tap.
const TemperCurve = later(async () => (await import('./temper-curve.tsx')).TemperCurve, 'time-empty')

/** Everything that has a time, on one line; and what other tempers would give. */
export function TimeLine({ bench }: { readonly bench: Bench }) {
  const box = useRef<HTMLElement>(null)
  const widthPx = useSignal(0)
  const shown = useSignal<'time' | 'temper'>('time')
  useEffect(() => {
    if (box.current === null) return
    const watch = new ResizeObserver(([entry]) => {
      if (entry !== undefined) widthPx.value = entry.contentRect.width
    })
    watch.observe(box.current)
    return () => watch.disconnect()
  }, [widthPx])
  const answered = bench.outlook.answered.value
  const temperCurve = answered?.forecast.temperCurve
  const now = temperCurve === undefined ? 'time' : shown.value
  const tabs = temperCurve !== undefined && (
    <Choice
      name="Curves"
      nameHidden
      value={now}
      values={[
        ['time', 'Through time'],
        ['temper', 'Other tempers'],
      ]}
      onChosen={(chosen) => {
        shown.value = chosen
      }}
    />
  )
  return (
    <section class="time-line" ref={box} aria-label="Time line" data-standing={standingOf(bench.outlook)}>
      {answered === undefined || widthPx.value === 0 ? (
        <NothingYet bench={bench} />
      ) : (
        <>
          {now === 'time' || temperCurve === undefined ? (
            <ThroughTime bench={bench} answered={answered} widthPx={widthPx.value}>
              {tabs}
            </ThroughTime>
          ) : (
            <TemperCurve bench={bench} curve={temperCurve} forecast={answered.forecast} widthPx={widthPx.value}>
              {tabs}
            </TemperCurve>
          )}
          <PointHistory bench={bench} answered={answered} />
        </>
      )}
    </section>
  )
}

/** Before the first answer: what is missing, and where to give it. */
function NothingYet({ bench }: { readonly bench: Bench }) {
  const { route } = useLocation()
  const { untreated, problems, failed } = bench.outlook
  const piece = bench.piece.value
  if (untreated.value)
    return (
      <div class="time-empty">
        <p>
          <strong>No treatment yet.</strong> Write the steps, or have some proposed: then the heat runs along this line.
        </p>
        {piece !== undefined && (
          <button type="button" class="button main" onClick={() => route(`/piece/${piece.id}/treatment`, true)}>
            To the treatment
          </button>
        )}
      </div>
    )
  if (problems.value.length > 0) return <p class="time-empty soft">The heat runs along here once what is written can be read.</p>
  if (failed.value !== undefined) return <p class="time-empty soft">Nothing has been worked out yet.</p>
  return <p class="time-empty soft">Heating, quenching and tempering it on paper first ...</p>
}
