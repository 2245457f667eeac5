import './findings.css'
import { useEffect } from 'preact/hooks'
import type { Bench } from '#web/bench/bench.ts'
import { SeverityMark } from '#web/look/severity-mark.tsx'
import { placedFindings } from './finding-places.ts'
import { FindingWords } from './finding-words.tsx'
import { followFindings } from './follow.ts'

/** Everything that was found, the gravest first, in full. Touching one marks it on the drawing. */
export function FindingsList({ bench }: { readonly bench: Bench }) {
  useEffect(() => followFindings(bench), [bench])
  const forecast = bench.outlook.answered.value?.forecast
  if (forecast === undefined) return null
  const placed = placedFindings(forecast)
  const selection = bench.selection.value
  return (
    <section class="findings-list" data-stale={bench.outlook.stale.value}>
      <h2>What was found</h2>
      {placed.length === 0 ? (
        <p>Nothing stands against it. Do the steps as they are written, and prove it with a file.</p>
      ) : (
        <ol>
          {placed.map(({ finding, index }) => {
            const touched = selection?.kind === 'finding' && selection.index === index
            return (
              <li key={index} class={finding.severity} data-touched={touched}>
                <button
                  type="button"
                  class="finding-touch"
                  aria-pressed={touched}
                  onClick={() => {
                    bench.selection.value = touched ? undefined : { kind: 'finding', index }
                  }}
                >
                  <SeverityMark severity={finding.severity} />
                  <span class="strong">{finding.says}</span>
                </button>
                <FindingWords bench={bench} finding={finding} forecast={forecast} withoutSays />
              </li>
            )
          })}
        </ol>
      )}
    </section>
  )
}
