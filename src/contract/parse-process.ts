import type { ProcessStep } from '#engine/simulation/process.ts'
import { shown } from '#units/reading.ts'
import type { GearAsked } from './assumed-gear.ts'
import { type GearFinder, type GearSort, isAirIn } from './gear-names.ts'
import { type StepContext, stepOf } from './parse-step.ts'
import type { Problem } from './problems.ts'
import { orderProblems } from './process-order.ts'
import { stepSchema, type TypedStep } from './process-schema.ts'
import { isFields, taken } from './schema-problems.ts'

const MOST_STEPS = 60
/** From the fire to the bath where nobody said: two or three paces; common practice, no source. */
const CARRY_S = 3

/** Steps as typed, `undefined` where one could not be read (its problems are added). */
export function takeSteps(
  input: unknown,
  required: boolean,
  problems: Problem[],
): readonly (TypedStep | undefined)[] | undefined {
  if (input === undefined || input === null || (Array.isArray(input) && input.length === 0 && !required)) {
    if (required)
      problems.push({
        field: 'process',
        says: 'missing: list the steps, as - { do: heat, in: coal fire, to: 845 °C, hold: 10 min }; plan proposes them',
      })
    return required ? undefined : []
  }
  if (!Array.isArray(input) || input.length === 0 || input.length > MOST_STEPS) {
    problems.push({ field: 'process', says: `${shown(input)}: a list of 1 to ${MOST_STEPS} steps belongs here` })
    return undefined
  }
  return input.map((each, i) => taken(stepSchema, each, `process[${i}]`, problems))
}

/** Which gear the steps ask for, by the sort that each step is usually done in. */
export function gearAsked(steps: readonly (TypedStep | undefined)[]): GearAsked {
  const fires: (string | undefined)[] = []
  const baths: (string | undefined)[] = []
  const ovens: (string | undefined)[] = []
  for (const step of steps) {
    if (step === undefined || step.do === 'carry') continue
    const name = step.in
    if (step.do === 'quench' || step.do === 'warm-bath' || step.do === 'run-colours') baths.push(name)
    else if (step.do === 'temper') (name === undefined || /\boven\b/iu.test(name) ? ovens : fires).push(name)
    else (name !== undefined && /\boven\b/iu.test(name) ? ovens : fires).push(name)
  }
  return { fires, baths, ovens }
}

/** Steps that have a fault elsewhere still say when their gear is unknown. */
export function gearOfUnread(input: unknown, steps: readonly (TypedStep | undefined)[], find: GearFinder): void {
  if (!Array.isArray(input)) return
  for (const [i, step] of steps.entries()) {
    const raw: unknown = input[i]
    if (step !== undefined || !isFields(raw) || typeof raw.in !== 'string' || raw.in.trim() === '') continue
    const sorts = typeof raw.do === 'string' ? SORTS[raw.do] : undefined
    if (sorts !== undefined) find(raw.in.trim(), sorts, `process[${i}].in`)
  }
}

/** Gear that each step can be done in, the likeliest sort first. */
const SORTS: { readonly [step: string]: readonly GearSort[] | undefined } = {
  normalise: ['fires', 'ovens'],
  anneal: ['fires', 'ovens'],
  'stress-relieve': ['fires', 'ovens'],
  heat: ['fires', 'ovens'],
  temper: ['ovens', 'fires'],
  quench: ['baths'],
  'warm-bath': ['baths'],
  'run-colours': ['baths'],
}

/** The process in SI, with a walk to the bath put in where nobody wrote one; `typed` goes step for step with it. */
export function stepsOf(
  typed: readonly (TypedStep | undefined)[],
  context: StepContext,
): { readonly steps: readonly ProcessStep[]; readonly typed: readonly TypedStep[] } {
  const steps: ProcessStep[] = []
  const kept: TypedStep[] = []
  let lastBath: string | undefined
  typed.forEach((each, i) => {
    if (each === undefined) return
    // A bath that is missing is said once, at the quench.
    if (each.do === 'run-colours' && each.in === undefined && typed[i - 1]?.do === 'quench' && lastBath === undefined) return
    const step = stepOf(each, `process[${i}]`, lastBath, context)
    if (each.do === 'quench') lastBath = step?.do === 'quench' ? step.in : undefined
    if (step === undefined) return
    if (step.do === 'quench') {
      const air = isAirIn(context.shop, step.in)
      if (!air && typed[i - 1]?.do === 'heat') {
        context.assumptions.push({
          says: `process[${i}]: ${CARRY_S} s from the fire to the bath.`,
          because: 'no carry step stands before the quench',
        })
        steps.push({ do: 'carry', forS: CARRY_S })
        kept.push({ do: 'carry', for: { typed: `${CARRY_S} s`, durationS: CARRY_S } })
      }
    }
    steps.push(step)
    kept.push(each)
  })
  context.problems.push(...orderProblems(typed))
  return { steps, typed: kept }
}
