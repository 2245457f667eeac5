import type { Bench } from '#web/bench/bench.ts'

export function TreatmentSide({ bench: _ }: { readonly bench: Bench }) {
  return <div class="soft" />
}
