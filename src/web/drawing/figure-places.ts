import { spreadLabels } from '#report/label-places.ts'
import type { Selection } from '#web/bench/bench.ts'
import type { JobText, SectionText } from '#web/job/job-text.ts'
import { type Measure, measureKey } from '#web/job/measure.ts'
import type { DrawnBody } from './body.ts'
import type { Heights } from './heights.ts'

/** A figure beside the piece that can be touched and typed over. */
export interface PlacedFigure {
  readonly key: string
  readonly measure: Measure
  readonly section: number
  /** As typed, with its sign; and what is typed over. */
  readonly shown: string
  readonly typed: string
  readonly says: string
  /** Middle of it, and how tall it may be [px]. */
  readonly yPx: number
  readonly tallPx: number
}

/** Room beside the piece that figures of every section need [px]. */
export const FIGURES_PX = 72
const TALLEST_PX = 44
const LEAST_PX = 22

const SIGNS = { round: '⌀ ', square: '□ ', hexagon: 'hex ', octagon: 'oct ', flat: '' } as const

/** The figures of all sections where there is room for them, of the one in hand where there is not. */
export function figurePlaces(
  job: JobText,
  body: DrawnBody,
  heights: Heights,
  roomPx: number,
  selection: Selection | undefined,
): PlacedFigure[] {
  const chosen = selection?.kind === 'section' ? selection.index : undefined
  const sections = body.sections.filter(({ index }) => roomPx >= FIGURES_PX || index === chosen)
  const wishes = sections.flatMap(({ index, fromMm, lengthMm }) => {
    const text = job.profile?.[index]
    return text === undefined
      ? []
      : figuresOf(text, index).map((figure) => ({ ...figure, atPx: heights.yOf(fromMm + figure.share * lengthMm) }))
  })
  const [lowPx, highPx] = [4, heights.heightPx - 4]
  const tallPx = Math.max(LEAST_PX, Math.min(TALLEST_PX, Math.floor((highPx - lowPx) / Math.max(1, wishes.length))))
  const middles = spreadLabels(
    wishes.map(({ atPx }) => ({ atPx, tallPx })),
    lowPx,
    highPx,
  )
  return wishes.map(({ atPx, share: _, ...figure }, i) => ({ ...figure, yPx: middles[i] ?? atPx, tallPx }))
}

function figuresOf(text: SectionText, section: number): (Omit<PlacedFigure, 'yPx' | 'tallPx'> & { share: number })[] {
  const size = (end: 'from' | 'to' | 'both', typed: string, says: string, share: number) => {
    const measure: Measure = { of: 'across', section, end }
    return { key: measureKey(measure), measure, section, shown: `${SIGNS[text.shape]}${typed}`, typed, says, share }
  }
  const measure: Measure = { of: 'length', section }
  const length = {
    key: measureKey(measure),
    measure,
    section,
    shown: text.length,
    typed: text.length,
    says: 'length',
    share: 0.5,
  }
  if (text.across !== undefined) return [size('both', text.across, 'size across', 0.52), length]
  return [
    size('to', text.to ?? '', 'size at its upper end', 0.95),
    length,
    size('from', text.from ?? '', 'size at its lower end', 0.05),
  ]
}
