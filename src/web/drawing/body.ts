import type { Forecast } from '#contract/answers.ts'
import { type Outline, outlineOf } from '#engine/geometry/outline.ts'
import type { Section } from '#engine/geometry/profile.ts'
import { equivalentRoundM } from '#engine/geometry/section-shapes.ts'
import type { JobText, SectionText } from '#web/job/job-text.ts'
import { metres, sectionOf } from '#web/job/profile-reading.ts'

/** One section as drawn: where it begins, how long, its size at both ends [mm]; `width` of a flat is its wider side. */
export interface DrawnSection {
  readonly index: number
  readonly shape: SectionText['shape']
  readonly fromMm: number
  readonly lengthMm: number
  readonly acrossMm: readonly [from: number, to: number]
  readonly widthMm?: readonly [from: number, to: number]
  /** Diameter of the rounds that the forecast is worked out for. */
  readonly equivalentMm: readonly [from: number, to: number]
  /** False where something in it cannot be read and a neighbour's size stands in. */
  readonly sound: boolean
}

/** The piece as its document draws it, in its true sizes. */
export interface DrawnBody {
  readonly lengthMm: number
  readonly halfWidthMm: number
  readonly sections: readonly DrawnSection[]
  /** Half-section in true sizes [m], hollows included; `outside` is without them. Absent where the shape is at fault: straight sections are drawn. */
  readonly outline?: Outline
  readonly outside?: Outline
}

const bodies = new WeakMap<readonly SectionText[], DrawnBody>()
const NOTHING: readonly SectionText[] = []

/** The drawing of a document, from what was typed. Made once for each list of sections. */
export function bodyOfText(job: JobText, _forecast?: Forecast): DrawnBody {
  const texts = job.profile ?? NOTHING
  const before = bodies.get(texts)
  if (before !== undefined) return before
  const body = newBody(texts)
  bodies.set(texts, body)
  return body
}

function newBody(texts: readonly SectionText[]): DrawnBody {
  const read = texts.map(sectionOf)
  const sections: DrawnSection[] = []
  let fromMm = 0
  for (const [index, text] of texts.entries()) {
    const section = read[index] ?? standIn(text, sections.at(-1), read[index + 1])
    if (section === undefined) continue
    const drawn = drawnSection(section, index, fromMm, read[index] !== undefined)
    sections.push(drawn)
    fromMm += drawn.lengthMm
  }
  const across = sections.flatMap(({ acrossMm, widthMm }) => [...acrossMm, ...(widthMm ?? [])])
  const whole = sections.length > 0 && sections.length === texts.length && sections.every(({ sound }) => sound)
  const outlines = whole ? trueOutlines(read.filter((each) => each !== undefined)) : undefined
  return { lengthMm: fromMm, halfWidthMm: Math.max(1, ...across) / 2, sections, ...outlines }
}

function drawnSection({ shape, from, to, lengthM }: Section, index: number, fromMm: number, sound: boolean): DrawnSection {
  return {
    index,
    shape,
    fromMm,
    lengthMm: lengthM * 1000,
    acrossMm: [from.acrossM * 1000, to.acrossM * 1000],
    ...(from.widthM === undefined || to.widthM === undefined ? {} : { widthMm: [from.widthM * 1000, to.widthM * 1000] as const }),
    equivalentMm: [equivalentRoundM(shape, from) * 1000, equivalentRoundM(shape, to) * 1000],
    sound,
  }
}

/** A section that cannot be read is drawn as thick as its neighbour, so that the rest stays where it is. */
function standIn(text: SectionText, below: DrawnSection | undefined, above: Section | undefined): Section | undefined {
  const lengthM = metres(text.length)
  const acrossM = below === undefined ? above?.from.acrossM : below.acrossMm[1] / 1000
  if (acrossM === undefined || lengthM === 0) return undefined
  const size = { acrossM }
  return { shape: 'round', from: size, to: size, lengthM: lengthM ?? STAND_IN_M }
}

const STAND_IN_M = 0.02

/** The outline as it is seen and cut, each section a round of its own size across. */
function trueOutlines(sections: readonly Section[]): { outline: Outline; outside: Outline } | undefined {
  const rounds = sections.map(
    ({ from, to, ...rest }): Section => ({
      ...rest,
      shape: 'round',
      from: { acrossM: from.acrossM },
      to: { acrossM: to.acrossM },
    }),
  )
  try {
    return {
      outline: outlineOf({ sections: rounds }),
      outside: outlineOf({ sections: rounds.map(({ dish: _, bore: __, ...rest }) => rest) }),
    }
  } catch (error) {
    // The shape is at fault; where and why stands in the problems of the outlook.
    if (error instanceof RangeError) return undefined
    throw error
  }
}

/**
 * Fields of a forecast lie on rounds that cool like the piece; the drawing has its true sizes. Distance from the axis as drawn, for a
 * point of the field [mm]. At a joint the thicker of the two rounds counts.
 */
export function trueRadiusMm(body: DrawnBody, xMm: number, fieldMm: number): number {
  return fieldMm * shareAt(body, xMm)
}

/** The other way: where a place of the drawing lies in the field. */
export function fieldRadiusMm(body: DrawnBody, xMm: number, trueMm: number): number {
  const share = shareAt(body, xMm)
  return share === 0 ? 0 : trueMm / share
}

function shareAt({ sections }: DrawnBody, xMm: number): number {
  let share = 1
  let widest = -1
  for (const [i, { fromMm, lengthMm, acrossMm, equivalentMm }] of sections.entries()) {
    const along = (xMm - fromMm) / lengthMm
    const low = i === 0 ? Number.NEGATIVE_INFINITY : -1e-6
    const high = i === sections.length - 1 ? Number.POSITIVE_INFINITY : 1 + 1e-6
    if (along < low || along > high) continue
    const at = Math.min(1, Math.max(0, along))
    const round = equivalentMm[0] + at * (equivalentMm[1] - equivalentMm[0])
    if (round <= widest) continue
    widest = round
    share = round > 0 ? (acrossMm[0] + at * (acrossMm[1] - acrossMm[0])) / round : 1
  }
  return share
}
