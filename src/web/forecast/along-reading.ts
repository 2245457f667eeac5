import type { Forecast } from '#contract/answers.ts'
import type { DrawnBody } from '#web/drawing/body.ts'
import { carryOver } from './carry-over.ts'

type Row = Forecast['along'][number]

/** Which of the two states of the metal is meant. */
export type HardState = 'quenched' | 'tempered'
export type Part = 'skin' | 'centre'

/** One figure at one height [HRC]. */
export interface AlongPoint {
  readonly xMm: number
  readonly hrc: number
  readonly lowHrc: number
  readonly highHrc: number
}

/** A figure along the length, as high as the piece now is. */
export function alongPoints(
  forecast: Pick<Forecast, 'along'>,
  part: Part,
  state: HardState,
  heightOf: (xMm: number) => number,
): AlongPoint[] {
  return forecast.along.map((row) => {
    const { value, low, high } = figureOf(row, part, state)
    return { xMm: heightOf(row.x_mm), hrc: value, lowHrc: low, highHrc: high }
  })
}

function figureOf(row: Row, part: Part, state: HardState): Row['skin_tempered_HRC'] {
  if (part === 'skin') return state === 'quenched' ? row.skin_quenched_HRC : row.skin_tempered_HRC
  return state === 'quenched' ? row.centre_quenched_HRC : row.centre_tempered_HRC
}

/** What stands at a height, straight between the places that were worked out. */
export function alongAt(points: readonly AlongPoint[], xMm: number): AlongPoint | undefined {
  const first = points[0]
  const last = points[points.length - 1]
  if (first === undefined || last === undefined) return undefined
  if (xMm <= first.xMm) return { ...first, xMm }
  if (xMm >= last.xMm) return { ...last, xMm }
  const after = points.findIndex((point) => point.xMm >= xMm)
  const to = points[after]!
  const from = points[after - 1]!
  const share = to.xMm > from.xMm ? (xMm - from.xMm) / (to.xMm - from.xMm) : 1
  const mix = (key: 'hrc' | 'lowHrc' | 'highHrc'): number => from[key] + share * (to[key] - from[key])
  return { xMm, hrc: mix('hrc'), lowHrc: mix('lowHrc'), highHrc: mix('highHrc') }
}

/** Where a height of the answer is on the piece as it now stands, while it is drawn longer or shorter. */
export function heightNow(was: DrawnBody, now: DrawnBody): (xMm: number) => number {
  if (was === now) return (xMm) => xMm
  const carry = carryOver(was, now)
  return (xMm) => carry(xMm, 0)[0]
}

/** The C scale as drawn: from this to this [HRC]. */
export const DRAWN_FROM_HRC = 10
export const DRAWN_TO_HRC = 70
/** Under this it is no measure. */
export const SCALE_BEGINS_HRC = 20

/** A figure as one would say it. */
export function hrcSays({ hrc, lowHrc, highHrc }: AlongPoint): string {
  if (highHrc < SCALE_BEGINS_HRC) return `soft, under ${SCALE_BEGINS_HRC} HRC`
  const low = lowHrc < SCALE_BEGINS_HRC ? `under ${SCALE_BEGINS_HRC}` : String(Math.round(lowHrc))
  const middle = hrc < SCALE_BEGINS_HRC ? `under ${SCALE_BEGINS_HRC}` : String(Math.round(hrc))
  return `${middle} HRC (${low} to ${Math.round(highHrc)})`
}
