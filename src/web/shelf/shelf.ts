import { type ReadonlySignal, signal } from '@preact/signals'
import type { IDBPDatabase } from 'idb'
import type { JobText, ShopText, SteelText } from '#web/job/job-text.ts'
import { type Kept, store } from './store.ts'
import { type Trouble, troubleOf } from './trouble.ts'

/** A piece in hand, as it is kept on this device. */
export interface Piece {
  readonly id: string
  readonly job: JobText
  /** Instants, ISO in UTC. */
  readonly made: string
  readonly changed: string
  /** One of ours, to look at; not made by the smith. */
  readonly example?: boolean
  /** What the last full forecast of it promised: its least sure zone. Gone when piece or shop change. */
  readonly promise?: Promised
}

export interface Promised {
  readonly zone: string
  readonly chance: number
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
  /** One of ours, as it came. */
  readonly example?: boolean
}

/**
 * What is kept on this device. Where the browser refuses storage, or it is full, everything goes on in memory and `trouble` says so:
 * the drawing is never lost to a failed write while the page is open. What was refused is tried again with the next thing that is kept.
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

type Change = (db: IDBPDatabase<Kept>) => Promise<unknown>

const SHOP_KEY = 'mine'

export function openShelf(open = store()): Shelf {
  const trouble = signal<Trouble | undefined>()
  const memory = {
    pieces: new Map<string, Piece>(),
    rack: new Map<string, Bar>(),
    shop: new Map<string, Kept['shop']['value']>(),
  }
  /** Changes that the device has not taken yet, the last one to each thing. */
  const waiting = new Map<string, Change>()
  const dropped = new Set<string>()
  let asked = false

  /** Writes to the device all that waits; what it refuses goes on waiting, in memory. */
  async function write(to: string, change: Change): Promise<void> {
    waiting.set(to, change)
    try {
      const db = await open()
      for (const [each, now] of [...waiting]) {
        await now(db)
        if (waiting.get(each) === now) waiting.delete(each)
      }
      trouble.value = undefined
    } catch (error) {
      trouble.value = troubleOf(error)
    }
  }

  async function read<Value>(from: (db: IDBPDatabase<Kept>) => Promise<Value>): Promise<Value | undefined> {
    try {
      return await from(await open())
    } catch (error) {
      trouble.value = troubleOf(error)
      return undefined
    }
  }

  async function all<Store extends 'pieces' | 'rack'>(of: Store): Promise<Kept[Store]['value'][]> {
    const kept = memory[of] as Map<string, Kept[Store]['value']>
    for (const each of (await read((db) => db.getAll(of))) ?? [])
      if (!kept.has(each.id) && !dropped.has(each.id)) kept.set(each.id, each)
    return [...kept.values()]
  }

  function drop(from: 'pieces' | 'rack', id: string): Promise<void> {
    memory[from].delete(id)
    dropped.add(id)
    return write(`${from} ${id}`, (db) => db.delete(from, id))
  }

  /** Browsers clear what was not looked at for a week; work of the smith's own is worth asking for more. */
  function askToStay(): void {
    if (asked) return
    asked = true
    // Refused or not known: things are kept as long as the browser likes, as before.
    navigator.storage?.persist?.().catch(() => undefined)
  }

  return {
    trouble,
    pieces: () => all('pieces'),
    bars: () => all('rack'),
    async keepPiece(piece) {
      memory.pieces.set(piece.id, piece)
      dropped.delete(piece.id)
      await write(`pieces ${piece.id}`, (db) => db.put('pieces', piece))
      if (piece.example !== true || piece.changed !== piece.made) askToStay()
    },
    dropPiece: (id) => drop('pieces', id),
    async keepBar(bar) {
      memory.rack.set(bar.id, bar)
      dropped.delete(bar.id)
      await write(`rack ${bar.id}`, (db) => db.put('rack', bar))
    },
    dropBar: (id) => drop('rack', id),
    shop: async () => memory.shop.get(SHOP_KEY) ?? (await read((db) => db.get('shop', SHOP_KEY))),
    async keepShop(shop, example) {
      memory.shop.set(SHOP_KEY, { shop, example })
      await write('shop', (db) => db.put('shop', { shop, example }, SHOP_KEY))
    },
  }
}
