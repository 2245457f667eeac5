import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import type { TimeScale } from './time-scale.ts'

interface RunButtonProps {
  readonly scale: TimeScale
  readonly atS: number
  readonly goTo: (timeS: number) => void
}

/** From the first step to the last in this time [ms]. */
const WHOLE_MS = 30_000

/** Lets the treatment run by itself, slowly. Not offered to who wants nothing to move. */
export function RunButton({ scale, atS, goTo }: RunButtonProps) {
  const running = useSignal(false)
  const latest = useRef({ scale, atS, goTo })
  latest.current = { scale, atS, goTo }
  useEffect(() => {
    if (!running.value) return
    let frame = 0
    let before: number | undefined
    const { scale, atS } = latest.current
    let share = atS >= scale.endS ? 0 : scale.shareOf(atS)
    const step = (nowMs: number): void => {
      share += before === undefined ? 0 : (nowMs - before) / WHOLE_MS
      before = nowMs
      const now = latest.current
      now.goTo(now.scale.timeAt(share))
      if (share >= 1) running.value = false
      else frame = requestAnimationFrame(step)
    }
    frame = requestAnimationFrame(step)
    return () => cancelAnimationFrame(frame)
  }, [running, running.value])
  if (matchMedia('(prefers-reduced-motion: reduce)').matches) return null
  return (
    <button
      type="button"
      class="button quiet"
      onClick={() => {
        running.value = !running.value
      }}
    >
      {running.value ? 'Halt' : 'Let it run'}
    </button>
  )
}
