import './carry.css'
import { useSignal } from '@preact/signals'
import { useEffect, useId, useRef } from 'preact/hooks'
import type { Bench } from '#web/bench/bench.ts'
import { carryOf } from './carry.ts'
import { canInstall, install } from './installing.ts'
import { OpenFileButton } from './open-file-button.tsx'

/** How a piece leaves the bench and comes to it: file, link, and the page itself onto the device. */
export function CarryMenu({ bench }: { readonly bench: Bench }) {
  const open = useSignal(false)
  const box = useRef<HTMLDivElement>(null)
  const opener = useRef<HTMLButtonElement>(null)
  const id = useId()
  const carry = carryOf(bench)
  const close = (): void => {
    open.value = false
  }
  useEffect(() => {
    if (!open.value) return
    const outside = (event: Event): void => {
      if (event.target instanceof Node && box.current?.contains(event.target) !== true) close()
    }
    addEventListener('pointerdown', outside)
    addEventListener('focusin', outside)
    return () => {
      removeEventListener('pointerdown', outside)
      removeEventListener('focusin', outside)
    }
  }, [open.value])
  const does =
    (what: () => Promise<void>): (() => void) =>
    () => {
      close()
      opener.current?.focus()
      void what()
    }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape is heard from whatever has the focus in it
    <div
      class="carry"
      ref={box}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || !open.value) return
        event.stopPropagation()
        close()
        opener.current?.focus()
      }}
    >
      <button
        type="button"
        class="button quiet"
        ref={opener}
        aria-expanded={open.value}
        aria-controls={id}
        onClick={() => {
          open.value = !open.value
        }}
      >
        File and link
      </button>
      {open.value && (
        <div class="carry-list" id={id}>
          <button type="button" class="button quiet" onClick={does(carry.saveFile)}>
            Save the job file
          </button>
          <OpenFileButton bench={bench} class="button quiet" onPicked={close} />
          <button type="button" class="button quiet" onClick={does(carry.copyLink)}>
            Copy a link to this plan
          </button>
          {canInstall.value !== undefined && (
            <button type="button" class="button quiet" onClick={does(install)}>
              Install on this device
            </button>
          )}
        </div>
      )}
    </div>
  )
}
