import type { Bench } from '#web/bench/bench.ts'
import type { DrawnBody } from './body.ts'
import type { Heights } from './heights.ts'
import { halfAcrossMm } from './metal.ts'
import { problemPlaces } from './problem-places.ts'

interface ProblemMarksProps {
  readonly bench: Bench
  readonly body: DrawnBody
  readonly heights: Heights
  readonly widthPx: number
  readonly axisPx: number
}

/** What is wrong, on the metal where it is. */
export function ProblemMarks({ bench, body, heights, widthPx, axisPx }: ProblemMarksProps) {
  const placed = problemPlaces(bench.outlook.problems.value, bench.job.value, body)
  return (
    <div class="drawing-problems">
      {placed.map(({ says, field, xMm, selection }) => {
        const leftPx = axisPx + halfAcrossMm(body, xMm) * heights.pxPerMm
        const right = widthPx - leftPx > 150
        return (
          <button
            type="button"
            key={field + says}
            class="drawing-problem"
            style={{
              top: `${heights.yOf(xMm)}px`,
              '--at': Math.min(1, Math.max(0, heights.yOf(xMm) / Math.max(1, heights.heightPx))),
              ...(right
                ? { left: `${leftPx - 4}px`, maxWidth: `${widthPx - leftPx}px` }
                : { right: 0, maxWidth: `${widthPx}px` }),
            }}
            onClick={() => {
              bench.selection.value = selection
            }}
          >
            {says}
          </button>
        )
      })}
    </div>
  )
}
