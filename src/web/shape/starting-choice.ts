import type { StartingPiece } from '#contract/starting-pieces.ts'
import { followed } from '#web/job/following.ts'
import type { JobText } from '#web/job/job-text.ts'
import { shapeFaults } from '#web/job/profile-reading.ts'

/** A starting shape in the sizes that were typed: the document, or what is wrong with a size (`''`: with the shape) and the mend. */
export type Made =
  | { readonly job: JobText; readonly problems?: undefined }
  | { readonly job?: undefined; readonly problems: Readonly<Record<string, string>> }

export function madeOf(piece: StartingPiece, sizes: Readonly<Record<string, string>>): Made {
  try {
    const job: JobText = piece.job(sizes)
    const [fault] = shapeFaults(job.profile ?? [])
    return fault === undefined ? { job } : { problems: { '': fault.says } }
  } catch (error) {
    const problems = (error as { readonly problems?: readonly { readonly field: string; readonly says: string }[] }).problems
    if (problems === undefined) throw error
    return { problems: Object.fromEntries(problems.map(({ field, says }) => [field.replace(/^sizes\./u, ''), says])) }
  }
}

/**
 * The document with the shape of another: its sections, its zones and whether it is struck. Name, steel, shop and treatment stay; what
 * reached further up than the new piece ends with it.
 */
export function withShapeOf({ zones: _, ...job }: JobText, { profile, zones, struck }: JobText): JobText {
  const shaped: JobText = {
    ...job,
    ...(profile === undefined ? {} : { profile }),
    ...(zones === undefined ? {} : { zones }),
    ...(struck === undefined ? {} : { struck }),
  }
  return followed(shaped, (xM) => xM)
}
