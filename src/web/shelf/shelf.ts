import { type ReadonlySignal, signal } from '@preact/signals'
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { JobText, ShopText, SteelText } from '#web/job/job-text.ts'

/** A piece in hand, as it is kept on this device. */
export interface Piece {
  readonly id: string
  readonly job: JobText
  /** Instants, ISO in UTC. */
  readonly made: string
  readonly changed: string
  /** One of ours, to look at; not made by the smith. */
  readonly example?: boolean
}

/** A bar on the rack. */
export interface Bar {
  readonly id: string
  readonly name: string
  readonly steel: SteelText
  /** As typed: `7/8 in round`, what is left of it, and whatever else was noted. */
  readonly section?: string
  readonly length?: string
  readonly note?: string
  readonly made: string
}

interface Kept extends DBSchema {
  pieces: { key: string; value: Piece }
  rack: { key: string; value: Bar }
  shop: { key: string; value: { readonly shop: ShopText; readonly example: boolean } }
}

/** What went wrong with keeping things, and the mend. */
export interface Trouble {
  readonly says: string
  readonly mend: string
}

/**
 * What is kept on this device. Where the browser refuses storage, or it is full, everything goes on in memory and `trouble` says so:
 * the drawing is never lost to a failed write while the page is open.
 */
export interface Shelf {
  readonly trouble: ReadonlySignal<Trouble | undefined>
  pieces(): Promise<Piece[]>
  keepPiece(piece: Piece): Promise<void>
  dropPiece(id: string): Promise<void>
  bars(): Promise<Bar[]>
  keepBar(bar: Bar): Promise<void>
  dropBar(id: string): Promise<void>
  shop(): Promise<{ readonly shop: ShopText; readonly example: boolean } | undefined>
  keepShop(shop: ShopText, example: boolean): Promise<void>
}

const NAME = 'quenchwright'
const VERSION = 1
const SHOP_KEY = 'mine'

export function openShelf(): Shelf {
  const trouble = signal<Trouble | undefined>()
  const memory = {
    pieces: new Map<string, Piece>(),
    rack: new Map<string, Bar>(),
    shop: new Map<string, Kept['shop']['value']>(),
  }
  let opened: Promise<IDBPDatabase<Kept> | undefined> | undefined

  const database = (): Promise<IDBPDatabase<Kept> | undefined> => {
    opened ??= openDB<Kept>(NAME, VERSION, {
      upgrade(db) {
        db.createObjectStore('pieces', { keyPath: 'id' })
        db.createObjectStore('rack', { keyPath: 'id' })
        db.createObjectStore('shop')
      },
      // Another tab holds a newer format: let go, so that it is not kept waiting.
      blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
    }).catch((error: unknown) => {
      trouble.value = troubleOf(error)
      return undefined
    })
    return opened
  }

  /** Writes to the device; what it refuses stays in memory. */
  async function write(change: (db: IDBPDatabase<Kept>) => Promise<unknown>): Promise<void> {
    const db = await database()
    if (db === undefined) return
    try {
      await change(db)
      trouble.value = undefined
    } catch (error) {
      trouble.value = troubleOf(error)
    }
  }

  async function all<Store extends 'pieces' | 'rack'>(store: Store): Promise<Kept[Store]['value'][]> {
    const db = await database()
    const kept = memory[store] as Map<string, Kept[Store]['value']>
    try {
      for (const each of (await db?.getAll(store)) ?? []) if (!kept.has(each.id)) kept.set(each.id, each)
    } catch (error) {
      trouble.value = troubleOf(error)
    }
    return [...kept.values()]
  }

  return {
    trouble,
    pieces: () => all('pieces'),
    bars: () => all('rack'),
    async keepPiece(piece) {
      memory.pieces.set(piece.id, piece)
      await write((db) => db.put('pieces', piece))
    },
    async dropPiece(id) {
      memory.pieces.delete(id)
      await write((db) => db.delete('pieces', id))
    },
    async keepBar(bar) {
      memory.rack.set(bar.id, bar)
      await write((db) => db.put('rack', bar))
    },
    async dropBar(id) {
      memory.rack.delete(id)
      await write((db) => db.delete('rack', id))
    },
    async shop() {
      const db = await database()
      return (
        memory.shop.get(SHOP_KEY) ??
        (await db?.get('shop', SHOP_KEY).catch((error: unknown) => {
          trouble.value = troubleOf(error)
          return undefined
        }))
      )
    },
    async keepShop(shop, example) {
      memory.shop.set(SHOP_KEY, { shop, example })
      await write((db) => db.put('shop', { shop, example }, SHOP_KEY))
    },
  }
}

/** In words: full, refused, or something else. */
export function troubleOf(error: unknown): Trouble {
  const name = error instanceof DOMException || error instanceof Error ? error.name : ''
  if (name === 'QuotaExceededError')
    return {
      says: 'The storage of this device is full: what you do now is not kept.',
      mend: 'Save the piece as a file, then make room on the device.',
    }
  if (name === 'VersionError')
    return {
      says: 'A newer Quenchwright has been used on this device; this one cannot keep anything beside it.',
      mend: 'Close every page of it and open the newer one. Save the piece as a file first.',
    }
  return {
    says: 'This browser refuses to keep anything: what you do now is gone when the page closes.',
    mend: 'Save the piece as a file. Private windows and strict settings forbid storage.',
  }
}
