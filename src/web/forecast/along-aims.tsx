import type { Forecast } from '#contract/answers.ts'
import type { Heights } from '#web/drawing/heights.ts'
import { AimMark } from './aim-mark.tsx'
import { aimedZones, aimState, chanceSays } from './aims.ts'
import { DRAWN_FROM_HRC, DRAWN_TO_HRC } from './along-reading.ts'
import { spread } from './label-heights.ts'

interface AlongAimsProps {
  readonly forecast: Pick<Forecast, 'zones'>
  readonly heights: Heights
  readonly heightOf: (xMm: number) => number
  readonly xOf: (hrc: number) => number
  readonly widthPx: number
  /** What is aimed at lies under the curves, the words about it over them. */
  readonly layer: 'zones' | 'words'
}

/** Two lines of words about a zone [px]. */
const WORDS_PX = 42
const HARD_SIDE_HRC = 38

/** What is wished of each zone as a field at its height, and whether it will come: by shape and in words. */
export function AlongAims({ forecast, heights, heightOf, xOf, widthPx, layer }: AlongAimsProps) {
  const zones = aimedZones(forecast).map((zone) => {
    const topPx = heights.yOf(heightOf(zone.toMm))
    return { ...zone, topPx, heightPx: heights.yOf(heightOf(zone.fromMm)) - topPx }
  })
  if (layer === 'zones')
    return (
      <g>
        {zones.map(({ name, lowHrc, highHrc, topPx, heightPx }) => {
          if (lowHrc === undefined && highHrc === undefined) return null
          const fromPx = lowHrc === undefined ? 0 : xOf(lowHrc)
          const toPx = highHrc === undefined ? widthPx : xOf(highHrc)
          return <rect key={name} class="along-aim" x={fromPx} y={topPx} width={Math.max(2, toPx - fromPx)} height={heightPx} />
        })}
      </g>
    )
  const words = spread(
    zones.map(({ topPx, heightPx }) => topPx + heightPx / 2),
    WORDS_PX,
    WORDS_PX / 2 + 44,
    heights.heightPx - WORDS_PX / 2,
  )
  return (
    <g>
      {zones.map(({ name, chance, temperedHrc, lowHrc, highHrc }, i) => {
        const middle = ((lowHrc ?? DRAWN_FROM_HRC) + (highHrc ?? DRAWN_TO_HRC)) / 2
        const onLeft = Math.max(temperedHrc.value, middle) > HARD_SIDE_HRC
        const yPx = words[i] ?? 0
        const xPx = onLeft ? 26 : widthPx - 6
        return (
          <g key={name}>
            <AimMark state={aimState(chance)} xPx={onLeft ? 12 : widthPx - 12} yPx={yPx - 11} />
            <text class="along-text strong" x={onLeft ? xPx : xPx - 20} y={yPx - 5} text-anchor={onLeft ? 'start' : 'end'}>
              {name}
            </text>
            <text class="along-text" x={onLeft ? 4 : xPx} y={yPx + 15} text-anchor={onLeft ? 'start' : 'end'}>
              {chanceSays(chance)}
            </text>
          </g>
        )
      })}
    </g>
  )
}
