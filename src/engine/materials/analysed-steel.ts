import { type CompositionRange, compositionOf, ELEMENTS, type Element, type Steel } from './steel.ts'

/** What is wrong with an analysis, and where. */
export interface AnalysisProblem {
  readonly field: string
  readonly says: string
}

/** An analysis that no steel can have. */
export class ImpossibleAnalysis extends Error {
  override readonly name = 'ImpossibleAnalysis'
  readonly problems: readonly AnalysisProblem[]

  constructor(problems: readonly AnalysisProblem[]) {
    super(problems.map(({ field, says }) => `${field}: ${says}`).join('; '))
    this.problems = problems
  }
}

/** The most that a steel a smith may meet holds of each element [weight per cent]; beyond it is a slip of the pen. Memory of the standards. */
const MOST: { readonly [Key in Element]: number } = {
  C: 2.3,
  Mn: 20,
  Si: 5,
  P: 0.5,
  S: 0.5,
  Cr: 30,
  Ni: 40,
  Mo: 12,
  V: 16,
  W: 22,
  Cu: 5,
  Co: 15,
  Al: 6,
  N: 1,
  B: 0.1,
  Ti: 3,
  Nb: 3,
}

/**
 * Error of an analysis, half of the band of nine in ten: so much of the value, and at least so many per cent by weight.
 * An optical spectrometer or a mill sheet against the bar in hand; memory, no source.
 */
const ERROR: { readonly [Key in Element]?: readonly [ofValue: number, least: number] } = {
  C: [0.03, 0.015],
  P: [0.15, 0.004],
  S: [0.2, 0.005],
}
const USUAL_ERROR = [0.04, 0.01] as const

/** Elements that short analyses leave out though bar from scrap holds them: up to these [weight per cent]; see grade-heats.ts. */
const UNNAMED: { readonly [Key in Element]?: number } = { Cr: 0.15, Ni: 0.15, Mo: 0.04, Cu: 0.25, P: 0.025, S: 0.03 }

/** Every reason why no steel can have this analysis; empty when it can stand. */
export function analysisProblems(analysis: { readonly [element: string]: unknown }): AnalysisProblem[] {
  const problems: AnalysisProblem[] = []
  let sum = 0
  for (const [key, value] of Object.entries(analysis)) {
    const element = ELEMENTS.find((known) => known === key)
    if (element === undefined) {
      const cased = ELEMENTS.find((known) => known.toLowerCase() === key.toLowerCase())
      const mend = cased === undefined ? `known are ${ELEMENTS.join(', ')}` : `write ${cased}`
      problems.push({ field: key, says: `is no element that Quenchwright knows; ${mend}` })
      continue
    }
    if (typeof value !== 'number' || !Number.isFinite(value)) {
      problems.push({ field: key, says: `must be a number, per cent by weight; it is ${JSON.stringify(value) ?? String(value)}` })
      continue
    }
    sum += value
    if (value < 0) problems.push({ field: key, says: `is ${value} %: it cannot be less than 0` })
    else if (element === 'C' && value > MOST.C)
      problems.push({
        field: key,
        says: `is ${value} %: above ${MOST.C} % it is cast iron and no longer steel; was 0.${`${value}`.replace('.', '')} meant?`,
      })
    else if (value > MOST[element])
      problems.push({ field: key, says: `is ${value} %: no steel holds more than about ${MOST[element]} %` })
  }
  if (analysis.C === undefined)
    problems.push({ field: 'C', says: 'is missing: without carbon nothing can be said about hardening' })
  if (sum > 50)
    problems.push({ field: '', says: `the elements add up to ${Number(sum.toFixed(2))} %: more than half of a steel is iron` })
  return problems
}

/**
 * The steel of an analysis in weight per cent. Elements that are not named count as 0, with the usual incidental share as the upper end of
 * their range; named ones have the error of an analysis. Throws `ImpossibleAnalysis` when `analysisProblems` finds any.
 */
export function steelOfAnalysis(
  analysis: { readonly [Key in Element]?: number },
  options: { readonly grainSize?: number; readonly name?: string } = {},
): Steel {
  const problems = analysisProblems(analysis)
  if (problems.length > 0) throw new ImpossibleAnalysis(problems)
  const range = ELEMENTS.flatMap((element): (readonly [Element, readonly [number, number]])[] => {
    const value = analysis[element]
    const unnamed = UNNAMED[element]
    if (value === undefined) return unnamed === undefined ? [] : [[element, [0, unnamed]]]
    const [ofValue, least] = ERROR[element] ?? USUAL_ERROR
    const error = Math.max(ofValue * value, least)
    return [[element, [Math.max(0, value - error), value + error]]]
  })
  return {
    name: options.name ?? 'analysed steel',
    composition: compositionOf(analysis),
    range: Object.fromEntries(range) satisfies CompositionRange,
    grainSize: options.grainSize ?? 7,
  }
}
