import type { Forecast } from '#contract/answers.ts'
import type { Problem } from '#contract/problems.ts'
import { formatDuration } from '#units/duration.ts'
import type { StepText } from '#web/job/job-text.ts'

/**
 * Which step of an answered treatment is this one: the same object wherever it stands now, else the one at its place when the order of the
 * steps is the same. Undefined for a step that the answer does not know yet.
 */
export function answeredIndex(answered: readonly StepText[], steps: readonly StepText[], index: number): number | undefined {
  const step = steps[index]
  if (step === undefined) return undefined
  if (answered.length === steps.length && answered.every((each, i) => each.do === steps[i]?.do)) return index
  const known = answered.indexOf(step)
  return known === -1 ? undefined : known
}

/** When a step begins and how long it lasts, as a smith would say it. */
export function clockSays({ start_s, end_s }: Forecast['steps'][number]): string {
  const lasts = `${formatDuration(Math.max(0, end_s - start_s))}`
  return start_s < 1 ? `at the start, ${lasts}` : `after ${formatDuration(start_s)}, ${lasts}`
}

/** What is wrong with a step: by field (`to`, `part.from`), and what belongs to the step as a whole. */
export interface StepProblems {
  readonly ofField: ReadonlyMap<string, string>
  readonly ofStep: readonly string[]
}

/** How a step would be written in a file: no help where its fields stand to be filled. */
const FILE_EXAMPLE = /, as (?:- )?\{[^}]*\}/gu

/** The problems of one step, sorted to the fields that are shown; what belongs to none of them stands at the step. */
export function stepProblems(problems: readonly Problem[], index: number, shown: readonly string[]): StepProblems {
  const start = `process[${index}]`
  const ofField = new Map<string, string>()
  const ofStep: string[] = []
  for (const { field, says } of problems) {
    if (field !== start && !field.startsWith(`${start}.`)) continue
    const path = field.slice(start.length + 1)
    const words = says.replace(FILE_EXAMPLE, '')
    if (shown.includes(path) && !ofField.has(path)) ofField.set(path, words)
    else ofStep.push(words)
  }
  return { ofField, ofStep }
}

/** Problems that are no step's: of the treatment as a whole, and of everything else that the forecast waits for. */
export function otherProblems(problems: readonly Problem[]): readonly Problem[] {
  return problems.filter(({ field }) => !/^process\[\d+\]/u.test(field))
}
