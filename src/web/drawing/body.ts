import type { Forecast } from '#contract/answers.ts'
import { parseLength } from '#units/length.ts'
import type { JobText, SectionText } from '#web/job/job-text.ts'

/** One section as drawn: where it begins, how long, its size at both ends [mm]; `width` of a flat is its wider side. */
export interface DrawnSection {
  readonly index: number
  readonly shape: SectionText['shape']
  readonly fromMm: number
  readonly lengthMm: number
  readonly acrossMm: readonly [from: number, to: number]
  readonly widthMm?: readonly [from: number, to: number]
}

/** The piece as its document draws it. A section that cannot be read is left out, and `contract` says what is wrong with it. */
export interface DrawnBody {
  readonly lengthMm: number
  readonly halfWidthMm: number
  readonly sections: readonly DrawnSection[]
}

/** The drawing of a document, from what was typed. */
export function bodyOfText(job: JobText, _forecast?: Forecast): DrawnBody {
  let fromMm = 0
  const sections: DrawnSection[] = []
  for (const [index, section] of (job.profile ?? []).entries()) {
    const length = parseLength(section.length)
    const from = sizeOf(section.from ?? section.across)
    const to = sizeOf(section.to ?? section.across)
    if (!length.ok || from === undefined || to === undefined) continue
    const lengthMm = length.value.lengthM * 1000
    sections.push({
      index,
      shape: section.shape,
      fromMm,
      lengthMm,
      acrossMm: [from.acrossMm, to.acrossMm],
      ...(section.shape === 'flat' ? { widthMm: [from.widthMm ?? from.acrossMm, to.widthMm ?? to.acrossMm] as const } : {}),
    })
    fromMm += lengthMm
  }
  const across = sections.flatMap(({ acrossMm, widthMm }) => [...acrossMm, ...(widthMm ?? [])])
  return { lengthMm: fromMm, halfWidthMm: Math.max(1, ...across) / 2, sections }
}

function sizeOf(typed: string | undefined): { acrossMm: number; widthMm?: number } | undefined {
  if (typed === undefined) return undefined
  const [first, second] = typed.split(/[x×]/u)
  const wide = second === undefined ? undefined : parseLength(second)
  if (wide !== undefined && !wide.ok) return undefined
  const withUnit =
    second === undefined || /[a-z"']/iu.test(first ?? '') ? first : `${first} ${second.replace(/^[^a-z"']*/iu, '')}`
  const across = parseLength(withUnit)
  if (!across.ok) return undefined
  return { acrossMm: across.value.lengthM * 1000, ...(wide === undefined ? {} : { widthMm: wide.value.lengthM * 1000 }) }
}
