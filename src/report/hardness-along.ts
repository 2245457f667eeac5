import type { Figure, Forecast } from '#contract/answers.ts'
import { aimOf, aimWords, SOFTEST_HRC } from './figure-text.ts'
import type { HeightScale } from './height-scale.ts'
import { brokenIntoLines, spreadLabels } from './label-places.ts'
import { element, label, line, pathThrough, picture } from './svg.ts'

export interface HardnessAlong {
  readonly scale: HeightScale
  readonly id: string
  readonly widthPx: number
  /** Writes the names of the zones at their boxes, where the drawing beside it has no room for them. */
  readonly nameZones: boolean
}

const LINE_PX = 16
const SIDE_PX = 14

type Along = Forecast['along'][number]

/** Hardness along the piece at the heights of the drawing beside it, as quenched and as tempered, skin and middle; aims as boxes. */
export function hardnessAlong(forecast: Forecast, { scale, id, widthPx, nameZones }: HardnessAlong): string {
  const { low, high } = spanOf(forecast)
  // What the scale cannot tell apart stands in the middle of the strip below it.
  const x = (asked: number) => {
    const hrc = asked < SOFTEST_HRC && low < SOFTEST_HRC ? (low + SOFTEST_HRC) / 2 : asked
    return SIDE_PX + ((Math.max(low, Math.min(high, hrc)) - low) / (high - low)) * (widthPx - 2 * SIDE_PX)
  }
  const step = (widthPx - 2 * SIDE_PX) / (high - low) > 5 ? 5 : 10
  const ticks = Array.from({ length: Math.floor((high - low) / step) + 1 }, (_, i) => low + i * step).filter(
    (hrc) => hrc >= SOFTEST_HRC,
  )
  const curve = (of: (at: Along) => Figure, kind: string) =>
    element('path', { d: pathThrough(forecast.along.map((at) => [x(of(at).value), scale.y(at.x_mm)])), class: kind })
  const band = (of: (at: Along) => Figure, kind: string) => {
    const up = forecast.along.map((at): [number, number] => [x(of(at).low), scale.y(at.x_mm)])
    const down = [...forecast.along].reverse().map((at): [number, number] => [x(of(at).high), scale.y(at.x_mm)])
    return element('path', { d: pathThrough([...up, ...down], true), class: kind })
  }
  return picture(
    id,
    { widthPx, heightPx: scale.totalPx },
    'Hardness along the length',
    inWords(forecast),
    ...ticks.map((hrc) => line(x(hrc), scale.topPx - 6, x(hrc), scale.bottomPx + 6, hrc % 10 === 0 ? 'grid' : 'grid faint')),
    ...(low < SOFTEST_HRC
      ? [
          element('rect', {
            x: SIDE_PX,
            y: scale.topPx - 6,
            width: x(SOFTEST_HRC) - SIDE_PX,
            height: scale.bottomPx - scale.topPx + 12,
            class: 'no-scale',
          }),
        ]
      : []),
    line(SIDE_PX, scale.bottomPx + 6, widthPx - SIDE_PX, scale.bottomPx + 6, 'axis'),
    ...waterLine(forecast, scale, widthPx),
    band((at) => at.centre_tempered_HRC, 'band-centre'),
    band((at) => at.skin_tempered_HRC, 'band-skin'),
    curve((at) => at.centre_quenched_HRC, 'centre-quenched'),
    curve((at) => at.skin_quenched_HRC, 'skin-quenched'),
    curve((at) => at.centre_tempered_HRC, 'centre-tempered'),
    curve((at) => at.skin_tempered_HRC, 'skin-tempered'),
    aimBoxes(forecast, scale, x, widthPx, nameZones),
    ...ticks
      .filter((hrc) => hrc % 10 === 0)
      .map((hrc) => label(x(hrc), scale.bottomPx + 22, String(hrc), { class: 'soft', 'text-anchor': 'middle' })),
    label(widthPx / 2, scale.bottomPx + 40, low < SOFTEST_HRC ? `HRC; grey: under ${SOFTEST_HRC}` : 'hardness, HRC', {
      class: 'soft',
      'text-anchor': 'middle',
    }),
  )
}

function inWords({ along, zones }: Forecast): string {
  const first = along[0]
  const last = along.at(-1)
  const said = (end: string, at: Along | undefined) =>
    at === undefined
      ? ''
      : `At the ${end} the skin stands at ${Math.round(at.skin_tempered_HRC.value)} HRC tempered, the middle at ${Math.round(at.centre_tempered_HRC.value)}.`
  return [said('working end', first), said('other end', last), ...zones.map(({ name, aim }) => `${name} aims at ${aim}.`)].join(
    ' ',
  )
}

/** Whole tens around every figure drawn. */
function spanOf({ along, zones }: Forecast): { low: number; high: number } {
  const figures = along.flatMap((at) => [
    at.skin_tempered_HRC,
    at.centre_tempered_HRC,
    at.skin_quenched_HRC,
    at.centre_quenched_HRC,
  ])
  const aims = zones.flatMap(({ aim }) => {
    const range = aimOf(aim)
    return [range?.low, range?.high].filter((each) => each !== undefined)
  })
  const lows = [...figures.map(({ low }) => low), ...aims]
  const highs = [...figures.map(({ high }) => high), ...aims]
  const low = Math.max(SOFTEST_HRC - 10, Math.floor((Math.min(45, ...lows) - 1) / 10) * 10)
  const high = Math.min(80, Math.ceil((Math.max(55, ...highs) + 1) / 10) * 10)
  return { low, high }
}

function waterLine({ baths }: Forecast, scale: HeightScale, widthPx: number): string[] {
  const bath = baths.at(-1)
  if (bath === undefined || bath.line_mm === null || /air$/u.test(bath.kind)) return []
  return [line(0, scale.y(bath.line_mm), widthPx, scale.y(bath.line_mm), 'level')]
}

/** A box over the length of the zone and the hardness aimed at; open at the side where the aim is. */
function aimBoxes(
  { zones }: Forecast,
  scale: HeightScale,
  x: (hrc: number) => number,
  widthPx: number,
  nameZones: boolean,
): string {
  const drawn = zones.flatMap(({ name, aim, from_mm, to_mm, assumed }) => {
    const range = aimOf(aim)
    if (range === undefined) return []
    const left = range.low === undefined ? SIDE_PX : x(range.low)
    const right = range.high === undefined ? widthPx - SIDE_PX : x(range.high)
    const top = scale.y(to_mm)
    const bottom = scale.y(from_mm)
    const d =
      range.low === undefined
        ? `M${left} ${top}H${right}V${bottom}H${left}`
        : range.high === undefined
          ? `M${right} ${top}H${left}V${bottom}H${right}`
          : `M${left} ${top}H${right}V${bottom}H${left}Z`
    const inside = widthPx - right < left ? 'left' : 'right'
    const roomPx = inside === 'left' ? left - 8 : widthPx - right - 8
    const lines = nameZones
      ? [
          ...brokenIntoLines(name, Math.max(6, Math.floor(roomPx / 8.4)), 2),
          ...brokenIntoLines(aimWords(aim), Math.max(6, Math.floor(roomPx / 8.4)), 2),
        ]
      : []
    return [{ d, assumed, lines, inside, textPx: inside === 'left' ? left - 6 : right + 6, middle: (top + bottom) / 2 }]
  })
  const middles = spreadLabels(
    drawn.map(({ middle, lines }) => ({ atPx: middle, tallPx: lines.length * LINE_PX + 4 })),
    4,
    scale.bottomPx + 4,
  )
  return drawn
    .map(
      ({ d, assumed, lines, inside, textPx }, i) =>
        element('path', { d, class: assumed ? 'aim assumed' : 'aim' }) +
        lines
          .map((each, k) =>
            label(textPx, (middles[i] ?? 0) - (lines.length * LINE_PX) / 2 + 12 + k * LINE_PX, each, {
              'text-anchor': inside === 'left' ? 'end' : 'start',
              class: k === 0 ? 'strong halo' : 'plain halo',
            }),
          )
          .join(''),
    )
    .join('')
}

/** The lines of the picture with their meaning, for the key below it. */
export const KEY: readonly { readonly kind: string; readonly says: string }[] = [
  { kind: 'skin-tempered', says: 'skin, tempered, with the band that holds nine in ten' },
  { kind: 'centre-tempered', says: 'middle, tempered' },
  { kind: 'skin-quenched', says: 'skin, as quenched' },
  { kind: 'centre-quenched', says: 'middle, as quenched' },
  { kind: 'aim', says: 'what you aim for' },
]

/** A short sample of a line of the picture. */
export function keySample(kind: string): string {
  const inside =
    kind === 'aim'
      ? element('rect', { x: 3, y: 2, width: 26, height: 10, class: 'aim' })
      : (kind === 'skin-tempered' ? element('rect', { x: 0, y: 2, width: 32, height: 10, class: 'band-skin' }) : '') +
        line(0, 7, 32, 7, kind)
  return element('svg', { width: 32, height: 14, viewBox: '0 0 32 14', 'aria-hidden': 'true', class: 'picture' }, inside)
}
