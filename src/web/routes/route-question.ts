import type { JobText, StepText } from '#web/job/job-text.ts'

/** True when routes that were proposed for one document still answer another one: everything but name, treatment and probes is the same. */
export function sameQuestion(a: JobText, b: JobText): boolean {
  return questionOf(a) === questionOf(b)
}

function questionOf({ piece: _, process: __, probes: ___, ...asked }: JobText): string {
  return JSON.stringify(ordered(asked))
}

/** Whether two treatments are the same, step by step. */
export function sameTreatment(a: readonly StepText[], b: readonly StepText[]): boolean {
  return JSON.stringify(ordered(a)) === JSON.stringify(ordered(b))
}

/** The same value with its keys in one order, so that two ways of writing the same are the same. */
function ordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(ordered)
  if (typeof value !== 'object' || value === null) return value
  const entries = Object.entries(value).filter(([, each]) => each !== undefined)
  return Object.fromEntries(entries.toSorted(([a], [b]) => a.localeCompare(b)).map(([key, each]) => [key, ordered(each)]))
}
