import type { Forecast } from '#contract/answers.ts'
import { levelPxOf } from './bath-level.ts'
import { type Region, regionAbove, roundLevels } from './contours.ts'
import { type Across, LINE_PX } from './drawing-columns.ts'
import { SOFTEST_HRC } from './figure-text.ts'
import { type HeightScale, radiusAt } from './height-scale.ts'
import { spreadLabels } from './label-places.ts'
import { cornersOf, hollowsOf } from './outline-shape.ts'
import { element, label, line, pathThrough } from './svg.ts'

/** Outside at the left, cut half at the right with its contours, centre line over both. */
export function metalOf(forecast: Forecast, scale: HeightScale, at: Across): string {
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
