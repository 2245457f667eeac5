import type { Selection } from '#web/bench/bench.ts'
import type { JobText } from '#web/job/job-text.ts'
import type { DrawnBody, DrawnSection } from './body.ts'
import type { Heights } from './heights.ts'
import { edgePath, px } from './outline-path.ts'
import { bathBelow } from './water-lines.ts'
import { type ZoneBand, zoneBandPx } from './zone-bands.ts'

interface LineLayerProps {
  readonly job: JobText
  readonly body: DrawnBody
  readonly heights: Heights
  readonly widthPx: number
  readonly axisPx: number
  readonly bands: readonly ZoneBand[]
  readonly selection: Selection | undefined
  readonly shaping: boolean
}

/** The lines of the drawing, as in a shop: outline heavy, centre line chain-dotted, measures thin, the water line across. */
export function LineLayer({ job, body, heights, widthPx, axisPx, bands, selection, shaping }: LineLayerProps) {
  const left = { axisPx, side: -1 } as const
  const right = { axisPx, side: 1 } as const
  const topPx = heights.yOf(body.lengthMm)
  const sound = body.outline !== undefined
  return (
    <svg class="drawing-layer" width={widthPx} height={heights.heightPx} aria-hidden="true">
      <Tongs topPx={topPx} axisPx={axisPx} halfPx={topHalfPx(body, heights)} />
      {bands.map((band) => (
        <Band
          key={`${band.index ?? 'assumed'} ${band.name}`}
          band={band}
          body={body}
          heights={heights}
          axisPx={axisPx}
          selection={selection}
        />
      ))}
      {body.sections.map((section) => (
        <SectionLines key={section.index} section={section} heights={heights} axisPx={axisPx} />
      ))}
      {body.outline !== body.outside && sound && <path class="drawing-hidden" d={edgePath(body, body.outline, heights, left)} />}
      <path class={sound ? 'drawing-outline' : 'drawing-outline at-fault'} d={edgePath(body, body.outside, heights, left)} />
      <path class={sound ? 'drawing-outline' : 'drawing-outline at-fault'} d={edgePath(body, body.outline, heights, right)} />
      <path class="drawing-centre" d={`M${px(axisPx)} ${px(topPx - 14)}V${px(heights.workingEndPx + 12)}`} />
      {selection?.kind === 'section' && (
        <Chosen section={body.sections.find(({ index }) => index === selection.index)} heights={heights} axisPx={axisPx} />
      )}
      {shaping && <LengthLines body={body} heights={heights} widthPx={widthPx} axisPx={axisPx} />}
      <WaterLines job={job} body={body} heights={heights} widthPx={widthPx} named={!shaping} />
    </svg>
  )
}

/** The tongs hold it by its other end. */
function Tongs({ topPx, axisPx, halfPx }: { readonly topPx: number; readonly axisPx: number; readonly halfPx: number }) {
  const jaw = (side: 1 | -1): string => {
    const [out, rein] = [px(axisPx + side * (halfPx + 4)), px(axisPx + side * 3.5)]
    return `M${out} ${px(topPx + 13)}V${px(topPx - 2)}C${out} ${px(topPx - 13)} ${rein} ${px(topPx - 8)} ${rein} ${px(topPx - 26)}`
  }
  return <path class="drawing-tongs" d={jaw(-1) + jaw(1)} />
}

function topHalfPx({ sections }: DrawnBody, heights: Heights): number {
  const last = sections.at(-1)
  return ((last?.acrossMm[1] ?? 0) / 2) * heights.pxPerMm
}

interface SectionLinesProps {
  readonly section: DrawnSection | undefined
  readonly heights: Heights
  readonly axisPx: number
}

/** What shows its shape: the broad side of a flat as a thin outline about the thin one, the edges of an octagon, the joint. */
function SectionLines({ section, heights, axisPx }: SectionLinesProps) {
  if (section === undefined) return null
  const { shape, fromMm, lengthMm, acrossMm, widthMm } = section
  const [lowPx, highPx] = [heights.yOf(fromMm), heights.yOf(fromMm + lengthMm)]
  const at = (mm: number): number => (mm / 2) * heights.pxPerMm
  const both = (from: number, to: number): string =>
    ([-1, 1] as const)
      .map((side) => `M${px(axisPx + side * at(from))} ${px(lowPx)}L${px(axisPx + side * at(to))} ${px(highPx)}`)
      .join('')
  return (
    <>
      {widthMm !== undefined && (
        <path
          class="drawing-broad"
          d={`${both(widthMm[0], widthMm[1])}M${px(axisPx - at(widthMm[0]))} ${px(lowPx)}H${px(axisPx + at(widthMm[0]))}M${px(axisPx - at(widthMm[1]))} ${px(highPx)}H${px(axisPx + at(widthMm[1]))}`}
        />
      )}
      {shape === 'octagon' && (
        <path
          class="drawing-edge"
          d={`M${px(axisPx - at(acrossMm[0]) * OCTAGON_EDGE)} ${px(lowPx)}L${px(axisPx - at(acrossMm[1]) * OCTAGON_EDGE)} ${px(highPx)}`}
        />
      )}
      {section.index > 0 && <path class="drawing-edge" d={`M${px(axisPx - at(acrossMm[0]))} ${px(lowPx)}H${px(axisPx)}`} />}
    </>
  )
}

/** Where the edge of an octagon stands, of its half across: tan 22.5 degrees. */
const OCTAGON_EDGE = 0.4142

/** The section in hand: a mark along its outside. */
function Chosen({ section, heights, axisPx }: SectionLinesProps) {
  if (section === undefined) return null
  const { fromMm, lengthMm, acrossMm } = section
  const half = (mm: number): number => (mm / 2) * heights.pxPerMm
  const line = (side: 1 | -1): string =>
    `M${px(axisPx + side * half(acrossMm[0]))} ${px(heights.yOf(fromMm))}L${px(axisPx + side * half(acrossMm[1]))} ${px(heights.yOf(fromMm + lengthMm))}`
  return <path class="drawing-chosen" d={line(-1) + line(1)} />
}

interface BandProps {
  readonly band: ZoneBand
  readonly body: DrawnBody
  readonly heights: Heights
  readonly axisPx: number
  readonly selection: Selection | undefined
}

function Band({ band, body, heights, axisPx, selection }: BandProps) {
  const { fromMm, toMm, index } = band
  const { leftPx, widthPx } = zoneBandPx(band, body, heights, axisPx)
  const chosen = selection?.kind === 'zone' && selection.index === index
  const [topPx, bottomPx] = [heights.yOf(toMm), heights.yOf(fromMm)]
  const state = index === undefined ? 'assumed' : chosen ? 'chosen' : ''
  return (
    <g class={`drawing-band ${state}`}>
      <rect x={leftPx} y={topPx} width={widthPx} height={Math.max(2, bottomPx - topPx)} />
      <path d={`M${px(leftPx)} ${px(topPx)}H${px(axisPx)}M${px(leftPx)} ${px(bottomPx)}H${px(axisPx)}`} />
    </g>
  )
}

interface AcrossProps {
  readonly body: DrawnBody
  readonly heights: Heights
  readonly widthPx: number
}

/** Thin dimension lines for the lengths, between short lines that come out of the joints. */
function LengthLines({ body, heights, widthPx, axisPx }: AcrossProps & { readonly axisPx: number }) {
  const linePx = axisPx + body.halfWidthMm * heights.pxPerMm + DIMENSION_PX
  if (linePx > widthPx - 8 || body.sections.length === 0) return null
  const joints = [0, ...body.sections.map(({ fromMm, lengthMm }) => fromMm + lengthMm)].map(heights.yOf)
  const halfs = body.sections.map(({ acrossMm }) => acrossMm)
  const ticks = joints.map((y, i) => {
    const half = (Math.max(halfs[i]?.[0] ?? 0, halfs[i - 1]?.[1] ?? 0) / 2) * heights.pxPerMm
    return `M${px(axisPx + half + 4)} ${px(y)}H${px(linePx + 4)}M${px(linePx - 3.5)} ${px(y + 3.5)}L${px(linePx + 3.5)} ${px(y - 3.5)}`
  })
  return <path class="drawing-measure" d={`M${px(linePx)} ${px(joints[0] ?? 0)}V${px(joints.at(-1) ?? 0)}${ticks.join('')}`} />
}

/** How far off the metal the dimension line stands [px]. */
export const DIMENSION_PX = 16

interface WaterLinesProps extends AcrossProps {
  readonly job: JobText
  /** Says how deep, where no figures stand beside the piece. */
  readonly named: boolean
}

function WaterLines({ job, body, heights, widthPx, named }: WaterLinesProps) {
  const { lines } = bathBelow(job)
  return (
    <>
      {lines.map(({ step, lineMm, typed }) => {
        const y = lineMm === null ? heights.yOf(body.lengthMm) - 10 : heights.yOf(Math.min(lineMm, body.lengthMm))
        return (
          <g key={step} class="drawing-water">
            <path d={`M0 ${px(y)}H${px(widthPx)}`} />
            {named && lineMm !== null && (
              <text x={widthPx - 4} y={px(y - 5)} text-anchor="end">
                {typed}
              </text>
            )}
          </g>
        )
      })}
    </>
  )
}
