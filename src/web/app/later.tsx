import { signal } from '@preact/signals'
import type { ComponentType } from 'preact'
import { useEffect } from 'preact/hooks'

type Part<Props> = { readonly view: ComponentType<Props> } | { readonly failed: true }

const waiting = new Set<() => Promise<void>>()

/**
 * A view that is not needed for the first look: it is loaded when it is first shown, or when the page has nothing else to do. Its place
 * is held by a box of the class `holds`.
 */
export function later<Props extends object>(load: () => Promise<ComponentType<Props>>, holds = 'opening'): ComponentType<Props> {
  const part = signal<Part<Props> | undefined>()
  async function begin(): Promise<void> {
    waiting.delete(begin)
    try {
      part.value = { view: await load() }
    } catch (error) {
      // The server is gone or has a newer edition, and the page is not yet kept on this device.
      console.error(error)
      part.value = { failed: true }
    }
  }
  waiting.add(begin)
  return function Later(props: Props) {
    const now = part.value
    useEffect(() => {
      if (waiting.has(begin)) void begin()
    }, [])
    if (now === undefined) return <p class={`${holds} soft`}>Fetching this part ...</p>
    if ('view' in now) return <now.view {...props} />
    return (
      <div class={`${holds} notice`} role="alert">
        <p class="strong">This part of the page could not be fetched.</p>
        <p>The server that handed the page out does not answer, or has a newer one. What is on the bench is kept.</p>
        <button type="button" class="button" onClick={() => location.reload()}>
          Open the page anew
        </button>
      </div>
    )
  }
}

/** Loads every part that is still wanting, and what these want, one after the other: so that going to it later is at once. */
export async function loadTheRest(): Promise<void> {
  for (const begin of waiting) await begin()
}
