import type { Bench } from '#web/bench/bench.ts'
import type { Heights } from '#web/drawing/heights.ts'
import { levelAt } from './instants.ts'

interface BathNowProps {
  readonly bench: Bench
  readonly heights: Heights
  readonly widthPx: number
}

/** The bath over a piece that is all under [px]. */
const OVER_ALL_PX = 12

/** The bath about the piece at the time of the cursor, while the heat is looked at. Lies behind the metal. */
export function BathNow({ bench, heights, widthPx }: BathNowProps) {
  const picture = bench.outlook.answered.value?.picture
  if (picture === undefined || bench.field.value !== 'heat') return null
  const levelMm = levelAt(picture, bench.instantS.value)
  if (levelMm === undefined) return null
  const yPx = Math.max(3, levelMm >= heights.lengthMm ? heights.yOf(heights.lengthMm) - OVER_ALL_PX : heights.yOf(levelMm))
  return (
    <svg class="drawing-layer" width={widthPx} height={heights.heightPx} aria-hidden="true">
      <rect x="0" y={yPx} width={widthPx} height={heights.heightPx - yPx} fill="var(--bath)" opacity="0.8" />
      <path d={`M0 ${yPx}H${widthPx}`} stroke="var(--bath-line)" stroke-width="2" />
    </svg>
  )
}
