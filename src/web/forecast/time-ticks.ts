import { formatDuration } from '#units/duration.ts'
import type { TimeScale } from './time-scale.ts'

/** A time since the start of its step, written on the line. */
export interface TimeTick {
  readonly share: number
  readonly text: string
}

const SINCE_S = [1, 3, 10, 30, 60, 300, 600, 1800, 3600, 2 * 3600, 5 * 3600, 10 * 3600]

/** Round times since the start of each stretch, as many as have room: at least `apartPx` from each other and from both ends of theirs. */
export function timeTicks({ stretches, shareOf }: TimeScale, widthPx: number, apartPx: number): TimeTick[] {
  return stretches.flatMap(({ startS, endS }) => {
    const ticks: TimeTick[] = []
    let beforePx = shareOf(startS) * widthPx
    const endPx = shareOf(endS) * widthPx
    for (const sinceS of SINCE_S) {
      const share = shareOf(startS + sinceS)
      const atPx = share * widthPx
      if (startS + sinceS >= endS || atPx - beforePx < apartPx || endPx - atPx < apartPx * 0.6) continue
      ticks.push({ share, text: formatDuration(sinceS).replace('60 s', '1 min') })
      beforePx = atPx
    }
    return ticks
  })
}
