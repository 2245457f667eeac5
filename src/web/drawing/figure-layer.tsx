import type { Signal } from '@preact/signals'
import { spreadLabels } from '#report/label-places.ts'
import type { Bench } from '#web/bench/bench.ts'
import { withTyped, withZone } from '#web/job/measure.ts'
import type { DrawnBody } from './body.ts'
import { Figure } from './figure.tsx'
import { FIGURES_PX, figurePlaces } from './figure-places.ts'
import type { Heights } from './heights.ts'
import { DIMENSION_PX } from './line-layer.tsx'
import { type ZoneBand, zoneBandPx } from './zone-bands.ts'

interface FigureLayerProps {
  readonly bench: Bench
  readonly body: DrawnBody
  readonly heights: Heights
  readonly widthPx: number
  readonly axisPx: number
  readonly bands: readonly ZoneBand[]
  readonly shaping: boolean
  readonly typing: Signal<string | undefined>
}

/** Figures to the right of the metal, zones with their aims to its left. */
export function FigureLayer({ bench, body, heights, widthPx, axisPx, bands, shaping, typing }: FigureLayerProps) {
  const job = bench.job.value
  const selection = bench.selection.value
  const linePx = axisPx + body.halfWidthMm * heights.pxPerMm + DIMENSION_PX
  const roomPx = widthPx - linePx - 6
  const figures = shaping ? figurePlaces(job, body, heights, roomPx, selection) : []
  const wide = roomPx >= FIGURES_PX
  const close = (): void => {
    typing.value = undefined
    bench.settle()
  }
  return (
    <>
      {figures.map(({ key, measure, section, shown, typed, says, yPx, tallPx }) => (
        <div
          key={key}
          class={`drawing-figure-place${selection?.kind === 'section' && selection.index === section ? ' chosen' : ''}${wide ? '' : ' over'}`}
          style={{ top: `${yPx}px`, height: `${tallPx}px`, ...(wide ? { left: `${linePx + 6}px` } : { right: 0 }) }}
        >
          <Figure
            shown={shown}
            typed={typed}
            says={`Section ${section + 1}, ${says}`}
            open={typing.value === key}
            onOpen={() => {
              bench.selection.value = { kind: 'section', index: section }
              typing.value = key
            }}
            onTyped={(next) => bench.edit(`section ${section + 1}: ${says}`, (now) => withTyped(now, measure, next))}
            onClose={close}
          />
        </div>
      ))}
      <ZoneNames bench={bench} bands={bands} body={body} heights={heights} axisPx={axisPx} shaping={shaping} typing={typing} />
    </>
  )
}

/** On a narrow drawing the words stand over the band, or under it where there is no room over it. */
function offBand({ fromMm, toMm }: ZoneBand, heights: Heights, tallPx: number): number {
  const over = heights.yOf(toMm) - OFF_BAND_PX - tallPx / 2
  return over - tallPx / 2 >= 0 ? over : heights.yOf(fromMm) + OFF_BAND_PX + tallPx / 2
}

const OFF_BAND_PX = 10

/** Room that a zone's name needs left of its band [px]. */
const NAMES_PX = 56

type ZoneNamesProps = Omit<FigureLayerProps, 'widthPx'>

/** Each zone's name and aim beside its band; on a narrow drawing only those of the zone in hand. */
function ZoneNames({ bench, bands, body, heights, axisPx, shaping, typing }: ZoneNamesProps) {
  const selection = bench.selection.value
  const lanes = Math.max(0, ...bands.map(({ lane }) => lane))
  const rightPx = zoneBandPx({ lane: lanes }, body, heights, axisPx).leftPx - 5
  const wide = rightPx >= NAMES_PX
  const shown = bands.filter(({ index }) => wide || (selection?.kind === 'zone' && selection.index === index))
  const letters = Math.max(4, Math.floor((wide ? rightPx : 150) / 8))
  const wishes = shown.map(({ name, aim, fromMm, toMm }) => ({
    atPx: heights.yOf((fromMm + toMm) / 2),
    tallPx: Math.max(44, 20 * (Math.ceil(name.length / letters) + Math.ceil(aim.length / letters)) + 4),
  }))
  const middles = wide
    ? spreadLabels(wishes, 2, heights.heightPx - 2)
    : shown.map((band, i) => offBand(band, heights, wishes[i]?.tallPx ?? 0))
  return (
    <>
      {shown.map((band, i) => {
        const key = `aim ${band.index ?? 'assumed'}`
        const chosen = selection?.kind === 'zone' && selection.index === band.index
        return (
          <div
            key={`${key} ${band.name}`}
            class={`drawing-zone-name${chosen ? ' chosen' : ''}${wide ? '' : ' over'}`}
            style={{ top: `${middles[i] ?? 0}px`, ...(wide ? { width: `${rightPx}px` } : {}) }}
          >
            <span class="strong">{band.name}</span>
            {band.index === undefined ? (
              <span>{band.aim}, assumed</span>
            ) : shaping ? (
              <Figure
                shown={band.aim}
                typed={band.aim}
                says={`Aim of ${band.name}`}
                open={typing.value === key}
                onOpen={() => {
                  bench.selection.value = { kind: 'zone', index: band.index as number }
                  typing.value = key
                }}
                onTyped={(aim) =>
                  bench.edit(`aim of ${band.name}`, (now) => withZone(now, band.index as number, (zone) => ({ ...zone, aim })))
                }
                onClose={() => {
                  typing.value = undefined
                }}
              />
            ) : (
              <span>{band.aim}</span>
            )}
          </div>
        )
      })}
    </>
  )
}
