import type { Bench } from '#web/bench/bench.ts'

/** Storage is full or refused: said at once and for as long as it is so. */
export function TroubleNotice({ bench }: { readonly bench: Bench }) {
  const trouble = bench.trouble.value
  if (trouble === undefined) return null
  return (
    <div class="notice loud" role="alert">
      <p class="strong">{trouble.says}</p>
      <p>{trouble.mend}</p>
    </div>
  )
}
