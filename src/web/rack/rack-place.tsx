import './rack-place.css'
import '#web/look/entries.css'
import { useSignal } from '@preact/signals'
import { useLocation } from 'preact-iso'
import type { Bench } from '#web/bench/bench.ts'
import { QuantityField } from '#web/look/quantity-field.tsx'
import type { Bar } from '#web/shelf/shelf.ts'
import { useSteelNames } from '#web/steel/steel-names.ts'
import { steelText, steelTyped } from '#web/steel/steel-text.ts'

const FIELDS = [
  ['name', 'Called', 'long round, off-cut, drill rod'],
  ['section', 'Section', '7/8 in round'],
  ['length', 'Length left', '400 mm'],
  ['note', 'Noted', 'where it came from, paint on its end'],
] as const

/** The bars at hand: what they are believed to be, and how much is left. */
export function RackPlace({ bench }: { readonly bench: Bench }) {
  const bars = bench.bars.value
  const names = useSteelNames(bench)
  const away = useSignal<Bar | undefined>(undefined)
  return (
    <div class="place">
      <h1>The rack</h1>
      <p>The bars at hand. A piece can take its steel from here.</p>
      {away.value !== undefined && (
        <div class="notice" role="status">
          <p>Put away: {away.value.name}.</p>
          <button
            type="button"
            class="button"
            onClick={() => {
              if (away.value !== undefined) bench.keepBar(away.value)
              away.value = undefined
            }}
          >
            Take back
          </button>
        </div>
      )}
      <ul class="entries">
        {bars.map((bar) => (
          <li key={bar.id} class="entry" aria-label={bar.name}>
            <div class="entry-fields">
              {FIELDS.slice(0, 1).map(([key, says, hint]) => (
                <BarField key={key} bench={bench} bar={bar} field={key} says={says} hint={hint} />
              ))}
              <QuantityField
                name="Steel"
                value={steelText(bar.steel)}
                onTyped={(typed) => bench.keepBar({ ...bar, steel: steelTyped(typed) })}
                list={names}
                hint="a grade, a trade name, or unknown"
              />
              {FIELDS.slice(1).map(([key, says, hint]) => (
                <BarField key={key} bench={bench} bar={bar} field={key} says={says} hint={hint} />
              ))}
            </div>
            <div class="rack-does">
              <UseBar bench={bench} bar={bar} />
              <button
                type="button"
                class="button quiet"
                onClick={() => {
                  away.value = bar
                  bench.removeBar(bar.id)
                }}
              >
                Put away<span class="out-of-sight"> {bar.name}</span>
              </button>
            </div>
          </li>
        ))}
      </ul>
      {bars.length === 0 && <p>The rack is empty.</p>}
      <div>
        <button
          type="button"
          class="button"
          onClick={() => bench.keepBar({ name: 'new bar', steel: { grade: '1045' }, section: '', length: '', note: '' })}
        >
          Add a bar
        </button>
      </div>
    </div>
  )
}

interface BarFieldProps {
  readonly bench: Bench
  readonly bar: Bar
  readonly field: 'name' | 'section' | 'length' | 'note'
  readonly says: string
  readonly hint: string
}

function BarField({ bench, bar, field, says, hint }: BarFieldProps) {
  return (
    <QuantityField
      name={says}
      value={bar[field] ?? ''}
      onTyped={(typed) => bench.keepBar({ ...bar, [field]: typed })}
      hint={hint}
    />
  )
}

/** Puts the bar's steel into the piece in hand. */
function UseBar({ bench, bar }: { readonly bench: Bench; readonly bar: Bar }) {
  const { route } = useLocation()
  const piece = bench.piece.value
  if (piece === undefined) return null
  return (
    <button
      type="button"
      class="button"
      onClick={() => {
        bench.edit(`steel from ${bar.name}`, (job) => ({ ...job, steel: bar.steel }))
        route(`/piece/${piece.id}/steel`)
      }}
    >
      Take for {bench.job.value.piece ?? 'the piece in hand'}
    </button>
  )
}
