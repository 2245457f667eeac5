import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { Finding, Forecast } from '#contract/answers.ts'
import type { Bench } from '#web/bench/bench.ts'
import type { JobText } from '#web/job/job-text.ts'
import { type ForecastDiff, forecastDiff, stillThere } from '#web/treatment/forecast-diff.ts'
import { turnsOf } from '#web/treatment/turns.ts'
import { type Try, tried, trySays } from './tries.ts'

/** A remedy that has been tried: it stands in the document, and one undo takes it back. */
export interface Trial {
  readonly says: string
  readonly finding: Finding
  /** The forecast that raised it, and the composed document that it answers. */
  readonly of: Forecast
  readonly base: JobText
  readonly after: JobText
}

/** What a trial came to. */
export interface TrialOutcome {
  readonly gone: boolean
  readonly diff: ForecastDiff
  /** Told from a sketch: a first look. */
  readonly rough: boolean
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
  const base = bench.composed.peek()
  const after = tried(before, base, one)
  if (answered === undefined || after === before) return
  bench.settle()
  bench.edit(`Try: ${trySays(one)}`, () => after)
  trialSignal(bench).value = { says: trySays(one), finding, of: answered.forecast, base, after }
}

export function keepTrial(bench: Bench): void {
  trialSignal(bench).value = undefined
}

export function takeBackTrial(bench: Bench): void {
  if (openTrial(bench).peek() === undefined) return
  bench.undo()
  trialSignal(bench).value = undefined
}

/** What the trial came to: at a first look from sketches, then from the full answers. */
export function trialOutcome(bench: Bench, trial: Trial): TrialOutcome | undefined {
  const turns = turnsOf(bench)
  const turn = turns.turn.value
  const composed = bench.composed.value
  if (turn?.before.job === trial.base && turn.after.job === composed)
    return { ...outcomeOf({ finding: trial.finding, of: turn.before.forecast }, turn.after.forecast), rough: turn.rough }
  const full = turns.full.value
  return full?.job === composed ? { ...outcomeOf(trial, full.forecast), rough: true } : undefined
}

/** The finding of one forecast against the next. One that another forecast raised is looked for by what it says it is. */
export function outcomeOf({ finding, of }: Pick<Trial, 'finding' | 'of'>, after: Forecast): Omit<TrialOutcome, 'rough'> {
  const raised = of.findings.includes(finding) ? of : { ...of, findings: [finding] }
  return { gone: !stillThere(finding, raised, after), diff: forecastDiff(of, after) }
}
