import type { Problem } from '#contract/problems.ts'
import type { Selection } from '#web/bench/bench.ts'
import type { JobText } from '#web/job/job-text.ts'
import { metres } from '#web/job/profile-reading.ts'
import type { DrawnBody } from './body.ts'

/** A fault where it is on the metal. */
export interface PlacedProblem {
  readonly says: string
  readonly field: string
  readonly xMm: number
  readonly selection: Selection
}

/** Faults of the shape and of the zones at their height; those of the whole piece, and of other sides, have none. */
export function problemPlaces(problems: readonly Problem[], job: JobText, body: DrawnBody): PlacedProblem[] {
  return problems.flatMap(({ field, says }): PlacedProblem[] => {
    const [, list = '', index = '', key = ''] = /^(profile|zones)\[(\d+)\]\.?(.*)$/u.exec(field) ?? []
    const i = Number(index)
    if (list === 'profile') {
      const section = body.sections.find((each) => each.index === i)
      const xMm = section === undefined ? body.lengthMm : section.fromMm + shareOf(key, i) * section.lengthMm
      return [{ says, field, xMm, selection: { kind: 'section', index: i } }]
    }
    if (list !== 'zones') return []
    const zone = job.zones?.[i]
    const ends = [metres(zone?.from), metres(zone?.to)].map((each) => Math.min(body.lengthMm, (each ?? 0) * 1000))
    const [fromMm = 0, toMm = 0] = ends
    const xMm = key === 'from' ? fromMm : key === 'to' ? toMm : (fromMm + toMm) / 2
    return [{ says, field, xMm, selection: { kind: 'zone', index: i } }]
  })
}

/** How far up its section a fault is: a fillet at the lower joint, what is in a face at that face. */
function shareOf(key: string, index: number): number {
  if (key.startsWith('fillet') || key === 'from') return 0
  if (key === 'to') return 1
  return /^(?:dish|bore|tip)/u.test(key) ? (index === 0 ? 0 : 1) : 0.5
}

/** Problems of one field, in words; undefined where there are none. `tip` also takes those of `tip.radius`. */
export function problemAt(problems: readonly Problem[], field: string): string | undefined {
  const found = problems.filter((each) => each.field === field || each.field.startsWith(`${field}.`))
  return found.length === 0 ? undefined : found.map(({ says }) => says).join('; ')
}
