import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'

interface QuantityFieldProps {
  readonly name: string
  /** As typed. */
  readonly value: string
  /** Told when the typing is over: Enter, Tab or a tap elsewhere. */
  readonly onTyped: (value: string) => void
  /** Told while typing, to follow along. */
  readonly onTyping?: (value: string) => void
  /** One step up (+1) or down (-1) with the arrow keys; gives what then stands in the field. */
  readonly stepped?: (value: string, direction: 1 | -1) => string | undefined
  /** What is wrong with it, and the mend. */
  readonly problem?: string | undefined
  readonly hint?: string
  readonly nameHidden?: boolean
  readonly list?: readonly string[]
}

/** A quantity with its unit, shown as it was typed. Escape puts back what stood there. */
export function QuantityField({ name, value, onTyped, onTyping, stepped, problem, hint, nameHidden, list }: QuantityFieldProps) {
  const id = useId()
  const draft = useSignal<string | undefined>(undefined)
  const done = (): void => {
    const typed = draft.value
    draft.value = undefined
    if (typed !== undefined && typed !== value) onTyped(typed)
  }
  return (
    <div class="field">
      <label class={nameHidden ? 'out-of-sight' : 'name'} for={id}>
        {name}
      </label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        spellcheck={false}
        value={draft.value ?? value}
        aria-invalid={problem === undefined ? undefined : 'true'}
        aria-describedby={problem === undefined && hint === undefined ? undefined : `${id}-says`}
        list={list === undefined ? undefined : `${id}-list`}
        onInput={(event) => {
          draft.value = event.currentTarget.value
          onTyping?.(event.currentTarget.value)
        }}
        onChange={done}
        onBlur={done}
        onKeyDown={(event) => {
          if (event.key === 'Enter') done()
          if (event.key === 'Escape' && draft.value !== undefined) {
            draft.value = undefined
            event.stopPropagation()
          }
          if ((event.key === 'ArrowUp' || event.key === 'ArrowDown') && stepped !== undefined) {
            const next = stepped(draft.value ?? value, event.key === 'ArrowUp' ? 1 : -1)
            if (next === undefined) return
            event.preventDefault()
            draft.value = undefined
            onTyped(next)
          }
        }}
      />
      {list !== undefined && (
        <datalist id={`${id}-list`}>
          {list.map((each) => (
            <option key={each} value={each} />
          ))}
        </datalist>
      )}
      {problem !== undefined ? (
        <span class="problem" id={`${id}-says`}>
          {problem}
        </span>
      ) : (
        hint !== undefined && (
          <span class="soft" id={`${id}-says`}>
            {hint}
          </span>
        )
      )}
    </div>
  )
}
