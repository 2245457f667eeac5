import type { JobText, StepText } from '#web/job/job-text.ts'

/** Steps of a job as typed; none when it has no treatment yet. */
export function stepsOf(job: JobText): readonly StepText[] {
  return job.process ?? []
}

/** The job with these steps. Without any it has no `process` at all, which is how a job says that it has no treatment yet. */
export function withSteps(job: JobText, steps: readonly StepText[]): JobText {
  const { process: _, ...rest } = job
  return steps.length === 0 ? rest : { ...rest, process: steps }
}

/** What stands in a field of a step (`part.from` reaches into a group); undefined where nothing is written. */
export function fieldOf(step: StepText, path: string): unknown {
  let value: unknown = step
  for (const key of path.split('.')) value = isGroup(value) ? value[key] : undefined
  return value
}

/** The same as words to type over: a number as its figures, yes and no as words, nothing as an empty text. */
export function wordsOf(step: StepText, path: string): string {
  const value = fieldOf(step, path)
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  return typeof value === 'string' || typeof value === 'number' ? String(value) : ''
}

/** The step with a field written, or left out (`undefined`, and empty words). A group that loses its last field goes with it. */
export function withField(step: StepText, path: string, value: unknown): StepText {
  return written(step, path.split('.'), value === '' ? undefined : value) as StepText
}

type Group = Readonly<Record<string, unknown>>

function written(group: Group, [key = '', ...inner]: readonly string[], value: unknown): Group {
  const before = group[key]
  const next: unknown = inner.length === 0 ? value : written(isGroup(before) ? before : {}, inner, value)
  const { [key]: _, ...others } = group
  if (next === undefined || (inner.length > 0 && Object.keys(next as object).length === 0)) return others
  // A field that stood there keeps its place among the others.
  return key in group ? { ...group, [key]: next } : { ...others, [key]: next }
}

/** One step changed. */
export function changedStep(job: JobText, index: number, change: (step: StepText) => StepText): JobText {
  const steps = stepsOf(job)
  const before = steps[index]
  if (before === undefined) return job
  const after = change(before)
  return after === before ? job : withSteps(job, steps.with(index, after))
}

/** A step put in before the one at `at`; at the end when `at` is the number of steps. */
export function addedStep(job: JobText, step: StepText, at: number): JobText {
  return withSteps(job, stepsOf(job).toSpliced(Math.max(0, at), 0, step))
}

export function withoutStep(job: JobText, index: number): JobText {
  return stepsOf(job)[index] === undefined ? job : withSteps(job, stepsOf(job).toSpliced(index, 1))
}

/** A step taken up or down the order; beyond either end nothing changes. */
export function movedStep(job: JobText, from: number, to: number): JobText {
  const steps = stepsOf(job)
  const step = steps[from]
  if (step === undefined || to < 0 || to >= steps.length || to === from) return job
  return withSteps(job, steps.toSpliced(from, 1).toSpliced(to, 0, step))
}

function isGroup(value: unknown): value is Group {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
