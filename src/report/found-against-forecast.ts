import { element, label, line, pathThrough, picture } from './svg.ts'
import type { DrawnRow } from './validation-record.ts'

export interface Scatter {
  readonly id: string
  readonly title: string
  /** What both scales stand in. */
  readonly unit: string
  readonly rows: readonly DrawnRow[]
  readonly logarithmic: boolean
  /** For a picture that stands by itself; the page brings its own. */
  readonly style?: string
}

const SIZE_PX = 340
const LEFT_PX = 52
const FOOT_PX = 52
const TOP_PX = 12
const RIGHT_PX = 12
const LETTER_PX = 16
/** Room for a mark at the edge. */
const MARGIN = 0.06
const MARK_PX = 4.5

/** Families by shape: told apart in one colour, small, and where they lie over each other. */
const SHAPES = ['circle', 'square', 'triangle', 'diamond', 'cross', 'plus'] as const
type Shape = (typeof SHAPES)[number]

/** The usual families keep their shape from picture to picture. */
const OF_FAMILY: Readonly<Record<string, Shape>> = {
  'plain carbon': 'circle',
  'low alloy': 'triangle',
  'silicon steel': 'cross',
  'high carbon': 'square',
  'rich tool steel': 'diamond',
  'high-speed': 'plus',
}

/** Colours for a picture that stands by itself, on paper. */
export const SCATTER_STYLE = `.paper{fill:#f8f4ea}text{font:${LETTER_PX}px sans-serif;fill:#1e1b16}.grid{stroke:#c9bfa8;stroke-width:1}.same{stroke:#1e1b16;stroke-width:1.5}.whisker{stroke:#7d725d;stroke-width:1;opacity:.55}.mark{fill:none;stroke:#1f4e79;stroke-width:1.5}.mark.outside{stroke:#8a3b12;stroke-width:2.25}`

/**
 * What was published across, what the program says upward: on the diagonal they agree. Bands are thin whiskers, families of steel have
 * shapes of their own, and a figure outside its band is drawn heavier. The names of the families stand under it.
 */
export function foundAgainstForecast({ id, title, unit, rows, logarithmic, style }: Scatter): string {
  const scale = scaleOf(rows, logarithmic)
  const across = (value: number): number => LEFT_PX + scale.share(value) * (SIZE_PX - LEFT_PX - RIGHT_PX)
  const upward = (value: number): number => SIZE_PX - FOOT_PX - scale.share(value) * (SIZE_PX - FOOT_PX - TOP_PX)
  const families = [...new Set(rows.map(({ family }) => family ?? ''))]
  const shapeOf = (family: string): Shape => OF_FAMILY[family] ?? SHAPES[families.indexOf(family) % SHAPES.length] ?? 'circle'
  const key = families.length < 2 ? [] : families.map((family) => ({ family, shape: shapeOf(family) }))
  const heightPx = SIZE_PX + Math.ceil(key.length / 2) * (LETTER_PX + 6)
  const { from, to } = scale
  return picture(
    id,
    { widthPx: SIZE_PX, heightPx },
    title,
    inWords(rows, unit),
    ...(style === undefined ? [] : [element('style', {}, style)]),
    element('rect', { x: 0, y: 0, width: SIZE_PX, height: heightPx, class: 'paper' }),
    ...scale.ticks.flatMap((tick) => [
      line(across(tick), TOP_PX, across(tick), SIZE_PX - FOOT_PX, 'grid'),
      line(LEFT_PX, upward(tick), SIZE_PX - RIGHT_PX, upward(tick), 'grid'),
      label(across(tick), SIZE_PX - FOOT_PX + LETTER_PX + 2, String(tick), { 'text-anchor': 'middle' }),
      label(LEFT_PX - 6, upward(tick) + LETTER_PX / 3, String(tick), { 'text-anchor': 'end' }),
    ]),
    line(across(from), upward(from), across(to), upward(to), 'same'),
    ...rows.flatMap(({ published, low, high }) =>
      low === undefined || high === undefined
        ? []
        : [line(across(published), upward(Math.max(low, from)), across(published), upward(Math.min(high, to)), 'whisker')],
    ),
    ...rows.map((row) => {
      return mark(shapeOf(row.family ?? ''), across(row.published), upward(row.forecast), outside(row) ? 'mark outside' : 'mark')
    }),
    label((LEFT_PX + SIZE_PX) / 2, SIZE_PX - 10, `published${unit === '' ? '' : `, ${unit}`}`, { 'text-anchor': 'middle' }),
    label(LEFT_PX + 6, TOP_PX + LETTER_PX, 'forecast'),
    ...key.flatMap(({ family, shape }, i) => {
      const x = 12 + (i % 2) * (SIZE_PX / 2)
      const y = SIZE_PX + 8 + Math.floor(i / 2) * (LETTER_PX + 6)
      return [mark(shape, x, y, 'mark'), label(x + 12, y + LETTER_PX / 3, family)]
    }),
  )
}

function outside({ published, low, high }: DrawnRow): boolean {
  return low !== undefined && high !== undefined && (published < low - 1e-9 || published > high + 1e-9)
}

function inWords(rows: readonly DrawnRow[], unit: string): string {
  const worst = rows.reduce((at, row) =>
    Math.abs(row.forecast - row.published) > Math.abs(at.forecast - at.published) ? row : at,
  )
  const banded = rows.filter(({ low }) => low !== undefined).length
  const missed = rows.filter(outside).length
  const band = banded === 0 ? '' : ` ${missed} of ${banded} published figures lie outside the band.`
  return `${rows.length} published figures against the forecast of each. Furthest off: ${worst.label}, published ${round(worst.published)}, forecast ${round(worst.forecast)} ${unit}.${band}`
}

function round(value: number): number {
  return Math.round(10 * value) / 10
}

interface Span {
  readonly from: number
  readonly to: number
  readonly ticks: readonly number[]
  readonly share: (value: number) => number
}

/** One scale for both ways, so that the diagonal is a diagonal. */
function scaleOf(rows: readonly DrawnRow[], logarithmic: boolean): Span {
  const values = rows.flatMap(({ published, forecast }) => [published, forecast])
  const way = logarithmic ? Math.log10 : (value: number) => value
  const back = logarithmic ? (value: number) => 10 ** value : (value: number) => value
  const [least, most] = [Math.min(...values.map(way)), Math.max(...values.map(way))]
  const margin = Math.max(most - least, 1e-6) * MARGIN
  const [from, to] = [least - margin, most + margin]
  return {
    from: back(from),
    to: back(to),
    ticks: logarithmic ? decades(back(from), back(to)) : roundTicks(from, to),
    share: (value) => (way(value) - from) / (to - from),
  }
}

/** 1, 2 or 5 times a power of ten apart, four to eight of them. */
function roundTicks(from: number, to: number): number[] {
  const rough = (to - from) / 6
  const power = 10 ** Math.floor(Math.log10(rough))
  const step = [1, 2, 5, 10].map((times) => times * power).find((each) => each >= rough) ?? rough
  const first = Math.ceil(from / step)
  return Array.from({ length: Math.floor(to / step) - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(6)))
}

function decades(from: number, to: number): number[] {
  return Array.from({ length: 12 }, (_, i) => i - 3)
    .flatMap((power) => [1, 3].map((times) => times * 10 ** power))
    .filter((tick) => tick >= from && tick <= to)
}

function mark(shape: Shape, x: number, y: number, kind: string): string {
  const r = MARK_PX
  switch (shape) {
    case 'circle':
      return element('circle', { cx: x, cy: y, r: r - 0.5, class: kind })
    case 'square':
      return element('rect', { x: x - r + 0.5, y: y - r + 0.5, width: 2 * r - 1, height: 2 * r - 1, class: kind })
    case 'triangle':
      return closed(
        [
          [x, y - r - 0.5],
          [x + r, y + r - 1],
          [x - r, y + r - 1],
        ],
        kind,
      )
    case 'diamond':
      return closed(
        [
          [x, y - r - 1],
          [x + r + 1, y],
          [x, y + r + 1],
          [x - r - 1, y],
        ],
        kind,
      )
    case 'cross':
      return element('path', {
        d: `M${p(x - r)} ${p(y - r)}L${p(x + r)} ${p(y + r)}M${p(x - r)} ${p(y + r)}L${p(x + r)} ${p(y - r)}`,
        class: kind,
      })
    case 'plus':
      return element('path', {
        d: `M${p(x - r - 1)} ${p(y)}H${p(x + r + 1)}M${p(x)} ${p(y - r - 1)}V${p(y + r + 1)}`,
        class: kind,
      })
  }
}

function closed(points: readonly (readonly [number, number])[], kind: string): string {
  return element('path', { d: pathThrough(points, true), class: kind })
}

function p(value: number): number {
  return Math.round(100 * value) / 100
}
