import '#web/look/entries.css'
import './proof-place.css'
import type { Check } from '#report/validation-record.ts'
import type { Bench } from '#web/bench/bench.ts'
import { checkIn } from './check-in-units.ts'
import { CheckView } from './check-view.tsx'
import { MemoryView } from './memory-view.tsx'
import { MEMORY, RECORD } from './proof-record.ts'
import { ReachTable } from './reach-table.tsx'

const PARTS: readonly { readonly name: string; readonly says: string; readonly which: (check: Check) => boolean }[] = [
  {
    name: 'Held to published figures',
    says: 'Each mark is a published figure: across as published, upward as forecast. On the slanting line they agree. The thin strokes are the bands; a heavier mark lies outside its own.',
    which: ({ committed, arithmetic }) => committed && !arithmetic,
  },
  {
    name: 'Held to figures that may not be passed on',
    says: 'Measured sets that are free for checking only. What is kept of them is how far off the forecast was.',
    which: ({ committed }) => !committed,
  },
  {
    name: 'Held to its own formulas',
    says: 'That a formula or a table is worked out as it is printed. It does not say how right the formula is.',
    which: ({ committed, arithmetic }) => committed && arithmetic,
  },
]

/** How far to trust the figures: every check with its source, what is missed and why, and all that is from memory. */
export function ProofPlace({ bench }: { readonly bench: Bench }) {
  const units = bench.device.units.value
  const fromMemory = MEMORY.reduce((sum, { figures }) => sum + figures.length, 0)
  return (
    <div class="place proof-place">
      <h1>How far to trust the figures</h1>
      <p>
        The forecast was held to what is published: how far it is off on average, what was aimed at, and how many of the published
        figures lie in the band that it gives. A new edition that does worse is not let out. Your own steel, fire and oil are none
        of these: try a scrap piece and file it.
      </p>
      <ReachTable record={RECORD} units={units} />
      {PARTS.map(({ name, says, which }) => (
        <div key={name} class="proof-part">
          <h2>{name}</h2>
          <p>{says}</p>
          {RECORD.checks.filter(which).map((check) => (
            <CheckView key={check.id} check={checkIn(check, units)} />
          ))}
        </div>
      ))}
      <div class="proof-part">
        <h2>From memory</h2>
        <p>
          {fromMemory} figures that somebody recalled from a book without opening it, or that rest on common practice alone. They
          wait to be replaced, one by one.
        </p>
        {MEMORY.map((table) => (
          <MemoryView key={table.name} table={table} />
        ))}
      </div>
    </div>
  )
}
