import { type ReadonlySignal, signal } from '@preact/signals'

/** What a browser that can install pages fires; not yet in the platform's own types. */
interface InstallAsk extends Event {
  prompt(): Promise<{ readonly outcome: 'accepted' | 'dismissed' }>
}

const asked = signal<InstallAsk | undefined>()

// Fired once, soon after the page opens: whoever listens later has missed it.
addEventListener('beforeinstallprompt', (event) => {
  event.preventDefault()
  asked.value = event as InstallAsk
})
addEventListener('appinstalled', () => {
  asked.value = undefined
})

/** True while this browser would install the page if asked. */
export const canInstall: ReadonlySignal<InstallAsk | undefined> = asked

/** Asks the browser to install the page; it asks its user. */
export async function install(): Promise<void> {
  const ask = asked.value
  // It answers once.
  asked.value = undefined
  await ask?.prompt()
}
