import { useSignal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import type { Forecast } from '#contract/answers.ts'
import { formatDuration } from '#units/duration.ts'
import { formatTemperature, kelvinFromCelsius } from '#units/temperature.ts'
import type { Bench } from '#web/bench/bench.ts'
import { aimedZones } from './aims.ts'
import { LOW_SCREEN, useScreen } from './screen.ts'
import { TemperPlot } from './temper-plot.tsx'
import { ovenHeats, temperAt } from './temper-reading.ts'
import { LEFT_PX, RIGHT_PX } from './time-plot.tsx'

interface TemperCurveProps {
  readonly bench: Bench
  readonly curve: NonNullable<Forecast['temperCurve']>
  readonly forecast: Forecast
  readonly widthPx: number
  readonly children: ComponentChildren
}

/** With the steps' names under the other curves, both are as high [px]. */
const PLOT_PX = 176
const LOW_PLOT_PX = 136
/** One press of an arrow key, and with Shift [degC]. */
const STEP_C = 5
const LONG_STEP_C = 25

/** What the last temper would come to at other heats, against the aim and within the oven's reach. */
export function TemperCurve({ bench, curve, forecast, widthPx, children }: TemperCurveProps) {
  const low = useScreen(LOW_SCREEN)
  const units = bench.device.units.value
  const looked = useSignal<number | undefined>(undefined)
  const { setC, mostC } = ovenHeats(curve, forecast.steps)
  const lowC = curve.points[0]?.temperature_C ?? 0
  const highC = curve.points.at(-1)?.temperature_C ?? 0
  const atC = Math.min(highC, Math.max(lowC, looked.value ?? setC ?? lowC))
  const reading = temperAt(curve, atC)
  const aim = aimedZones(forecast).find(({ name }) => name === curve.zone)
  const degrees = (celsius: number): string => formatTemperature(kelvinFromCelsius(celsius), units)
  const figures =
    reading === undefined
      ? ''
      : `${Math.round(reading.hrc)} HRC, ${Math.round(reading.lowHrc)} to ${Math.round(reading.highHrc)} nine times in ten`
  const beyond = mostC !== undefined && atC > mostC
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = event.shiftKey || event.key.startsWith('Page') ? LONG_STEP_C : STEP_C
    if (event.key === 'ArrowRight' || event.key === 'ArrowUp' || event.key === 'PageUp')
      looked.value = Math.min(highC, atC + step)
    else if (event.key === 'ArrowLeft' || event.key === 'ArrowDown' || event.key === 'PageDown')
      looked.value = Math.max(lowC, atC - step)
    else if (event.key === 'Home') looked.value = lowC
    else if (event.key === 'End') looked.value = highC
    else if (event.key === 'Escape') looked.value = undefined
    else return
    event.preventDefault()
  }
  const onPointer = (event: PointerEvent & { readonly currentTarget: HTMLElement }): void => {
    const box = event.currentTarget.getBoundingClientRect()
    looked.value = lowC + ((event.clientX - box.left) / box.width) * (highC - lowC)
  }
  const share = highC > lowC ? (atC - lowC) / (highC - lowC) : 0
  const rounds = curve.times > 1 ? `, ${curve.times} times` : ''
  return (
    <>
      <div class="time-head">
        {children}
        <p class="time-reading">
          <span>
            {curve.zone === undefined ? '' : `${curve.zone}, `}
            {formatDuration(curve.hold_h * 3600)}
            {rounds} at <strong>{degrees(atC)}</strong>:
          </span>
          <span>
            <strong>{figures}</strong>
            {beyond ? `, beyond the ${curve.oven?.name ?? 'oven'}` : ''}
          </span>
        </p>
      </div>
      <div class="time-field">
        <TemperPlot
          curve={curve}
          steps={forecast.steps}
          aim={aim}
          units={units}
          ground={bench.device.ground.value}
          widthPx={widthPx}
          heightPx={low ? LOW_PLOT_PX : PLOT_PX}
        />
        <div
          class="time-touch"
          role="slider"
          tabIndex={0}
          aria-label="Heat of the temper"
          aria-orientation="horizontal"
          aria-valuemin={Math.round(lowC)}
          aria-valuemax={Math.round(highC)}
          aria-valuenow={Math.round(atC)}
          aria-valuetext={`${degrees(atC)}: ${figures}${beyond ? ', beyond the oven' : ''}`}
          style={{ left: `${LEFT_PX}px`, right: `${RIGHT_PX}px` }}
          onPointerDown={onPointer}
          onPointerMove={onPointer}
          onPointerLeave={() => {
            looked.value = undefined
          }}
          onKeyDown={onKeyDown}
        >
          {looked.value !== undefined && <span class="time-cursor" style={{ left: `${100 * share}%` }} />}
        </div>
      </div>
    </>
  )
}
