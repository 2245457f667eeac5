import './field-choice.css'
import { type Bench, FIELDS, type Field } from '#web/bench/bench.ts'
import { Choice } from '#web/look/choice.tsx'
import { FieldLegend } from './field-legend.tsx'
import { FIELD_NAMES } from './field-words.ts'
import { useScreen } from './screen.ts'
import { STANDING_WORD, standingOf } from './standing.ts'

/** Below this a list that opens takes less room than six words side by side. */
const NARROW = '(max-width: 44rem)'

/** What the cut-away shows, and what its shades mean. */
export function FieldChoice({ bench }: { readonly bench: Bench }) {
  const narrow = useScreen(NARROW)
  const field = bench.field.value
  const answered = bench.outlook.answered.value
  const standing = standingOf(bench.outlook)
  const choose = (chosen: Field): void => {
    bench.field.value = chosen
  }
  return (
    <div class="field-choice">
      {narrow ? (
        <select
          aria-label="The cut shows"
          value={field}
          onChange={(event) => {
            const chosen = FIELDS.find((each) => each === event.currentTarget.value)
            if (chosen !== undefined) choose(chosen)
          }}
        >
          {FIELDS.map((each) => (
            <option key={each} value={each}>
              {FIELD_NAMES[each][0]}
            </option>
          ))}
        </select>
      ) : (
        <Choice
          name="The cut shows"
          nameHidden
          value={field}
          values={FIELDS.map((each) => [each, FIELD_NAMES[each][0]] as const)}
          onChosen={choose}
        />
      )}
      {answered !== undefined && (
        <FieldLegend
          picture={answered.picture}
          field={field}
          instantS={field === 'heat' ? bench.instantS.value : Number.POSITIVE_INFINITY}
          units={bench.device.units.value}
        />
      )}
      {STANDING_WORD[standing] !== '' && <span class="field-standing">{STANDING_WORD[standing]}</span>}
    </div>
  )
}
