import { type ReadonlySignal, useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { SteelAnswer } from '#contract/answers.ts'
import type { Problem } from '#contract/problems.ts'
import type { Bench } from '#web/bench/bench.ts'
import type { SteelText } from '#web/job/job-text.ts'
import { isFault } from '#web/work/fault.ts'

export type SteelAsked =
  | { readonly kind: 'none' }
  | { readonly kind: 'asking' }
  | { readonly kind: 'known'; readonly steel: SteelAnswer }
  | { readonly kind: 'problems'; readonly problems: readonly Problem[] }
  | { readonly kind: 'failed'; readonly again: () => void }

/** All that is known of a steel, asked anew whenever it changes. */
export function useSteelAsked(bench: Bench, steel: SteelText | undefined): ReadonlySignal<SteelAsked> {
  const asked = useSignal<SteelAsked>({ kind: 'none' })
  const turn = useSignal(0)
  const key = JSON.stringify(steel)
  const round = turn.value
  useEffect(() => {
    // Read so that "again" asks anew.
    void round
    if (key === undefined || steel?.unknown !== undefined) {
      asked.value = { kind: 'none' }
      return undefined
    }
    asked.value = { kind: 'asking' }
    const question = bench.crew.ask('steel', [{ steel: JSON.parse(key) as SteelText, options: {} }])
    let wanted = true
    question.answer.then(
      (reply) => {
        if (wanted) asked.value = isFault(reply) ? reply : { kind: 'known', steel: reply }
      },
      (error: unknown) => {
        if (!wanted) return
        console.error(error)
        asked.value = { kind: 'failed', again: () => turn.value++ }
      },
    )
    return () => {
      wanted = false
    }
  }, [bench, key, asked, turn, round, steel?.unknown])
  return asked
}
