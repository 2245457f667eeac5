import type { StepText } from '#web/job/job-text.ts'
import type { StepKind } from './step-fields.ts'

const BEFORE_THE_HEAT: readonly StepKind[] = ['stress-relieve', 'anneal', 'normalise', 'warm-bath']

/**
 * Where a step of this kind belongs among the others: what softens and warms goes before the first heat, the walk and the bath after the
 * heat, colours straight after the bath, tempers last. Gives the index that it will have.
 */
export function soundPlace(steps: readonly StepText[], kind: StepKind): number {
  const last = (...kinds: readonly string[]): number => steps.findLastIndex((step) => kinds.includes(step.do))
  const firstHeat = steps.findIndex((step) => step.do === 'heat')
  if (BEFORE_THE_HEAT.includes(kind)) return firstHeat === -1 ? steps.length : firstHeat
  const heat = last('heat')
  switch (kind) {
    case 'heat': {
      // The first heat goes before what waits for one; another begins anew after all that was done.
      const waits = steps.findIndex((step) => ['carry', 'quench', 'run-colours', 'temper'].includes(step.do))
      return heat === -1 && waits !== -1 ? waits : steps.length
    }
    case 'carry':
      return heat === -1 ? steps.length : heat + 1
    case 'quench': {
      if (heat === -1) return steps.length
      return steps[heat + 1]?.do === 'carry' ? heat + 2 : heat + 1
    }
    case 'run-colours': {
      const quench = last('quench')
      return quench === -1 ? steps.length : quench + 1
    }
    default:
      return steps.length
  }
}
