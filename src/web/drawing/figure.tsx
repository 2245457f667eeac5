import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'

interface FigureProps {
  /** As it stands beside the piece, and as it is typed over. */
  readonly shown: string
  readonly typed: string
  /** What it is, for those who do not see where it stands. */
  readonly says: string
  readonly open: boolean
  readonly onOpen: () => void
  readonly onTyped: (typed: string) => void
  readonly onClose: () => void
}

/** A figure of the drawing: touched, it can be typed over. Enter keeps what was typed, Escape what stood there. */
export function Figure({ shown, typed, says, open, onOpen, onTyped, onClose }: FigureProps) {
  const draft = useSignal(typed)
  const input = useRef<HTMLInputElement>(null)
  const closed = useRef(false)
  useEffect(() => {
    if (!open) return
    closed.current = false
    draft.value = typed
    input.current?.focus()
    input.current?.select()
  }, [open, typed, draft])
  if (!open)
    return (
      <button type="button" class="drawing-figure" aria-label={`${says}, ${typed}`} tabIndex={-1} onClick={onOpen}>
        {shown}
      </button>
    )
  // Taking the field away takes the focus from it, which is no typing.
  const done = (keep: boolean): void => {
    if (closed.current) return
    closed.current = true
    if (keep && draft.value.trim() !== typed) onTyped(draft.value.trim())
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
