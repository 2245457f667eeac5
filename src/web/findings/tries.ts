import type { Finding } from '#contract/answers.ts'
import { applyEdits } from '#contract/job-edits.ts'
import type { JobText } from '#web/job/job-text.ts'

/** A remedy as changes of the document. */
export type Try = NonNullable<Finding['try']>[number]

/**
 * The document with a remedy in it. Remedies are written for the composed document; one that changes the gear gives the piece a copy of
 * the shop to change, so that the shop of the device stays as it is until somebody changes it there.
 */
export function tried(job: JobText, composed: JobText, { edits }: Try): JobText {
  const onGear = job.shop === undefined && composed.shop !== undefined && edits.some(({ path }) => path[0] === 'shop')
  return applyEdits(onGear ? { ...job, shop: composed.shop } : job, edits) as JobText
}

/** What is tried as it stands behind other words: a first word that is no name or symbol begins small. */
export function trySays({ says }: Try): string {
  return /^\p{Lu}\p{Ll}/u.test(says) ? `${says.charAt(0).toLowerCase()}${says.slice(1)}` : says
}
