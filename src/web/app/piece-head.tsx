import type { ComponentChildren } from 'preact'
import { useEffect } from 'preact/hooks'
import type { Bench } from '#web/bench/bench.ts'
import { OutlookWord } from '#web/forecast/outlook-word.tsx'

interface PieceHeadProps {
  readonly bench: Bench
  readonly children: ComponentChildren
}

/** The name of the piece, where its forecast stands, undo and redo. */
export function PieceHead({ bench, children }: PieceHeadProps) {
  const undoSays = bench.undoSays.value
  const redoSays = bench.redoSays.value
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return
      const key = event.key.toLowerCase()
      if (key === 'z' && !event.shiftKey) bench.undo()
      else if (key === 'y' || (key === 'z' && event.shiftKey)) bench.redo()
      else return
      event.preventDefault()
    }
    addEventListener('keydown', onKey)
    return () => removeEventListener('keydown', onKey)
  }, [bench])
  return (
    <div class="piece-head">
      <h1 class="out-of-sight">{bench.job.value.piece ?? 'A piece without a name'}</h1>
      <input
        class="piece-name"
        aria-label="Name of the piece"
        value={bench.job.value.piece ?? ''}
        onChange={(event) => {
          const piece = event.currentTarget.value.trim()
          bench.edit('name', ({ piece: _, ...job }) => (piece === '' ? job : { piece, ...job }))
        }}
      />
      <OutlookWord bench={bench} />
      <div class="piece-tools">
        <button type="button" class="button quiet" disabled={undoSays === undefined} onClick={bench.undo} title={undoSays}>
          Undo
          {undoSays !== undefined && <span class="out-of-sight">: {undoSays}</span>}
        </button>
        <button type="button" class="button quiet" disabled={redoSays === undefined} onClick={bench.redo} title={redoSays}>
          Redo
          {redoSays !== undefined && <span class="out-of-sight">: {redoSays}</span>}
        </button>
        {children}
      </div>
    </div>
  )
}

/** In a text field undo belongs to the typing. */
function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement ? target.type === 'text' : target instanceof HTMLTextAreaElement
}
