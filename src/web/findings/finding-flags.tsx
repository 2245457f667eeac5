import type { Bench } from '#web/bench/bench.ts'
import type { Heights } from '#web/drawing/heights.ts'
export function FindingFlags({ bench: _, heights: __ }: { readonly bench: Bench; readonly heights: Heights }) {
  return <div class="soft" />
}
