import type { Figure, Forecast } from '#contract/answers.ts'
import { aimOf, SOFTEST_HRC } from '#report/figure-text.ts'
import { parseLength } from '#units/length.ts'
import { heightsFor } from '#web/drawing/heights.ts'
import type { StepText } from '#web/job/job-text.ts'

/** What the small picture of a route is drawn from [px]. */
export interface RoutePicture {
  readonly widthPx: number
  readonly heightPx: number
  readonly axisPx: number
  /** The piece, mirrored about its axis. */
  readonly piece: string
  /** Hardness of the skin and the middle as tempered, and the band of the skin. */
  readonly skin: string
  readonly centre: string
  readonly band: string
  readonly ticks: readonly { readonly xPx: number; readonly hrc: number }[]
  readonly aims: readonly {
    readonly name: string
    readonly aim: string
    readonly leftPx: number
    readonly widthPx: number
    readonly topPx: number
    readonly heightPx: number
  }[]
  readonly plotTopPx: number
  readonly plotBottomPx: number
  /** Where the liquid stands; the whole piece under it when it is over the other end. */
  readonly water?: { readonly yPx: number; readonly name: string; readonly whole: boolean }
  /** Lengths that alone are heated or drawn. */
  readonly parts: readonly { readonly kind: 'heat' | 'temper'; readonly fromPx: number; readonly toPx: number }[]
}

interface Box {
  readonly widthPx: number
  readonly heightPx: number
}

/** Share of the width that the piece has; the rest is for its hardness. */
const PIECE_SHARE = 0.36
const RIGHT_PX = 8
const HARDEST_HRC = 68
const LEFT_OF_SCALE_HRC = 15

/**
 * The piece, its bath, its heated lengths and its hardness along it against the aims, all on one scale of heights.
 * `drawnMm`: the true radius of a place of the forecast's equivalent rounds.
 */
export function routePicture(
  forecast: Forecast,
  process: readonly StepText[],
  box: Box,
  drawnMm: (xMm: number, rMm: number) => number = (_, rMm) => rMm,
): RoutePicture {
  const outline = forecast.outline_mm.map(([x, r]) => [x, drawnMm(x, r)] as const)
  const widestMm = outline.reduce((widest, [, r]) => Math.max(widest, r), 0)
  const piecePx = box.widthPx * PIECE_SHARE
  const heights = heightsFor(forecast.length_mm, widestMm, { widthPx: piecePx * 0.72, heightPx: box.heightPx })
  const axisPx = piecePx / 2
  const { yOf, pxPerMm } = heights
  const half = outline.map(([x, r]) => [r * pxPerMm, yOf(x)] as const)
  const mirrored = half.toReversed().map(([x, y]) => [-x, y] as const)
  const plotLeftPx = piecePx + 6
  const scale = (box.widthPx - RIGHT_PX - plotLeftPx) / (HARDEST_HRC - LEFT_OF_SCALE_HRC)
  // Below the scale there are no figures to tell apart: the curve runs along its soft end.
  const xOf = (hrc: number): number =>
    plotLeftPx +
    scale * (Math.min(HARDEST_HRC, hrc < SOFTEST_HRC ? (LEFT_OF_SCALE_HRC + SOFTEST_HRC) / 2 : hrc) - LEFT_OF_SCALE_HRC)
  const along = (of: (at: Forecast['along'][number]) => number): readonly (readonly [number, number])[] =>
    forecast.along.map((at) => [xOf(of(at)), yOf(at.x_mm)] as const)
  const skin = (at: Forecast['along'][number]): Figure => at.skin_tempered_HRC
  const bath = forecast.baths.find(({ step, kind }) => forecast.steps[step]?.do === 'quench' && !kind.endsWith('air'))
  return {
    ...box,
    axisPx,
    piece: closed([...half, ...mirrored].map(([x, y]) => [axisPx + x, y])),
    skin: open(along((at) => skin(at).value)),
    centre: open(along((at) => at.centre_tempered_HRC.value)),
    band: closed([...along((at) => skin(at).low), ...along((at) => skin(at).high).toReversed()]),
    ticks: [20, 30, 40, 50, 60].map((hrc) => ({ xPx: xOf(hrc), hrc })),
    aims: forecast.zones.flatMap(({ name, aim, from_mm, to_mm }) => {
      const range = aimOf(aim)
      if (range === undefined) return []
      const [leftPx, rightPx] = [xOf(range.low ?? 0), xOf(range.high ?? HARDEST_HRC)]
      const left = range.low === undefined ? plotLeftPx : leftPx
      return [{ name, aim, leftPx: left, widthPx: rightPx - left, topPx: yOf(to_mm), heightPx: yOf(from_mm) - yOf(to_mm) }]
    }),
    plotTopPx: yOf(forecast.length_mm) - 6,
    plotBottomPx: yOf(0) + 6,
    ...(bath === undefined
      ? {}
      : { water: waterOf(bath, yOf(bath.line_mm ?? forecast.length_mm) - (bath.line_mm === null ? 8 : 0)) }),
    parts: process.flatMap((step) => {
      const part = partOf(step)
      const kind = step.do === 'heat' || step.do === 'temper' ? step.do : undefined
      return part === undefined || kind === undefined
        ? []
        : [{ kind, fromPx: yOf(part[0]), toPx: yOf(Math.min(part[1], forecast.length_mm)) }]
    }),
  }
}

function waterOf({ name, line_mm }: Forecast['baths'][number], yPx: number): NonNullable<RoutePicture['water']> {
  return { yPx, name, whole: line_mm === null }
}

/** The length that a step treats alone [mm]; undefined when it is the whole piece. */
function partOf({ part }: StepText): readonly [number, number] | undefined {
  if (typeof part !== 'object' || part === null) return undefined
  const [from, to] = ['from', 'to'].map((key) => parseLength((part as Record<string, unknown>)[key], { zero: true }))
  if (from?.ok !== true || to?.ok !== true) return undefined
  return [from.value.lengthM * 1000, to.value.lengthM * 1000]
}

function open(points: readonly (readonly [number, number])[]): string {
  return points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('')
}

function closed(points: readonly (readonly [number, number])[]): string {
  return `${open(points)}Z`
}
