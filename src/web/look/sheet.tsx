import type { ComponentChildren } from 'preact'
import { useEffect, useId, useRef } from 'preact/hooks'

interface SheetProps {
  readonly title: string
  /** Things stand side by side on it: it takes the width that there is. */
  readonly wide?: boolean
  readonly onClose: () => void
  readonly children: ComponentChildren
}

/** A sheet laid over the page; Escape or its button takes it away, and the focus goes back where it was. */
export function Sheet({ title, wide, onClose, children }: SheetProps) {
  const sheet = useRef<HTMLDialogElement>(null)
  const id = useId()
  useEffect(() => {
    sheet.current?.showModal()
  }, [])
  return (
    <dialog class={wide === true ? 'sheet wide' : 'sheet'} ref={sheet} aria-labelledby={id} onClose={onClose}>
      <div class="sheet-head">
        <h2 id={id}>{title}</h2>
        <button type="button" class="button quiet" onClick={() => sheet.current?.close()}>
          Close
        </button>
      </div>
      <div class="sheet-body">{children}</div>
    </dialog>
  )
}
