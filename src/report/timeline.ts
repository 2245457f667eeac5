import type { Forecast } from '#contract/answers.ts'
import { formatDuration } from '#units/duration.ts'
import type { System } from '#units/length.ts'
import { lengthOf, temperatureOf } from './figure-text.ts'
import { spreadLabels } from './label-places.ts'
import { clockTicks, type StepSpan, stepClock } from './step-clock.ts'
import { element, label, line, pathThrough, picture, textWidthPx } from './svg.ts'

export interface Timeline {
  readonly units: System
  readonly id: string
  readonly widthPx: number
  readonly heightPx: number
}

const TEXT_PX = 13
const TOP_PX = 60
const FOOT_PX = 30
const LEFT_PX = 66
const RIGHT_PX = 86

/** Temperature of skin and middle at one place through the whole treatment; each step runs by its own clock. */
export function timeline(forecast: Forecast, { units, id, widthPx, heightPx }: Timeline): string {
  const { steps, curves, critical } = forecast
  const clock = stepClock(steps, LEFT_PX, widthPx - RIGHT_PX, 28)
  const bottom = heightPx - FOOT_PX
  const hottest = Math.max(200, critical.ac3_C + 30, ...curves.skin_C, ...curves.centre_C)
  const top_C = Math.ceil((hottest + 20) / 100) * 100
  const y = (celsius: number) => bottom - (Math.max(0, celsius) / top_C) * (bottom - TOP_PX)
  const curve = (of: readonly number[], kind: string) =>
    element('path', { d: pathThrough(curves.time_s.map((t, i) => [clock.x(t), y(of[i] ?? 0)])), class: kind })
  const right = widthPx - RIGHT_PX
  return picture(
    id,
    { widthPx, heightPx },
    'Temperature through the whole treatment',
    inWords(forecast, units),
    ...ruled(top_C, units, y, right),
    element('rect', {
      x: LEFT_PX - 9,
      y: y(Math.min(top_C, 1100)),
      width: 6,
      height: y(500) - y(Math.min(top_C, 1100)),
      class: 'glow',
    }),
    ...clock.spans.flatMap((span) => stepColumn(span, steps[span.index]?.do.replaceAll('-', ' ') ?? '', bottom)),
    ...clock.spans.flatMap((span) =>
      clockTicks(clock, span, (afterS) => textWidthPx(formatDuration(afterS), TEXT_PX)).flatMap(({ xPx, afterS }) => [
        line(xPx, bottom, xPx, bottom + 4, 'axis'),
        label(xPx, bottom + 18, formatDuration(afterS), { class: 'soft', 'text-anchor': 'middle' }),
      ]),
    ),
    line(LEFT_PX, bottom, right, bottom, 'axis'),
    ...criticalLines(forecast, units, y, right),
    curve(curves.centre_C, 'centre-tempered'),
    curve(curves.skin_C, 'skin-tempered'),
  )
}

function inWords({ steps, curves }: Forecast, units: System): string {
  const hottest = curves.skin_C.reduce((a, b) => Math.max(a, b), 0)
  const named = steps.map((step, i) => `${i + 1} ${step.do}, ${formatDuration(step.end_s - step.start_s)}`).join('; ')
  return `${lengthOf(curves.x_mm, units)} from the working end. Steps: ${named}. The skin is at ${temperatureOf(hottest, units)} at its hottest.`
}

function ruled(top_C: number, units: System, y: (celsius: number) => number, right: number): string[] {
  // Round figures of the scale that the smith reads.
  const round = units === 'metric' ? (i: number) => i * 200 : (i: number) => ((i * 400 - 32) * 5) / 9
  const lines: string[] = []
  for (let i = units === 'metric' ? 0 : 1; round(i) <= top_C; i++)
    lines.push(
      line(LEFT_PX, y(round(i)), right, y(round(i)), 'grid faint'),
      label(LEFT_PX - 14, y(round(i)) + 4.5, temperatureOf(round(i), units), { class: 'soft', 'text-anchor': 'end' }),
    )
  return lines
}

function stepColumn({ index, startS, endS, fromPx, toPx }: StepSpan, name: string, bottom: number): string[] {
  const middle = (fromPx + toPx) / 2
  const rows = [name, formatDuration(endS - startS)].filter((text) => textWidthPx(text, TEXT_PX) < toPx - fromPx - 6)
  return [
    ...(index === 0 ? [] : [line(fromPx, TOP_PX - 54, fromPx, bottom + 4, 'step-edge')]),
    label(middle, TOP_PX - 42, String(index + 1), { class: 'strong', 'text-anchor': 'middle' }),
    ...rows.map((text, i) => label(middle, TOP_PX - 26 + 16 * i, text, { class: 'soft', 'text-anchor': 'middle' })),
  ]
}

function criticalLines({ critical }: Forecast, units: System, y: (celsius: number) => number, right: number): string[] {
  const marks = [
    { name: 'Ac3', celsius: critical.ac3_C },
    { name: 'Ac1', celsius: critical.ac1_C },
    { name: 'Ms', celsius: critical.ms_C },
  ]
  const heights = spreadLabels(
    marks.map(({ celsius }) => ({ atPx: y(celsius), tallPx: 16 })),
    TOP_PX - 8,
    y(0),
  )
  return marks.flatMap(({ name, celsius }, i) => {
    const textPx = heights[i] ?? y(celsius)
    return [
      line(LEFT_PX, y(celsius), right, y(celsius), 'critical'),
      element('path', {
        d: pathThrough([
          [right, y(celsius)],
          [right + 4, textPx],
        ]),
        class: 'measure',
      }),
      label(right + 6, textPx + 4.5, `${name} ${temperatureOf(celsius, units)}`, { class: 'plain' }),
    ]
  })
}

/** What the critical temperatures mean, for the line under the picture. */
export const CRITICAL_WORDS =
  'Ac1: steel begins to turn to austenite. Ac3: all of it has turned. Ms: below it the hard structure forms in the bath.'
