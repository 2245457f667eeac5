import type { TimeScale } from './time-scale.ts'

/** One press of an arrow key, and with Shift, as a share of the whole line. */
const STEP = 0.005
const LONG_STEP = 0.025

/** Where a key takes the cursor of the time line [s]; undefined for keys that do nothing there. Page keys go from step to step. */
export function keyedTime(
  { shareOf, timeAt, stretches, startS, endS }: TimeScale,
  nowS: number,
  key: string,
  long: boolean,
): number | undefined {
  const share = shareOf(nowS)
  const by = long ? LONG_STEP : STEP
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return share + by >= 1 ? endS : timeAt(share + by)
    case 'ArrowLeft':
    case 'ArrowDown':
      return timeAt(share - by)
    case 'Home':
      return startS
    case 'End':
      return endS
    case 'PageUp':
    case 'PageDown': {
      const edges = [startS, ...stretches.map((stretch) => stretch.endS)]
      const at = Math.min(nowS, endS)
      return key === 'PageUp'
        ? (edges.find((edge) => edge > at + 1e-6) ?? endS)
        : (edges.findLast((edge) => edge < at - 1e-6) ?? startS)
    }
    default:
      return undefined
  }
}
