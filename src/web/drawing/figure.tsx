import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'

interface FigureInputProps {
  /** As it stands. */
  readonly typed: string
  /** What it is, for those who do not see where it stands. */
  readonly says: string
  readonly onTyped: (typed: string) => void
  readonly onClose: () => void
}

interface FigureProps extends FigureInputProps {
  /** As it stands beside the piece, with its sign. */
  readonly shown: string
  readonly open: boolean
  readonly onOpen: () => void
}

/** A figure of the drawing: touched, it can be typed over. */
export function Figure({ shown, open, onOpen, ...rest }: FigureProps) {
  if (open) return <FigureInput {...rest} />
  return (
    <button type="button" class="drawing-figure" aria-label={`${rest.says}, ${rest.typed}`} tabIndex={-1} onClick={onOpen}>
      {shown}
    </button>
  )
}

/** The field that stands in for a figure while it is typed over. Enter keeps what was typed, Escape what stood there. */
export function FigureInput({ typed, says, onTyped, onClose }: FigureInputProps) {
  const draft = useSignal(typed)
  const input = useRef<HTMLInputElement>(null)
  const closed = useRef(false)
  useEffect(() => {
    input.current?.focus()
    input.current?.select()
  }, [])
  // Taking the field away takes the focus from it, which is no typing.
  const done = (keep: boolean): void => {
    if (closed.current) return
    closed.current = true
    const text = draft.value.trim()
    if (keep && text !== '' && text !== typed) onTyped(text)
    onClose()
  }
  return (
    <input
      ref={input}
      class="drawing-figure-typed"
      type="text"
      aria-label={says}
      autocomplete="off"
      spellcheck={false}
      value={draft.value}
      size={Math.max(8, draft.value.length)}
      onInput={(event) => {
        draft.value = event.currentTarget.value
      }}
      onBlur={() => done(true)}
      onKeyDown={(event) => {
        event.stopPropagation()
        if (event.key === 'Enter') done(true)
        if (event.key === 'Escape') done(false)
      }}
    />
  )
}
