import { useSignal } from '@preact/signals'
import type { Forecast, SteelAnswer } from '#contract/answers.ts'
import { bandText, hardnessText } from '#report/figure-text.ts'
import type { Bench } from '#web/bench/bench.ts'
import { chanceSays } from '#web/forecast/aims.ts'
import { QuantityField } from '#web/look/quantity-field.tsx'
import { isFault } from '#web/work/fault.ts'
import { type BesideRow, besideRows } from './beside-rows.ts'
import { useSteelAsked } from './steel-asked.ts'
import { steelText, steelTyped } from './steel-text.ts'

interface SteelBesideProps {
  readonly bench: Bench
  readonly first: SteelAnswer
  readonly names: readonly string[]
}

type Trial =
  | { readonly kind: 'working' }
  | { readonly kind: 'forecast'; readonly says: string; readonly forecast: Forecast; readonly job: string }
  | { readonly kind: 'says'; readonly says: string }

/** A second steel for the same piece: what is unlike in it, and what would come of the piece. */
export function SteelBeside({ bench, first, names }: SteelBesideProps) {
  const other = useSignal('')
  const trial = useSignal<Trial | undefined>(undefined)
  const steel = other.value === '' ? undefined : steelTyped(other.value)
  const asked = useSteelAsked(bench, steel).value
  const units = bench.device.units.value
  const here = bench.outlook.answered.value?.forecast

  const withTreatment = (): void => {
    if (steel === undefined) return
    trial.value = { kind: 'working' }
    const job = { ...bench.composed.value, steel }
    bench.crew.ask('forecast', [{ job, units, fineness: 'normal' }]).answer.then((reply) => {
      trial.value =
        reply.kind === 'answer'
          ? { kind: 'forecast', says: 'with the treatment as it stands', forecast: reply.forecast, job: other.value }
          : {
              kind: 'says',
              says: reply.kind === 'problems' ? (reply.problems[0]?.says ?? '') : 'The piece has no treatment yet.',
            }
    }, failed)
  }
  const withItsOwn = (): void => {
    if (steel === undefined) return
    trial.value = { kind: 'working' }
    const { process: _, ...rest } = bench.composed.value
    bench.crew.ask('routes', [{ job: { ...rest, steel }, units }]).answer.then((reply) => {
      if (isFault(reply)) trial.value = { kind: 'says', says: reply.problems[0]?.says ?? '' }
      else if (reply.routes[0] === undefined)
        trial.value = { kind: 'says', says: `No way to treat it here. ${reply.none?.because ?? ''}` }
      else
        trial.value = {
          kind: 'forecast',
          says: `treated its own way: ${reply.routes[0].says}`,
          forecast: reply.routes[0].forecast,
          job: other.value,
        }
    }, failed)
  }
  const failed = (error: unknown): void => {
    console.error(error)
    trial.value = { kind: 'says', says: 'It could not be worked out; try again.' }
  }

  return (
    <section class="steel-beside">
      <h3>Beside another steel</h3>
      <QuantityField
        name="Compare with"
        value={other.value}
        onTyped={(typed) => {
          other.value = typed.trim()
          trial.value = undefined
        }}
        list={names}
        problem={asked.kind === 'problems' ? asked.problems[0]?.says : undefined}
      />
      {asked.kind === 'known' && (
        <>
          <BesideTable rows={besideRows(first, asked.steel, units)} names={[first.name, asked.steel.name]} />
          <div class="steel-trials">
            <button type="button" class="button" onClick={withTreatment}>
              This piece in {steelText(steel)}
            </button>
            <button type="button" class="button" onClick={withItsOwn}>
              ... treated its own way
            </button>
          </div>
        </>
      )}
      {trial.value?.kind === 'working' && <p role="status">Working it out ...</p>}
      {trial.value?.kind === 'says' && <p role="status">{trial.value.says}</p>}
      {trial.value?.kind === 'forecast' && (
        <div role="status">
          <p>
            {trial.value.job}, {trial.value.says}:
          </p>
          <table class="steel-table">
            <thead>
              <tr>
                <th scope="col">Zone</th>
                <th scope="col">{first.name}</th>
                <th scope="col">{trial.value.job}</th>
              </tr>
            </thead>
            <tbody>
              {trial.value.forecast.zones.map((zone) => {
                const now = here?.zones.find(({ name }) => name === zone.name)
                return (
                  <tr key={zone.name}>
                    <th scope="row">{zone.name}</th>
                    <td>{now === undefined ? '' : zoneText(now)}</td>
                    <td>{zoneText(zone)}</td>
                  </tr>
                )
              })}
            </tbody>
          </table>
          <button
            type="button"
            class="button"
            onClick={() => {
              if (steel !== undefined) bench.edit('steel', (now) => ({ ...now, steel }))
              other.value = ''
              trial.value = undefined
            }}
          >
            Take {trial.value.job} for this piece
          </button>
        </div>
      )}
    </section>
  )
}

function zoneText({ tempered_HRC, chance }: Forecast['zones'][number]): string {
  return `${hardnessText(tempered_HRC)} (${bandText(tempered_HRC)}), ${chanceSays(chance)}`
}

function BesideTable({ rows, names }: { readonly rows: readonly BesideRow[]; readonly names: readonly [string, string] }) {
  return (
    <table class="steel-table">
      <thead>
        <tr>
          <td />
          <th scope="col">{names[0]}</th>
          <th scope="col">{names[1]}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ what, first, second }) => (
          <tr key={what}>
            <th scope="row">{what}</th>
            <td>{first}</td>
            <td>{second}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
