import { useMemo, useRef } from 'preact/hooks'
import type uPlot from 'uplot'
import type { Forecast } from '#contract/answers.ts'
import type { System } from '#units/length.ts'
import { shownDegrees } from './field-values.ts'
import { spread } from './label-heights.ts'
import { Plot } from './plot.tsx'
import { inkOf, PLOT_FONT, writeOn } from './plot-ink.ts'
import type { TimeScale } from './time-scale.ts'
import { timeTicks } from './time-ticks.ts'
import type { WholeCurves } from './whole-curves.ts'

/** Beside the curves: figures of the temperature, and a little at the other side [px]. */
export const LEFT_PX = 54
export const RIGHT_PX = 12
const BELOW_PX = 26
const TICKS_APART_PX = 52

interface TimePlotProps {
  readonly scale: TimeScale
  readonly curves: WholeCurves
  /** The chosen place, at the times of the curves. */
  readonly hereC: readonly number[] | undefined
  readonly critical: Forecast['critical']
  readonly units: System
  readonly ground: string
  readonly widthPx: number
  readonly heightPx: number
}

/** Temperature of skin and middle over the one time line, with the heats at which steel changes as lines. */
export function TimePlot({ scale, curves, hereC, critical, units, ground, widthPx, heightPx }: TimePlotProps) {
  const drawn = useRef({ scale, critical, units, widthPx })
  drawn.current = { scale, critical, units, widthPx }
  const options = useMemo(() => optionsFor(() => drawn.current), [])
  const data = useMemo<uPlot.AlignedData>(() => {
    const shown = (values: readonly number[]): number[] => values.map((celsius) => shownDegrees(celsius, units))
    const none = curves.timeS.map(() => null)
    return [
      curves.timeS.map(scale.shareOf),
      shown(curves.skinC),
      shown(curves.centreC),
      hereC === undefined ? none : shown(hereC),
    ]
  }, [scale, curves, hereC, units])
  return <Plot options={options} data={data} widthPx={widthPx} heightPx={heightPx} look={`${units} ${ground}`} />
}

interface Drawn {
  readonly scale: TimeScale
  readonly critical: Forecast['critical']
  readonly units: System
  readonly widthPx: number
}

function optionsFor(now: () => Drawn): Omit<uPlot.Options, 'width' | 'height'> {
  const ticks = () => timeTicks(now().scale, now().widthPx - LEFT_PX - RIGHT_PX, TICKS_APART_PX)
  return {
    padding: [8, RIGHT_PX, 0, 0],
    legend: { show: false },
    cursor: { show: false },
    scales: {
      x: { time: false, range: [0, 1] },
      y: { range: (_, __, high) => [0, Math.max(high * 1.06, 100)] },
    },
    axes: [
      {
        size: BELOW_PX,
        gap: 2,
        font: PLOT_FONT,
        stroke: () => inkOf('--ink-soft'),
        splits: () => ticks().map(({ share }) => share),
        values: () => ticks().map(({ text }) => text),
        grid: { stroke: () => inkOf('--line'), width: 1, dash: [2, 4] },
        ticks: { stroke: () => inkOf('--line-strong'), width: 1, size: 4 },
      },
      {
        size: LEFT_PX,
        gap: 6,
        space: 20,
        incrs: [20, 50, 100, 200, 400, 500, 1000],
        font: PLOT_FONT,
        stroke: () => inkOf('--ink-soft'),
        values: (_, degrees) => degrees.map((each) => `${each}°`),
        grid: { stroke: () => inkOf('--line'), width: 1 },
        ticks: { show: false },
      },
    ],
    series: [
      {},
      { stroke: () => inkOf('--curve-skin'), width: 2.25, points: { show: false } },
      { stroke: () => inkOf('--curve-centre'), width: 2.25, dash: [9, 5], points: { show: false } },
      { stroke: () => inkOf('--ink'), width: 3, dash: [2.5, 4], points: { show: false } },
    ],
    hooks: { drawAxes: [(plot) => drawCritical(plot, now())] },
  }
}

/** The heats at which steel changes, from low to high; each is written on the side of its line away from its neighbour. */
function drawCritical(plot: uPlot, { critical, units }: Drawn): void {
  const { ctx: pen, bbox } = plot
  const ratio = devicePixelRatio
  const lines = (
    [
      ['Ac3', critical.ac3_C, -1],
      ['Ac1', critical.ac1_C, 1],
      ['Ms', critical.ms_C, -1],
    ] as const
  )
    .map(([name, celsius, side]) => ({ name, celsius, side, y: plot.valToPos(shownDegrees(celsius, units), 'y', true) }))
    .filter(({ y }) => y >= bbox.top)
  pen.save()
  pen.strokeStyle = inkOf('--ink-soft')
  pen.lineWidth = 1.25 * ratio
  pen.setLineDash([12 * ratio, 3 * ratio, 2 * ratio, 3 * ratio])
  for (const { y } of lines) {
    pen.beginPath()
    pen.moveTo(bbox.left, y)
    pen.lineTo(bbox.left + bbox.width, y)
    pen.stroke()
  }
  pen.restore()
  const words = spread(
    lines.map(({ y, side }) => y + side * 10 * ratio),
    18 * ratio,
    bbox.top + 4 * ratio,
    bbox.top + bbox.height - 9 * ratio,
  )
  for (const [i, { name, celsius }] of lines.entries()) {
    const says = `${name} ${Math.round(shownDegrees(celsius, units))}°`
    writeOn(pen, says, bbox.left + bbox.width - 14 * ratio, words[i] ?? 0, 'right')
  }
}
