import type { Forecast } from '#contract/answers.ts'
import type { Heights } from '#web/drawing/heights.ts'
import { type AlongPoint, alongPoints, type HardState } from './along-reading.ts'

interface AlongBandsProps {
  readonly forecast: Pick<Forecast, 'along'>
  readonly state: HardState
  readonly heights: Heights
  readonly heightOf: (xMm: number) => number
  readonly xOf: (hrc: number) => number
}

/** Skin and middle as bands with their best estimate; the other state as thin lines. */
export function AlongBands({ forecast, state, heights, heightOf, xOf }: AlongBandsProps) {
  const other: HardState = state === 'quenched' ? 'tempered' : 'quenched'
  const points = (part: 'skin' | 'centre', of: HardState): AlongPoint[] => alongPoints(forecast, part, of, heightOf)
  const at = (hrc: number, xMm: number): string => `${tenth(xOf(hrc))} ${tenth(heights.yOf(xMm))}`
  const line = (list: readonly AlongPoint[]): string =>
    list.length === 0 ? '' : `M${list.map(({ hrc, xMm }) => at(hrc, xMm)).join('L')}`
  const band = (list: readonly AlongPoint[]): string =>
    list.length === 0
      ? ''
      : `M${list.map(({ lowHrc, xMm }) => at(lowHrc, xMm)).join('L')}L${list
          .toReversed()
          .map(({ highHrc, xMm }) => at(highHrc, xMm))
          .join('L')}Z`
  const [skin, centre] = [points('skin', state), points('centre', state)]
  return (
    <g>
      <path class="along-band centre" d={band(centre)} />
      <path class="along-band skin" d={band(skin)} />
      <path class="along-line centre before" d={line(points('centre', other))} />
      <path class="along-line skin before" d={line(points('skin', other))} />
      <path class="along-line centre" d={line(centre)} />
      <path class="along-line skin" d={line(skin)} />
    </g>
  )
}

function tenth(px: number): number {
  return Math.round(px * 10) / 10
}
