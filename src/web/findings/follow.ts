import { effect } from '@preact/signals'
import type { Forecast } from '#contract/answers.ts'
import type { Bench } from '#web/bench/bench.ts'
import { stillThere } from '#web/treatment/forecast-diff.ts'

/** The number that a finding has in the next forecast; undefined when it is not raised there any more. */
export function followed(index: number, before: Forecast, after: Forecast): number | undefined {
  const finding = before.findings[index]
  if (finding === undefined) return undefined
  const alone = { ...before, findings: [finding] }
  const next = after.findings.findIndex((each) => stillThere(finding, alone, { ...after, findings: [each] }))
  return next === -1 ? undefined : next
}

const following = new WeakSet<Bench>()

/** The finding that is touched stays the one that is touched when a new forecast counts anew. */
export function followFindings(bench: Bench): void {
  if (following.has(bench)) return
  following.add(bench)
  let before: Forecast | undefined
  effect(() => {
    const after = bench.outlook.answered.value?.forecast
    const selection = bench.selection.peek()
    if (selection?.kind === 'finding' && after !== before) {
      const index = before === undefined || after === undefined ? undefined : followed(selection.index, before, after)
      if (index !== selection.index) bench.selection.value = index === undefined ? undefined : { kind: 'finding', index }
    }
    before = after
  })
}
