import './steel-side.css'
import { useSignal } from '@preact/signals'
import type { SteelAnswer } from '#contract/answers.ts'
import type { Bench } from '#web/bench/bench.ts'
import { QuantityField } from '#web/look/quantity-field.tsx'
import { useSteelAsked } from './steel-asked.ts'
import { SteelBeside } from './steel-beside.tsx'
import { analysisText, criticalFacts, type Fact, hardnessFacts, temperTable, treatmentFacts } from './steel-facts.ts'
import { useSteelNames } from './steel-names.ts'
import { steelText, steelTyped } from './steel-text.ts'

/** What the piece is made of: chosen by any name, from the rack, by analysis, or unknown; and what is known of it, from where. */
export function SteelSide({ bench }: { readonly bench: Bench }) {
  const job = bench.job.value
  const names = useSteelNames(bench)
  const asked = useSteelAsked(bench, job.steel).value
  const problem = bench.outlook.problems.value.find(({ field }) => field.startsWith('steel'))
  const bars = bench.bars.value
  const choose = (typed: string): void => bench.edit('steel', (now) => ({ ...now, steel: steelTyped(typed) }))
  return (
    <div class="steel-side">
      <QuantityField
        name="Steel"
        value={steelText(job.steel)}
        onTyped={choose}
        list={names}
        problem={job.steel?.unknown === undefined ? problem?.says : undefined}
        hint="a grade or trade name, an analysis (C 0.40, Mn 0.85), or unknown"
      />
      {bars.length > 0 && (
        <div class="steel-rack">
          <p class="soft">From the rack</p>
          {bars.map((bar) => (
            <button
              type="button"
              key={bar.id}
              class="button"
              onClick={() => bench.edit(`steel from ${bar.name}`, (now) => ({ ...now, steel: bar.steel }))}
            >
              {bar.name}: {steelText(bar.steel)}
            </button>
          ))}
        </div>
      )}
      {job.steel?.unknown !== undefined && <UnknownBar bench={bench} />}
      {asked.kind === 'asking' && <p role="status">Looking it up ...</p>}
      {asked.kind === 'failed' && (
        <div class="notice loud">
          <p>The steel could not be looked up.</p>
          <button type="button" class="button" onClick={asked.again}>
            Try again
          </button>
        </div>
      )}
      {asked.kind === 'known' && <SteelKnown bench={bench} steel={asked.steel} />}
      {asked.kind === 'known' && <SteelBeside bench={bench} first={asked.steel} names={names} />}
    </div>
  )
}

/** A bar that nobody knows has no forecast; a coupon says more than a guess. */
function UnknownBar({ bench }: { readonly bench: Bench }) {
  return (
    <div class="notice">
      <p class="strong">A bar of unknown steel has no forecast.</p>
      <p>
        Harden a slip of it, as thick as the tool, in oil first, and try it with files. To see what would come of the piece if it
        were a steel you suspect, take that one for now and mark the bar "believed, not proved".
      </p>
      <button type="button" class="button" onClick={() => bench.edit('steel', (now) => ({ ...now, steel: { grade: '1045' } }))}>
        Take it as 1045 for now
      </button>
    </div>
  )
}

function SteelKnown({ bench, steel }: { readonly bench: Bench; readonly steel: SteelAnswer }) {
  const units = bench.device.units.value
  return (
    <div class="steel-known">
      <h2>{steel.name}</h2>
      <p>{analysisText(steel)} per cent by weight, the rest iron</p>
      {steel.alsoKnownAs.length > 0 && <AlsoKnownAs steel={steel} />}
      {steel.warnings.length > 0 && (
        <ul class="steel-warnings">
          {steel.warnings.map((says) => (
            <li key={says}>{says}</li>
          ))}
        </ul>
      )}
      <FactTable title="How it is treated" facts={treatmentFacts(steel, units)} />
      <p>{steel.treatment.soak}</p>
      {steel.treatment.baths.length > 0 && <p>Baths: {steel.treatment.baths.join('; ')}.</p>}
      <p>{steel.treatment.cycles}</p>
      <FactTable title="What it can come to" facts={hardnessFacts(steel, units)} />
      <FactTable title="Where it changes" facts={criticalFacts(steel, units)} />
      <section>
        <h3>Hardness after tempering</h3>
        <table class="steel-table">
          <thead>
            <tr>
              <th scope="col">Temper</th>
              <th scope="col">HRC</th>
              <th scope="col">nine in ten</th>
            </tr>
          </thead>
          <tbody>
            {temperTable(steel, units).map(([at, hrc, band]) => (
              <tr key={at}>
                <th scope="row">{at}</th>
                <td class="strong">{hrc}</td>
                <td>{band}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p class="soft">
          {steel.temper[0] === undefined ? '' : `${steel.temper[0].hold_h} h each. ${steel.temper[0].hardness_HRC.source}`}
        </p>
      </section>
      {steel.clashes.length > 0 && (
        <section>
          <h3>Where sources clash</h3>
          {steel.clashes.map(({ what, figures }) => (
            <div key={what}>
              <p class="strong">{what}</p>
              <ul>
                {figures.map(({ says, source }) => (
                  <li key={says + source}>
                    {says} <span class="soft">({source})</span>
                  </li>
                ))}
              </ul>
            </div>
          ))}
        </section>
      )}
    </div>
  )
}

const FEW_NAMES = 6

function AlsoKnownAs({ steel }: { readonly steel: SteelAnswer }) {
  const all = useSignal(false)
  const names = steel.alsoKnownAs.map(({ name, near }) => (near ? `near ${name}` : name))
  return (
    <p>
      Also called {(all.value ? names : names.slice(0, FEW_NAMES)).join(', ')}
      {names.length > FEW_NAMES && !all.value && (
        <button type="button" class="button quiet small" onClick={() => (all.value = true)}>
          and {names.length - FEW_NAMES} more
        </button>
      )}
    </p>
  )
}

function FactTable({
  title,
  facts,
}: {
  readonly title: string
  readonly facts: readonly (Fact & { readonly others?: readonly Fact[] })[]
}) {
  return (
    <section>
      <h3>{title}</h3>
      <dl class="steel-facts">
        {facts.map(({ what, figure, band, from, others }) => (
          <div key={what} class="steel-fact">
            <dt>{what}</dt>
            <dd>
              <span class="strong">{figure}</span>
              {band !== undefined && <span class="soft"> ({band})</span>}
              <details>
                <summary>{others !== undefined && others.length > 0 ? 'where from; sources differ' : 'where from'}</summary>
                <p class="soft">{from}</p>
                {others?.map((other) => (
                  <p key={other.figure + other.from} class="soft">
                    <span class="strong">{other.figure}</span> {other.what} {other.from}
                  </p>
                ))}
              </details>
            </dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
