import type { Forecast } from '#contract/answers.ts'

/** One step's stretch of the time axis. */
export interface StepSpan {
  readonly index: number
  readonly startS: number
  readonly endS: number
  readonly fromPx: number
  readonly toPx: number
}

/**
 * A time axis on which a three-second walk and a three-hour temper both show: each step is as wide as the logarithm of how
 * long it lasts, and within it time runs as the logarithm of what its own clock shows.
 */
export interface StepClock {
  readonly spans: readonly StepSpan[]
  /** Place of a time, counted from the start of the treatment. */
  x(timeS: number): number
}

/** A step this short is still as wide as `leastPx`. */
const SHORT_S = 0.4
/** Share of a step after which its clock begins to run together. */
const EARLY_SHARE = 1 / 150

export function stepClock(steps: Forecast['steps'], fromPx: number, toPx: number, leastPx: number): StepClock {
  const lengths = steps.map(({ start_s, end_s }) => Math.log1p(Math.max(0, end_s - start_s) / SHORT_S))
  const spare = Math.max(0, toPx - fromPx - leastPx * steps.length)
  const sum = lengths.reduce((a, b) => a + b, 0) || 1
  let at = fromPx
  const spans = steps.map(({ start_s, end_s }, index): StepSpan => {
    const widthPx = Math.min(leastPx, (toPx - fromPx) / steps.length) + (spare * (lengths[index] ?? 0)) / sum
    const span = { index, startS: start_s, endS: Math.max(start_s, end_s), fromPx: at, toPx: at + widthPx }
    at += widthPx
    return span
  })
  return {
    spans,
    x(timeS) {
      const span = spans.find(({ endS }) => timeS <= endS) ?? spans.at(-1)
      return span === undefined ? fromPx : placeIn(span, timeS)
    },
  }
}

function placeIn({ startS, endS, fromPx, toPx }: StepSpan, timeS: number): number {
  const lasts = endS - startS
  if (lasts <= 0) return fromPx
  const gone = Math.max(0, Math.min(timeS - startS, lasts))
  const early = lasts * EARLY_SHARE
  return fromPx + ((toPx - fromPx) * Math.log1p(gone / early)) / Math.log1p(lasts / early)
}

/**
 * Readings of the step's own clock worth a tick: round ones whose labels, `widthPx` wide each, stay inside the step and clear
 * of each other.
 */
export function clockTicks(
  clock: StepClock,
  span: StepSpan,
  widthPx: (afterS: number) => number,
): { readonly xPx: number; readonly afterS: number }[] {
  const found: { xPx: number; afterS: number }[] = []
  let edge = span.toPx
  for (const afterS of ROUND_CLOCK_S) {
    if (afterS > span.endS - span.startS) continue
    const xPx = clock.x(span.startS + afterS)
    const half = widthPx(afterS) / 2
    if (xPx + half + CLEAR_PX > edge || xPx - half - CLEAR_PX < span.fromPx) continue
    found.push({ xPx, afterS })
    edge = xPx - half - CLEAR_PX
  }
  return found
}

const CLEAR_PX = 5

/** The longest first: late readings are the ones a smith waits for. */
const ROUND_CLOCK_S = [6 * 3600, 4 * 3600, 2 * 3600, 3600, 1800, 600, 300, 120, 60, 30, 10, 5, 2, 1, 0.5]
