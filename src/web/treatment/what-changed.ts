import type { JobText, StepText } from '#web/job/job-text.ts'
import { stepsOf, wordsOf } from './process-edits.ts'
import { fieldsOf, stepWord } from './step-fields.ts'

/** What differs between two documents of one piece, in words: `Quench, how deep: 60 mm instead of 35 mm`. */
export function whatChanged(before: JobText, after: JobText): readonly string[] {
  const others = [
    ['profile', 'the shape'],
    ['steel', 'the steel'],
    ['zones', 'the aims'],
    ['shop', 'the shop'],
    ['grainSize', 'the grain'],
    ['struck', 'whether it is struck'],
  ] as const
  return [
    ...stepsChanged(stepsOf(before), stepsOf(after)),
    ...others.filter(([key]) => !same(before[key], after[key])).map(([, says]) => says),
  ]
}

function stepsChanged(before: readonly StepText[], after: readonly StepText[]): string[] {
  const kinds = (steps: readonly StepText[]): string[] => steps.map((step) => step.do)
  if (same(kinds(before), kinds(after))) return after.flatMap((step, i) => fieldsChanged(before[i] ?? { do: '' }, step))
  if (same(kinds(before).toSorted(), kinds(after).toSorted())) return ['the order of the steps']
  const [more, fewer] = [extra(after, before), extra(before, after)]
  if (more.length + fewer.length > 2) return ['the whole treatment']
  return [...more.map((step) => `with ${named(step)}`), ...fewer.map((step) => `without ${named(step)}`)]
}

function fieldsChanged(before: StepText, after: StepText): string[] {
  const word = stepWord(after)
  const parts = [before, after].map(partWords)
  const part = parts[0] === parts[1] ? [] : [`${word}: ${parts[1]} instead of ${parts[0]}`]
  const fields = fieldPaths(before, after).flatMap((path) => {
    const [was, is] = [wordsOf(before, path), wordsOf(after, path)]
    if (was === is) return []
    const says = fieldsOf(after)
      .find((field) => field.path === path)
      ?.says.toLowerCase()
    const name = says === undefined ? word : `${word}, ${says}`
    if (is === '') return [`${name}: ${was} left out`]
    return [was === '' ? `${name}: ${is}` : `${name}: ${is} instead of ${was}`]
  })
  return [...part, ...fields]
}

/** How much of the piece a step treats. */
function partWords(step: StepText): string {
  return step.part === undefined ? 'all of it' : `${wordsOf(step, 'part.from') || '0'} to ${wordsOf(step, 'part.to')}`
}

function fieldPaths(...steps: readonly StepText[]): readonly string[] {
  const paths = steps.flatMap((step) =>
    Object.entries(step).flatMap(([key, value]) =>
      typeof value === 'object' && value !== null ? Object.keys(value).map((inner) => `${key}.${inner}`) : [key],
    ),
  )
  return [...new Set(paths)].filter((path) => path !== 'do' && !path.startsWith('part'))
}

/** Steps of the one that the other has fewer of. */
function extra(of: readonly StepText[], than: readonly StepText[]): StepText[] {
  const count = new Map<string, number>()
  for (const step of than) count.set(step.do, (count.get(step.do) ?? 0) + 1)
  return of.filter((step) => {
    const left = (count.get(step.do) ?? 0) - 1
    count.set(step.do, left)
    return left < 0
  })
}

function named(step: StepText): string {
  return `"${stepWord(step).toLowerCase()}"`
}

function same(a: unknown, b: unknown): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b)
}
