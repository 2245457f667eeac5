import type { JobText } from '#web/job/job-text.ts'
import type { DrawnBody } from './body.ts'
import type { Heights } from './heights.ts'
import { halfPath } from './outline-path.ts'
import { bathBelow } from './water-lines.ts'

interface MetalLayerProps {
  readonly job: JobText
  readonly body: DrawnBody
  readonly heights: Heights
  readonly widthPx: number
  readonly axisPx: number
}

/** Behind everything: the bath below, and the metal, plain outside at the left and cut at the right. */
export function MetalLayer({ job, body, heights, widthPx, axisPx }: MetalLayerProps) {
  const { name, air } = bathBelow(job)
  const surfacePx = Math.min(heights.heightPx - BATH_PX, heights.workingEndPx + OVER_BATH_PX)
  return (
    <svg class="drawing-layer" width={widthPx} height={heights.heightPx} aria-hidden="true">
      {name !== undefined && (
        <g>
          <rect x="0" y={surfacePx} width={widthPx} height={heights.heightPx - surfacePx} fill="var(--bath)" />
          <path d={`M0 ${surfacePx}H${widthPx}`} stroke="var(--bath-line)" stroke-width="2" />
          <path
            d={`M${widthPx - 30} ${surfacePx - 9}h12l-6 9zM${widthPx - 33} ${surfacePx + 4}h18M${widthPx - 29} ${surfacePx + 7.5}h10`}
            fill="none"
            stroke="var(--bath-line)"
            stroke-width="1.25"
          />
        </g>
      )}
      <path d={halfPath(body, body.outside, heights, { axisPx, side: -1 })} fill="var(--metal)" />
      <path d={halfPath(body, body.outline, heights, { axisPx, side: 1 })} fill="var(--cut)" />
      <text x="8" y={surfacePx + 21} class="drawing-bath-name">
        {name ?? (air === undefined ? '' : `cools in ${air}`)}
      </text>
    </svg>
  )
}

/** How far the piece hangs over its bath, and the least that is seen of it [px]. */
const OVER_BATH_PX = 22
const BATH_PX = 28
