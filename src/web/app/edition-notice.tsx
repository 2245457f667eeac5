import type { Editions } from './editions.ts'

/** A newer edition waits for the smith; that the page works without network is said once. */
export function EditionNotice({ editions }: { readonly editions: Editions }) {
  const open = editions.newer.value
  if (open !== undefined)
    return (
      <div class="edition" role="status">
        <p>A newer Quenchwright is ready. What is on the bench stays.</p>
        <button type="button" class="button" onClick={open}>
          Use it
        </button>
        <button type="button" class="button quiet" onClick={editions.said}>
          Later
        </button>
      </div>
    )
  if (!editions.offlineReady.value) return null
  return (
    <div class="edition" role="status">
      <p>All of Quenchwright is on this device now: it works without network.</p>
      <button type="button" class="button quiet" onClick={editions.said}>
        Good
      </button>
    </div>
  )
}
