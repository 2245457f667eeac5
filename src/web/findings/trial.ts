import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { Finding, Forecast } from '#contract/answers.ts'
import type { Bench } from '#web/bench/bench.ts'
import type { JobText } from '#web/job/job-text.ts'
import { type ForecastDiff, forecastDiff, stillThere } from '#web/treatment/forecast-diff.ts'
import { turnsOf } from '#web/treatment/turns.ts'
import { type Try, tried } from './tries.ts'

/** A remedy that has been tried: it stands in the document, and one undo takes it back. */
export interface Trial {
  readonly says: string
  readonly finding: Finding
  /** The forecast that raised it. */
  readonly of: Forecast
  readonly after: JobText
}

/** What a trial came to. */
export interface TrialOutcome {
  readonly gone: boolean
  readonly diff: ForecastDiff
}

const trials = new WeakMap<Bench, Signal<Trial | undefined>>()

function trialSignal(bench: Bench): Signal<Trial | undefined> {
  const known = trials.get(bench)
  if (known !== undefined) return known
  const made = signal<Trial | undefined>()
  trials.set(bench, made)
  return made
}

/** The trial that is open: as long as the document stands as the trial left it. Whoever works on has kept it. */
export function openTrial(bench: Bench): ReadonlySignal<Trial | undefined> {
  const trial = trialSignal(bench)
  return computed(() => (trial.value?.after === bench.job.value ? trial.value : undefined))
}

/** Puts a remedy in the document, as one step to undo. */
export function tryOut(bench: Bench, finding: Finding, one: Try): void {
  const full = turnsOf(bench).full.peek()
  const answered = full?.job === bench.composed.peek() ? full : bench.outlook.answered.peek()
  const before = bench.job.peek()
  const after = tried(before, bench.composed.peek(), one)
  if (answered === undefined || after === before) return
  bench.settle()
  bench.edit(`Try: ${one.says}`, () => after)
  trialSignal(bench).value = { says: one.says, finding, of: answered.forecast, after }
}

export function keepTrial(bench: Bench): void {
  trialSignal(bench).value = undefined
}

export function takeBackTrial(bench: Bench): void {
  if (openTrial(bench).peek() === undefined) return
  bench.undo()
  trialSignal(bench).value = undefined
}

/** What the trial came to, once the full answer to it is in. */
export function trialOutcome(bench: Bench, trial: Trial): TrialOutcome | undefined {
  const full = turnsOf(bench).full.value
  if (full === undefined || full.job !== bench.composed.value) return undefined
  return outcomeOf(trial, full.forecast)
}

/** The finding of the trial's forecast against the new one. A finding that was shown from a sketch is looked for by what it says it is. */
export function outcomeOf({ finding, of }: Pick<Trial, 'finding' | 'of'>, after: Forecast): TrialOutcome {
  const raised = of.findings.includes(finding) ? of : { ...of, findings: [finding] }
  return { gone: !stillThere(finding, raised, after), diff: forecastDiff(of, after) }
}
