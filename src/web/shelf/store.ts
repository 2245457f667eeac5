import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { ShopText } from '#web/job/job-text.ts'
import type { Bar, Piece } from './shelf.ts'
import { NoAnswer } from './trouble.ts'

export interface Kept extends DBSchema {
  pieces: { key: string; value: Piece }
  rack: { key: string; value: Bar }
  shop: { key: string; value: { readonly shop: ShopText; readonly example: boolean } }
}

const NAME = 'quenchwright'
const VERSION = 1
/** Some browsers leave the question unanswered in private windows, or while another page holds an older form open. */
const PATIENCE_MS = 6000

/** Gives the browser's store, opened at first use and again when it was closed from outside. Rejects when it cannot be had. */
export function store(patienceMs = PATIENCE_MS): () => Promise<IDBPDatabase<Kept>> {
  let opened: Promise<IDBPDatabase<Kept>> | undefined
  const closed = (): void => {
    opened = undefined
  }
  return () => {
    opened ??= withPatience(
      openDB<Kept>(NAME, VERSION, {
        upgrade(db) {
          db.createObjectStore('pieces', { keyPath: 'id' })
          db.createObjectStore('rack', { keyPath: 'id' })
          db.createObjectStore('shop')
        },
        // Another page wants a newer form: let go, so that it is not kept waiting. What this one keeps then, it is refused.
        blocking: (_current, _blocked, event) => {
          closed()
          ;(event.target as IDBDatabase).close()
        },
        // The browser itself ended it: storage was cleared, or its disk is gone.
        terminated: closed,
      }),
      patienceMs,
    )
    // Asked again next time: what refused once may have been mended.
    opened.catch(closed)
    return opened
  }
}

function withPatience<Value>(answer: Promise<Value>, patienceMs: number): Promise<Value> {
  return new Promise((resolve, reject) => {
    const end = setTimeout(() => reject(new NoAnswer('the store of the browser')), patienceMs)
    answer.then(resolve, reject).finally(() => clearTimeout(end))
  })
}
