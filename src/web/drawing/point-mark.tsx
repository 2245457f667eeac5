import { formatLength } from '#units/length.ts'
import type { Bench } from '#web/bench/bench.ts'
import { type DrawnBody, fieldRadiusMm, trueRadiusMm } from './body.ts'
import type { Heights } from './heights.ts'
import { isMetal } from './metal.ts'

interface PointMarkProps {
  readonly bench: Bench
  readonly body: DrawnBody
  readonly heights: Heights
  readonly axisPx: number
}

const STEP_MM = 1

/** The place whose history is shown: it walks through the metal by arrow keys. */
export function PointMark({ bench, body, heights, axisPx }: PointMarkProps) {
  const point = bench.point.value
  const units = bench.device.units.value
  const at = point === undefined ? undefined : { xMm: point.xMm, rMm: trueRadiusMm(body, point.xMm, point.rMm) }
  const put = (xMm: number, rMm: number): void => {
    if (!isMetal(body, xMm, rMm)) return
    bench.point.value = { xMm, rMm: fieldRadiusMm(body, xMm, rMm) }
  }
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = event.shiftKey ? 10 * STEP_MM : STEP_MM
    if (at === undefined) {
      if (event.key !== 'Enter' && event.key !== ' ' && !event.key.startsWith('Arrow')) return
      put(body.lengthMm / 2, 0)
    } else if (event.key === 'ArrowUp') put(Math.min(body.lengthMm - 0.05, at.xMm + step), at.rMm)
    else if (event.key === 'ArrowDown') put(Math.max(0.05, at.xMm - step), at.rMm)
    else if (event.key === 'ArrowRight') put(at.xMm, at.rMm + step)
    else if (event.key === 'ArrowLeft') put(at.xMm, Math.max(0, at.rMm - step))
    else if (event.key === 'Delete' || event.key === 'Escape') bench.point.value = undefined
    else return
    event.preventDefault()
  }
  const place = at ?? { xMm: body.lengthMm / 2, rMm: 0 }
  const says =
    at === undefined
      ? 'no place yet; Enter puts one in the middle'
      : `${formatLength(at.xMm / 1000, units)} from the working end, ${formatLength(at.rMm / 1000, units)} from the middle`
  return (
    <div
      role="slider"
      tabIndex={0}
      class={at === undefined ? 'drawing-point none' : 'drawing-point'}
      aria-label="A place in the metal"
      aria-orientation="vertical"
      aria-valuemin={0}
      aria-valuemax={Math.round(body.lengthMm)}
      aria-valuenow={Math.round(place.xMm)}
      aria-valuetext={says}
      style={{ left: `${axisPx + place.rMm * heights.pxPerMm}px`, top: `${heights.yOf(place.xMm)}px` }}
      onKeyDown={onKeyDown}
    />
  )
}
