import { struckWord } from '#contract/struck-tool.ts'
import { lengthText } from '#units/length.ts'
import type { Bench } from '#web/bench/bench.ts'
import type { JobText } from '#web/job/job-text.ts'
import { withAdded } from '#web/job/zone-edits.ts'
import { Choice } from '#web/look/choice.tsx'
import { SectionFold } from '#web/outcome/outcome-views.ts'

/** Whether a hammer meets the other end: what was answered, or what its name lets one think. */
export function struckAs({ struck, piece }: JobText): { readonly answered?: boolean; readonly word?: string } {
  const word = piece === undefined ? undefined : struckWord(piece)
  return { ...(struck === undefined ? {} : { answered: struck }), ...(word === undefined ? {} : { word }) }
}

/** A struck end that is too hard throws splinters: it is asked about, never passed over. */
export function StruckQuestion({ bench }: { readonly bench: Bench }) {
  const job = bench.job.value
  const { answered, word } = struckAs(job)
  const forecast = bench.outlook.answered.value?.forecast
  const assumed = forecast?.zones.find((zone) => zone.assumed)
  const units = bench.device.units.value
  const isStruck = answered ?? word !== undefined
  return (
    <section class={answered === undefined && word !== undefined ? 'struck asks' : 'struck'}>
      <Choice
        name="Does a hammer strike its other end?"
        value={answered === undefined ? undefined : answered ? 'yes' : 'no'}
        values={[
          ['yes', 'Yes, it is struck'],
          ['no', 'No'],
        ]}
        onChosen={(chosen) =>
          bench.edit(chosen === 'yes' ? 'it is struck' : 'it is not struck', (now) => ({ ...now, struck: chosen === 'yes' }))
        }
      />
      {answered === undefined && (
        <p>
          {word === undefined
            ? 'Not answered: taken as not struck.'
            : `Not answered: taken as struck, since "${word}" stands in its name.`}
        </p>
      )}
      {isStruck && (
        <p class="soft">
          A struck end as hard as the hammer throws splinters. Kept softer it only mushrooms, and that is ground off. Eye
          protection for you and for those near, all the same.
        </p>
      )}
      {isStruck && assumed !== undefined && (
        <p>
          Nobody has set an aim there, so it is held to: {assumed.aim}.{' '}
          <button
            type="button"
            class="button"
            onClick={() => {
              const { job: next, index } = withAdded(job, {
                name: assumed.name,
                from: lengthText(Number((assumed.from_mm / 1000).toFixed(4)), units),
                to: lengthText(Number((assumed.to_mm / 1000).toFixed(7)), units),
                aim: assumed.aim,
              })
              bench.edit('a zone for the struck end', () => next)
              bench.selection.value = { kind: 'zone', index }
            }}
          >
            Make it a zone of mine
          </button>
        </p>
      )}
      {isStruck && forecast !== undefined && assumed !== undefined && (
        <SectionFold forecast={forecast} within={assumed} units={units} />
      )}
    </section>
  )
}
