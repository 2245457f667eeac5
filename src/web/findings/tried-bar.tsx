import './findings.css'
import { useEffect, useRef } from 'preact/hooks'
import type { Bench } from '#web/bench/bench.ts'
import { DiffWords } from '#web/treatment/diff-words.tsx'
import { turnsOf } from '#web/treatment/turns.ts'
import { keepTrial, openTrial, takeBackTrial, trialOutcome } from './trial.ts'

/** What is being tried, what it comes to, and the choice to keep it or to take it back. */
export function TriedBar({ bench }: { readonly bench: Bench }) {
  // What was before a trial is known only to who has followed the answers from the start.
  turnsOf(bench)
  const trial = openTrial(bench).value
  const bar = useRef<HTMLElement>(null)
  useEffect(() => {
    if (trial !== undefined) bar.current?.focus({ preventScroll: true })
  }, [trial])
  if (trial === undefined) return null
  // The bar goes, and the focus with it: back to what was found.
  const leave = (choice: (of: Bench) => void): void => {
    choice(bench)
    document.querySelector<HTMLElement>('.flag, .finding-touch')?.focus({ preventScroll: true })
  }
  const outcome = trialOutcome(bench, trial)
  const problems = bench.outlook.problems.value
  return (
    <section class="tried-bar" aria-label="Tried" ref={bar} tabIndex={-1}>
      <div class="tried-says" role="status">
        <p>
          <strong>Tried:</strong> {trial.says}
        </p>
        {problems.length > 0 ? (
          <p>It cannot be done so: {problems[0]?.says}</p>
        ) : outcome === undefined ? (
          <p class="soft">Working out what it comes to ...</p>
        ) : (
          <>
            {outcome.rough && <p class="soft">At a first look:</p>}
            <p class="strong">{outcome.gone ? 'What was found is gone.' : `Still there: ${trial.finding.says}`}</p>
            <DiffWords
              diff={{ ...outcome.diff, lost: outcome.diff.lost.filter(({ id }) => id !== trial.finding.id) }}
              rough={outcome.rough}
            />
          </>
        )}
      </div>
      <div class="tried-choice">
        <button type="button" class="button main" onClick={() => leave(keepTrial)}>
          Keep it
        </button>
        <button type="button" class="button" onClick={() => leave(takeBackTrial)}>
          Take it back
        </button>
      </div>
    </section>
  )
}
