import type { Forecast } from '#contract/answers.ts'
import type { System } from '#units/length.ts'
import { type Region, regionAbove, roundLevels } from './contours.ts'
import { aimWords, bareLength, heightOf, inOrder, lengthOf, SOFTEST_HRC, temperatureOf } from './figure-text.ts'
import { type HeightScale, radiusAt, widestMm } from './height-scale.ts'
import { brokenIntoLines, spreadLabels } from './label-places.ts'
import { cornersOf, hollowsOf, runsOf } from './outline-shape.ts'
import { element, label, line, pathThrough, picture } from './svg.ts'

export interface PieceDrawing {
  readonly units: System
  readonly scale: HeightScale
  /** Different for each drawing on a page. */
  readonly id: string
  /** `full` has the zones written out and the measures; `narrow` the piece, its marks and the bath. */
  readonly plan: 'full' | 'narrow'
}

const TEXT_PX = 13
const LINE_PX = 16
const MARK_PX = 10
const MARK_TALL_PX = 2 * MARK_PX + 4
const COLUMNS = {
  full: { zones: 116, bracket: 16, contours: 30, marks: 26, measures: 78 },
  narrow: { zones: 0, bracket: 12, contours: 26, marks: 24, measures: 0 },
} as const

/** Where things stand across the drawing [px]. */
interface Across {
  readonly bracketPx: number
  readonly axisPx: number
  readonly contoursPx: number
  readonly marksPx: number
  readonly measuresPx: number
  readonly widthPx: number
}

/**
 * The piece upright over its bath, working end down, to scale: the outside at the left of the centre line, cut open at the
 * right with lines of equal hardness. Zones, measures, the level of the bath and the findings stand at their height.
 */
export function pieceDrawing(forecast: Forecast, { units, scale, id, plan }: PieceDrawing): string {
  const at = acrossOf(forecast, scale, plan)
  return picture(
    id,
    { widthPx: at.widthPx, heightPx: scale.totalPx },
    `${forecast.piece}, working end down`,
    inWords(forecast, units),
    bathOf(forecast, units, scale, at),
    ...(plan === 'full' ? [measuresOf(forecast, units, scale, at)] : []),
    metalOf(forecast, scale, at),
    zonesOf(forecast, scale, at, plan),
    marksOf(forecast, scale, at),
  )
}

function acrossOf({ outline_mm }: Forecast, scale: HeightScale, plan: PieceDrawing['plan']): Across {
  const columns = COLUMNS[plan]
  const halfPx = widestMm(outline_mm) * scale.pxPerMm
  const bracketPx = columns.zones + columns.bracket
  const axisPx = bracketPx + 8 + halfPx
  const contoursPx = axisPx + halfPx + 4
  const marksPx = contoursPx + columns.contours + columns.marks / 2
  const measuresPx = marksPx + columns.marks / 2 + 2
  return { bracketPx, axisPx, contoursPx, marksPx, measuresPx, widthPx: Math.ceil(measuresPx + columns.measures) }
}

function inWords({ length_mm, outline_mm, zones, baths }: Forecast, units: System): string {
  const bath = baths.at(-1)
  return [
    `${lengthOf(length_mm, units)} long, ${lengthOf(2 * widestMm(outline_mm), units)} at its thickest.`,
    ...zones.map(
      ({ name, from_mm, to_mm, aim }) =>
        `${name}: ${bareLength(from_mm, units)} to ${lengthOf(to_mm, units)} from the working end, wished ${aim}.`,
    ),
    ...(bath === undefined
      ? []
      : [
          bath.line_mm === null
            ? `All of it goes into ${bath.name}.`
            : `The first ${lengthOf(bath.line_mm, units)} goes into ${bath.name}.`,
        ]),
  ].join(' ')
}

/** Level of the bath as a drawing shows a liquid, its name below the working end. */
function bathOf(forecast: Forecast, units: System, scale: HeightScale, at: Across): string {
  const bath = forecast.baths.at(-1)
  if (bath === undefined) return ''
  const air = /air$/u.test(bath.kind)
  const named = bath.name === bath.kind ? bath.name : `${bath.name}, ${bath.kind}`
  const warms = Math.abs(bath.end_C - bath.start_C) < 1
  const heat = warms
    ? temperatureOf(bath.start_C, units)
    : `${temperatureOf(bath.start_C, units)} to ${temperatureOf(bath.end_C, units)}`
  const letters = Math.floor((at.widthPx - 8) / (TEXT_PX * 0.64))
  const words = brokenIntoLines(air ? `cools in ${named}` : `${named}, ${heat}`, letters, 3)
  const text = words
    .map((each, i) =>
      label(at.widthPx / 2, scale.bottomPx + BELOW_FOOT_PX + i * LINE_PX, each, { class: 'soft', 'text-anchor': 'middle' }),
    )
    .join('')
  const levelPx = levelPxOf(forecast, scale)
  if (levelPx === undefined) return text
  const sign = at.bracketPx + 2
  return (
    element('rect', { x: 0, y: levelPx, width: at.widthPx, height: scale.totalPx - levelPx, class: 'liquid' }) +
    levelLines(levelPx, at, bath.line_mm === null) +
    element('path', { d: `M${sign - 6} ${levelPx - 10}h12l-6 10z`, class: 'level-sign' }) +
    [3, 6.5, 10]
      .map((down, i) => line(sign - 9 + 3 * i, levelPx + down, sign + 9 - 3 * i, levelPx + down, 'level-dash'))
      .join('') +
    text
  )
}

/** Height of the liquid's surface on the paper; undefined where it cools in air. */
function levelPxOf({ baths }: Forecast, scale: HeightScale): number | undefined {
  const bath = baths.at(-1)
  if (bath === undefined || /air$/u.test(bath.kind)) return undefined
  return bath.line_mm === null ? scale.topPx - 16 : scale.y(bath.line_mm)
}

/** The surface of the liquid, open where numbers stand beside the metal. */
function levelLines(levelPx: number, at: Across, over: boolean): string {
  if (over) return line(0, levelPx, at.widthPx, levelPx, 'level')
  return (
    line(Math.max(0, at.bracketPx - 12), levelPx, at.contoursPx, levelPx, 'level') +
    line(at.measuresPx - 2, levelPx, at.widthPx, levelPx, 'level')
  )
}

const BELOW_FOOT_PX = 30

/** Outside at the left, cut half at the right with its contours, centre line over both. */
function metalOf(forecast: Forecast, scale: HeightScale, at: Across): string {
  const { outline_mm, length_mm, probes } = forecast
  const left = ([x, r]: readonly [number, number]): [number, number] => [at.axisPx - r * scale.pxPerMm, scale.y(x)]
  const right = ([x, r]: readonly [number, number]): [number, number] => [at.axisPx + r * scale.pxPerMm, scale.y(x)]
  const outside = outsideOf(outline_mm, length_mm)
  const edges = cornersOf(outline_mm)
    .filter(([x]) => x > 0.01 && x < length_mm - 0.01)
    .map(([x, r]) => line(left([x, r])[0], scale.y(x), at.axisPx, scale.y(x), 'edge'))
  const hidden = hollowsOf(outline_mm).map((points) =>
    element('path', { d: pathThrough(points.map(left)), class: 'hidden-edge' }),
  )
  return [
    element('path', { d: pathThrough(outside.map(left), true), class: 'outside' }),
    element('path', { d: pathThrough(outline_mm.map(right), true), class: 'cut' }),
    contoursOf(forecast, scale, at),
    ...edges,
    ...hidden,
    element('path', { d: pathThrough(outside.map(left)), class: 'outline' }),
    element('path', { d: pathThrough(outline_mm.map(right)), class: 'outline' }),
    line(at.axisPx, scale.topPx - 12, at.axisPx, scale.bottomPx + 12, 'centre-line'),
    ...probes.map(({ x_mm, r_mm }) => {
      const [x, y] = right([x_mm, r_mm])
      return element('path', { d: `M${x - 5} ${y}h10M${x} ${y - 5}v10`, class: 'probe' })
    }),
  ].join('')
}

/** The outline as the eye sees it from the side: hollows in the ends do not show. */
function outsideOf(outline: Forecast['outline_mm'], lengthMm: number): [number, number][] {
  const low = outline.findIndex(([x]) => x <= 1e-6)
  const high = outline.length - 1 - [...outline].reverse().findIndex(([x]) => x >= lengthMm - 1e-6)
  return [[0, 0], ...outline.slice(Math.max(0, low), high + 1), [lengthMm, 0]]
}

interface Contour {
  readonly level: number
  readonly region: Region
}

function contoursOf(forecast: Forecast, scale: HeightScale, at: Across): string {
  const { field, outline_mm } = forecast
  if (field === undefined || field.triangles.length === 0) return ''
  const value = field.tempered_HRC
  const least = value.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY)
  const most = value.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY)
  const net = {
    x: field.r_mm.map((r) => at.axisPx + r * scale.pxPerMm),
    y: field.x_mm.map(scale.y),
    triangles: field.triangles,
    value,
  }
  const contours: Contour[] = roundLevels(Math.max(least, SOFTEST_HRC - 0.01), most).map((level) => ({
    level,
    region: regionAbove(net, level),
  }))
  const base = element('path', {
    d: regionAbove(net, Number.NEGATIVE_INFINITY)
      .loops.map((loop) => pathThrough(loop, true))
      .join(''),

    fill: toneOf(least),
  })
  const tones = contours.map(({ level, region }) =>
    element('path', {
      d: region.loops.map((loop) => pathThrough(loop, true)).join(''),
      fill: toneOf(level),
    }),
  )
  const lines = contours.map(({ region }) =>
    element('path', { d: region.lines.map((each) => pathThrough(each)).join(''), class: 'contour' }),
  )
  // The number stands beside the metal where its line comes out at the skin, or where it comes nearest.
  const ends = contours.flatMap(({ level, region }) => {
    const points = region.lines.flat()
    const out = points.reduce<readonly [number, number] | undefined>(
      (best, point) => (best === undefined || point[0] - skinPx(point[1]) > best[0] - skinPx(best[1]) + 0.5 ? point : best),
      undefined,
    )
    return out === undefined ? [] : [{ level, out }]
  })
  function skinPx(yPx: number): number {
    return at.axisPx + radiusAt(outline_mm, (scale.bottomPx - yPx) / scale.pxPerMm) * scale.pxPerMm
  }
  const heights = spreadLabels(
    ends.map(({ out }) => ({ atPx: out[1], tallPx: LINE_PX })),
    scale.topPx - 10,
    scale.bottomPx + 14,
  )
  const wetPx = levelPxOf(forecast, scale) ?? Number.POSITIVE_INFINITY
  const numbers = ends.map(({ level, out: [x, y] }, i) => {
    const textPx = heights[i] ?? y
    return (
      element('path', {
        d: pathThrough([
          [x, y],
          [at.contoursPx - 1, textPx],
          [at.contoursPx + 2, textPx],
        ]),
        class: 'leader',
      }) +
      label(at.contoursPx + 4, textPx + 4.5, String(level), { class: textPx > wetPx ? 'contour-number wet' : 'contour-number' })
    )
  })
  return [base, ...tones, ...lines, ...numbers].join('')
}

/** The harder the darker, from almost paper to a grey on which ink lines still show; the same in grey print. */
function toneOf(hrc: number): string {
  const share = Math.max(0, Math.min(1, (hrc - SOFTEST_HRC) / 45))
  const mixed = (light: number, dark: number) => Math.round(light + share * (dark - light))
  return `rgb(${mixed(247, 128)} ${mixed(243, 122)} ${mixed(235, 112)})`
}

/** Distances from the working end at the corners, and how thick it is between them. */
function measuresOf(forecast: Forecast, units: System, scale: HeightScale, at: Across): string {
  const { outline_mm, length_mm } = forecast
  const stations = [
    ...new Map(
      [[0, 0] as [number, number], ...cornersOf(outline_mm), [length_mm, 0] as [number, number]].map(([x, r]) => [
        Math.round(x * 10),
        { x, r },
      ]),
    ).values(),
  ]
    .sort((a, b) => a.x - b.x)
    .filter(({ x }, i, all) => i === 0 || x === length_mm || (x - (all[i - 1]?.x ?? 0)) * scale.pxPerMm > 5)
  const lowPx = scale.topPx - 22
  const highPx = scale.bottomPx + 14
  const room = Math.floor((highPx - lowPx) / LINE_PX)
  const wishes = [
    ...stations.map(({ x }) => ({
      atPx: scale.y(x),
      text: bareLength(x, units),
      fromPx: at.axisPx + radiusAt(outline_mm, x) * scale.pxPerMm + 3,
    })),
    ...thicknessesOf(forecast, units, scale).map((each) => ({ ...each, fromPx: undefined })),
  ].slice(0, room)
  const middles = spreadLabels(
    wishes.map(({ atPx }) => ({ atPx, tallPx: LINE_PX })),
    lowPx,
    highPx,
  )
  return (
    wishes
      .map(({ atPx, text, fromPx }, i) => {
        const textPx = middles[i] ?? atPx
        const turn = at.measuresPx + 2
        const leader =
          fromPx === undefined
            ? ''
            : element('path', {
                d: pathThrough([
                  [fromPx, atPx],
                  [turn - 6, atPx],
                  [turn, textPx],
                ]),
                class: 'measure',
              })
        return leader + label(turn + 3, textPx + 4.5, text, { class: 'soft' })
      })
      .join('') + label(at.widthPx - 2, 14, units === 'metric' ? 'mm' : 'inches', { class: 'soft', 'text-anchor': 'end' })
  )
}

const SHAPE_SIGNS = { round: '⌀ ', square: '□ ', hexagon: 'hex ', octagon: 'oct ', flat: '' } as const

/** How thick it is along each straight stretch: once where it stays the same, at both ends where it tapers. */
function thicknessesOf({ outline_mm, sections }: Forecast, units: System, scale: HeightScale): { atPx: number; text: string }[] {
  const stretches =
    sections?.map(({ from_mm, to_mm, shape, across_mm, width_mm }) => ({
      fromMm: from_mm,
      toMm: to_mm,
      texts: [0, 1].map((end) => {
        const across = bareLength(across_mm[end] ?? 0, units)
        return shape === 'flat' ? `${across}×${bareLength(width_mm?.[end] ?? 0, units)}` : SHAPE_SIGNS[shape] + across
      }),
    })) ??
    runsOf(outline_mm).map(({ fromMm, toMm, fromRadiusMm, toRadiusMm }) => ({
      fromMm,
      toMm,
      texts: [fromRadiusMm, toRadiusMm].map((radius) => `⌀ ${bareLength(2 * radius, units)}`),
    }))
  return stretches.flatMap(({ fromMm, toMm, texts: [low = '', high = ''] }) => {
    const tallPx = (toMm - fromMm) * scale.pxPerMm
    if (low === high) return tallPx < 30 ? [] : [{ atPx: scale.y((fromMm + toMm) / 2), text: low }]
    if (tallPx < 56) return []
    return [
      { atPx: scale.y(fromMm) - 20, text: low },
      { atPx: scale.y(toMm) + 20, text: high },
    ]
  })
}

/** A bracket along each zone; its name and wish beside it where there is room. */
function zonesOf({ zones }: Forecast, scale: HeightScale, at: Across, plan: PieceDrawing['plan']): string {
  const brackets = zones.map(({ from_mm, to_mm, assumed }) => {
    const d = `M${at.bracketPx} ${scale.y(to_mm) + 1}h-6V${scale.y(from_mm) - 1}h6`
    return element('path', { d, class: assumed ? 'bracket assumed' : 'bracket' })
  })
  if (plan === 'narrow') return brackets.join('')
  // Names give way to each other by lines; where there is no room for one line each, the table below has them.
  const lowPx = 18
  const highPx = scale.bottomPx + 16
  const most = Math.min(4, Math.floor((highPx - lowPx) / (Math.max(1, zones.length) * (LINE_PX + 2))))
  if (most < 1) return brackets.join('')
  const texts = zones.map(({ name, aim, assumed }) =>
    [...brokenIntoLines(name, 13, Math.max(1, Math.min(2, most - 1))), aimWords(aim), ...(assumed ? ['(assumed)'] : [])].slice(
      0,
      most,
    ),
  )
  const middles = spreadLabels(
    zones.map(({ from_mm, to_mm }, i) => ({
      atPx: scale.y((from_mm + to_mm) / 2),
      tallPx: (texts[i]?.length ?? 1) * LINE_PX + 2,
    })),
    lowPx,
    highPx,
  )
  const names = zones.map(({ from_mm, to_mm }, i) => {
    const lines = texts[i] ?? []
    const middle = middles[i] ?? 0
    const top = middle - (lines.length * LINE_PX) / 2 + 12
    const right = at.bracketPx - 16
    return (
      element('path', {
        d: pathThrough([
          [at.bracketPx - 6, scale.y((from_mm + to_mm) / 2)],
          [right + 3, middle],
        ]),
        class: 'measure',
      }) +
      lines
        .map((each, k) => label(right, top + k * LINE_PX, each, { 'text-anchor': 'end', class: k === 0 ? 'strong' : 'plain' }))
        .join('')
    )
  })
  return [...brackets, ...names].join('')
}

/** Numbered marks: a square where it says stop, a heavy ring where it says mind, a thin ring for a note. */
function marksOf(forecast: Forecast, scale: HeightScale, at: Across): string {
  const placed = inOrder(forecast.findings)
    .flatMap((finding, i) => {
      const heightMm = heightOf(finding, forecast)
      return heightMm === undefined ? [] : [{ finding, number: i + 1, heightMm }]
    })
    .slice(0, Math.floor((scale.totalPx - 4) / MARK_TALL_PX))
  const middles = spreadLabels(
    placed.map(({ heightMm }) => ({ atPx: scale.y(heightMm), tallPx: MARK_TALL_PX })),
    2,
    scale.totalPx - 2,
  )
  return placed
    .map(({ finding, number, heightMm }, i) => {
      const y = middles[i] ?? scale.y(heightMm)
      const skin = at.axisPx + radiusAt(forecast.outline_mm, heightMm) * scale.pxPerMm
      return (
        element('path', {
          d: pathThrough([
            [skin, scale.y(heightMm)],
            [at.marksPx - MARK_PX - 2, y],
            [at.marksPx - MARK_PX, y],
          ]),
          class: 'leader',
        }) +
        element('circle', { cx: skin, cy: scale.y(heightMm), r: 2, class: 'leader-foot' }) +
        findingMark(number, finding.severity, at.marksPx, y)
      )
    })
    .join('')
}

/** The mark of a finding about a middle point; the list of findings shows the same. */
export function findingMark(
  number: number,
  severity: Forecast['findings'][number]['severity'],
  xPx: number,
  yPx: number,
): string {
  const shape =
    severity === 'stop'
      ? element('rect', { x: xPx - MARK_PX, y: yPx - MARK_PX, width: 2 * MARK_PX, height: 2 * MARK_PX, class: 'mark-stop' })
      : element('circle', {
          cx: xPx,
          cy: yPx,
          r: MARK_PX - (severity === 'warn' ? 1 : 0.5),
          class: severity === 'warn' ? 'mark-warn' : 'mark-note',
        })
  return (
    shape + label(xPx, yPx + 4.5, String(number), { 'text-anchor': 'middle', class: severity === 'stop' ? 'on-ink' : 'strong' })
  )
}
