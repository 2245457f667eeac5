import type { Finding } from '#contract/answers.ts'
import type { JobText } from '#web/job/job-text.ts'

/** A remedy as a change of the document. */
export interface Try {
  readonly says: string
  readonly edits: readonly unknown[]
}

export function triesOf(finding: Finding): readonly Try[] {
  return (finding as Finding & { readonly try?: readonly Try[] }).try ?? []
}

export function tried(job: JobText, _composed: JobText, _one: Try): JobText {
  return job
}
