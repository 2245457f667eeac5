import { useId } from 'preact/hooks'

interface ChoiceProps<Value extends string> {
  readonly name: string
  readonly nameHidden?: boolean
  readonly value: Value | undefined
  readonly values: readonly (readonly [value: Value, says: string])[]
  readonly onChosen: (value: Value) => void
}

/** One of a few, all in sight. */
export function Choice<Value extends string>({ name, nameHidden, value, values, onChosen }: ChoiceProps<Value>) {
  const group = useId()
  return (
    <fieldset class="choice">
      <legend class={nameHidden ? 'out-of-sight' : undefined}>{name}</legend>
      {values.map(([each, says]) => (
        <label key={each}>
          <input type="radio" name={group} value={each} checked={each === value} onChange={() => onChosen(each)} />
          {says}
        </label>
      ))}
    </fieldset>
  )
}
