import './point-history.css'
import type { PointHistory as History } from '#contract/point-history.ts'
import { historyOf } from '#contract/point-history.ts'
import { formatLength, type System } from '#units/length.ts'
import type { Bench, MetalPoint } from '#web/bench/bench.ts'
import { bodyOfText, trueRadiusMm } from '#web/drawing/body.ts'
import type { Answered } from '#web/work/desk.ts'

let known: { answered: Answered; point: MetalPoint; units: System; history: History } | undefined

/** The history of the chosen place in an answer; the last one asked for is kept. */
export function historyAtPoint(answered: Answered, point: MetalPoint | undefined, units: System): History | undefined {
  if (point === undefined) return undefined
  if (known?.answered !== answered || known.point !== point || known.units !== units)
    known = { answered, point, units, history: historyOf(answered.picture, point.xMm, point.rMm, units) }
  return known.history
}

/** What the chosen place has gone through and come to, in words; its curve is on the time line. */
export function PointHistory({ bench, answered }: { readonly bench: Bench; readonly answered: Answered }) {
  const point = bench.point.value
  const units = bench.device.units.value
  const history = historyAtPoint(answered, point, units)
  if (point === undefined || history === undefined)
    return (
      <div class="point-history none">
        <p class="soft">Click into the cut metal: what that place goes through stands here.</p>
      </div>
    )
  const trueMm = trueRadiusMm(bodyOfText(bench.job.value), point.xMm, point.rMm)
  return (
    <div class="point-history">
      <p>
        <strong>
          {formatLength(point.xMm / 1000, units)} up,{' '}
          {trueMm < 0.05 ? 'in the middle' : `${formatLength(trueMm / 1000, units, 32)} from the middle`}:
        </strong>{' '}
        {history.says.join(' ')}
      </p>
      <button
        type="button"
        class="button quiet"
        onClick={() => {
          bench.point.value = undefined
        }}
      >
        Put away
        <span class="out-of-sight"> the history of this place</span>
      </button>
    </div>
  )
}
