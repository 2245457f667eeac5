import { type Signal, signal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { NamedSteel } from '#contract/steel-names.ts'
import type { Bench } from '#web/bench/bench.ts'

/** The list does not change while the page is open: it is asked for once. */
const known: Signal<readonly string[]> = signal([])

/** Names of steels to choose from: of each its own name, then the others it answers to. */
export function useSteelNames(bench: Bench): readonly string[] {
  useEffect(() => {
    if (known.value.length > 0) return
    bench.crew.ask('steels', []).answer.then(
      (steels) => {
        known.value = namesToChoose(steels)
      },
      (error: unknown) => console.error(error),
    )
  }, [bench])
  return known.value
}

export function namesToChoose(steels: readonly NamedSteel[]): string[] {
  return [...new Set([...steels.map(({ name }) => name), ...steels.flatMap(({ also }) => also)])]
}
