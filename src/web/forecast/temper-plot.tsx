import { useMemo, useRef } from 'preact/hooks'
import type uPlot from 'uplot'
import type { Forecast } from '#contract/answers.ts'
import type { System } from '#units/length.ts'
import type { AimedZone } from './aims.ts'
import { shownDegrees } from './field-values.ts'
import { Plot } from './plot.tsx'
import { inkOf, PLOT_FONT, writeOn } from './plot-ink.ts'
import { ovenHeats } from './temper-reading.ts'
import { LEFT_PX, RIGHT_PX } from './time-plot.tsx'

type Curve = NonNullable<Forecast['temperCurve']>

interface TemperPlotProps {
  readonly curve: Curve
  readonly steps: Forecast['steps']
  readonly aim: AimedZone | undefined
  readonly units: System
  readonly ground: string
  readonly widthPx: number
  readonly heightPx: number
}

/** Hardness over the heat of the temper as a band with its middle; the aim as a stripe, what the oven cannot reach shaded. */
export function TemperPlot({ curve, steps, aim, units, ground, widthPx, heightPx }: TemperPlotProps) {
  const drawn = useRef({ curve, steps, aim, units })
  drawn.current = { curve, steps, aim, units }
  const options = useMemo(() => optionsFor(() => drawn.current), [])
  const data = useMemo<uPlot.AlignedData>(
    () => [
      curve.points.map(({ temperature_C }) => shownDegrees(temperature_C, units)),
      curve.points.map(({ hardness_HRC }) => hardness_HRC.high),
      curve.points.map(({ hardness_HRC }) => hardness_HRC.low),
      curve.points.map(({ hardness_HRC }) => hardness_HRC.value),
    ],
    [curve, units],
  )
  return <Plot options={options} data={data} widthPx={widthPx} heightPx={heightPx} look={`${units} ${ground} ${aim?.aim}`} />
}

type Drawn = Pick<TemperPlotProps, 'curve' | 'steps' | 'aim' | 'units'>

function optionsFor(now: () => Drawn): Omit<uPlot.Options, 'width' | 'height'> {
  const line = { width: 1.25, points: { show: false } }
  return {
    padding: [8, RIGHT_PX, 0, 0],
    legend: { show: false },
    cursor: { show: false },
    scales: {
      x: { time: false, range: (_, low, high) => [low, high] },
      y: { range: (_, low, high) => [Math.floor(low / 5) * 5 - 2, Math.ceil(high / 5) * 5 + 2] },
    },
    axes: [
      {
        size: 26,
        gap: 2,
        font: PLOT_FONT,
        stroke: () => inkOf('--ink-soft'),
        values: (_, degrees) => degrees.map((each) => `${each}°`),
        grid: { stroke: () => inkOf('--line'), width: 1 },
        ticks: { stroke: () => inkOf('--line-strong'), width: 1, size: 4 },
      },
      {
        size: LEFT_PX,
        gap: 6,
        space: 30,
        font: PLOT_FONT,
        stroke: () => inkOf('--ink-soft'),
        grid: { stroke: () => inkOf('--line'), width: 1 },
        ticks: { show: false },
      },
    ],
    series: [
      {},
      { ...line, stroke: () => inkOf('--curve-skin') },
      { ...line, stroke: () => inkOf('--curve-skin') },
      { stroke: () => inkOf('--curve-skin'), width: 2.5, points: { show: false } },
    ],
    bands: [{ series: [1, 2], fill: () => `color-mix(in srgb, ${inkOf('--curve-skin')} 22%, transparent)` }],
    hooks: {
      drawAxes: [(plot) => drawAim(plot, now())],
      draw: [(plot) => drawReach(plot, now())],
    },
  }
}

function drawAim(plot: uPlot, { aim }: Drawn): void {
  if (aim === undefined || (aim.lowHrc === undefined && aim.highHrc === undefined)) return
  const { ctx: pen, bbox } = plot
  const y = (hrc: number | undefined, otherwise: number): number =>
    hrc === undefined ? otherwise : Math.min(bbox.top + bbox.height, Math.max(bbox.top, plot.valToPos(hrc, 'y', true)))
  const top = y(aim.highHrc, bbox.top)
  const bottom = y(aim.lowHrc, bbox.top + bbox.height)
  pen.save()
  pen.fillStyle = inkOf('--aim-ground')
  pen.fillRect(bbox.left, top, bbox.width, bottom - top)
  pen.strokeStyle = inkOf('--aim')
  pen.lineWidth = 1.5 * devicePixelRatio
  pen.beginPath()
  for (const edge of [top, bottom]) {
    pen.moveTo(bbox.left, edge)
    pen.lineTo(bbox.left + bbox.width, edge)
  }
  pen.stroke()
  pen.restore()
}

/** What lies beyond the oven is hatched; the heat as set stands as a line. */
function drawReach(plot: uPlot, { curve, steps, units, aim }: Drawn): void {
  const { ctx: pen, bbox } = plot
  const ratio = devicePixelRatio
  const { setC, mostC } = ovenHeats(curve, steps)
  const right = bbox.left + bbox.width
  const x = (celsius: number): number => plot.valToPos(shownDegrees(celsius, units), 'x', true)
  pen.save()
  pen.beginPath()
  pen.rect(bbox.left, bbox.top, bbox.width, bbox.height)
  pen.clip()
  if (mostC !== undefined && x(mostC) < right) {
    const from = Math.max(bbox.left, x(mostC))
    pen.save()
    pen.beginPath()
    pen.rect(from, bbox.top, right - from, bbox.height)
    pen.clip()
    pen.fillStyle = `color-mix(in srgb, ${inkOf('--ground')} 55%, transparent)`
    pen.fillRect(from, bbox.top, right - from, bbox.height)
    pen.strokeStyle = inkOf('--line-strong')
    pen.lineWidth = ratio
    pen.beginPath()
    for (let at = from - bbox.height; at < right; at += 9 * ratio) {
      pen.moveTo(at, bbox.top + bbox.height)
      pen.lineTo(at + bbox.height, bbox.top)
    }
    pen.stroke()
    pen.restore()
    pen.fillStyle = inkOf('--ink')
    pen.fillRect(from - ratio, bbox.top, 2 * ratio, bbox.height)
  }
  if (setC !== undefined) {
    pen.fillStyle = inkOf('--ink')
    pen.fillRect(x(setC) - 1.25 * ratio, bbox.top, 2.5 * ratio, bbox.height)
  }
  pen.restore()
  if (mostC !== undefined && right - x(mostC) > 150 * ratio)
    writeOn(
      pen,
      `beyond the ${curve.oven?.name ?? 'oven'}`,
      (Math.max(bbox.left, x(mostC)) + right) / 2,
      bbox.top + 14 * ratio,
      'center',
    )
  if (setC !== undefined) writeOn(pen, 'as set', x(setC) + 6 * ratio, bbox.top + bbox.height - 12 * ratio, 'left')
  if (aim !== undefined && aim.lowHrc !== undefined)
    writeOn(pen, `aim ${aim.aim}`, right - 6 * ratio, plot.valToPos(aim.lowHrc, 'y', true) - 12 * ratio, 'right')
}
