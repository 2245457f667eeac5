import { type ReadonlySignal, signal } from '@preact/signals'

/** What is known of the page's own edition on this device. */
export interface Editions {
  /** Everything is on this device now: said once, when it first becomes so. */
  readonly offlineReady: ReadonlySignal<boolean>
  /** A newer edition waits; calling this opens it. Nothing is done before. */
  readonly newer: ReadonlySignal<(() => void) | undefined>
  /** Heard, and not to be said again: a newer edition is then opened with the next visit. */
  said(): void
}

/** How long the quiet word stands. */
const SAID_FOR_MS = 12_000
/** A page that stays open for days looks for a newer edition when it is looked at again, at most this often. */
const LOOK_EVERY_MS = 3_600_000

/** Registers the service worker, which keeps the page for use without network, once `after` has settled. */
export function keepEditions(after: Promise<void>): Editions {
  const offlineReady = signal(false)
  const newer = signal<(() => void) | undefined>()
  const notKept = (error: unknown): void => console.error('quenchwright: this browser does not keep the page:', error)
  register().catch(notKept)
  async function register(): Promise<void> {
    await after
    const { registerSW } = await import('virtual:pwa-register')
    const open = registerSW({
      onOfflineReady: () => {
        offlineReady.value = true
        setTimeout(() => {
          offlineReady.value = false
        }, SAID_FOR_MS)
      },
      onNeedRefresh: () => {
        newer.value = () => void open(true)
      },
      onRegisteredSW: (_, registration) => {
        if (registration !== undefined) lookAgain(registration)
      },
      onRegisterError: notKept,
    })
  }
  const said = (): void => {
    offlineReady.value = false
    newer.value = undefined
  }
  return { offlineReady, newer, said }
}

function lookAgain(registration: ServiceWorkerRegistration): void {
  let looked = Date.now()
  addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Date.now() - looked < LOOK_EVERY_MS) return
    looked = Date.now()
    // Without network there is nothing newer to be had; it looks again later.
    registration.update().catch(() => undefined)
  })
}
