import { batch, computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import { v7 as newId } from 'uuid'
import { begun, changed, type History, redone, settled, undone } from '#web/job/history.ts'
import type { JobText, ShopText } from '#web/job/job-text.ts'
import type { Bar, Piece, Shelf } from '#web/shelf/shelf.ts'
import { type Crew, crew } from '#web/work/crew.ts'
import { desk, type Outlook } from '#web/work/desk.ts'
import type { Device } from './device.ts'
import { exampleBars, examplePieces, exampleShop } from './example-shop.ts'

/** What the cut-away shows. */
export const FIELDS = ['heat', 'became', 'quenched', 'tempered', 'band', 'colours'] as const
export type Field = (typeof FIELDS)[number]

/** What is touched: one thing at a time, the same on the drawing and in the lists. */
export type Selection =
  | { readonly kind: 'section'; readonly index: number }
  | { readonly kind: 'zone'; readonly index: number }
  | { readonly kind: 'step'; readonly index: number }
  | { readonly kind: 'finding'; readonly index: number }

/** A place in the cut piece: height from the working end, distance from the axis of the rounds that the forecast is worked out for. */
export interface MetalPoint {
  readonly xMm: number
  readonly rMm: number
}

/**
 * Everything the page holds: the pieces in hand, the one that is open, its forecast, and what is being looked at. Views read signals
 * and call these functions; nothing else changes state.
 */
export interface Bench {
  readonly device: Device
  readonly trouble: Shelf['trouble']

  readonly ready: ReadonlySignal<boolean>
  readonly pieces: ReadonlySignal<readonly Piece[]>
  readonly bars: ReadonlySignal<readonly Bar[]>
  readonly shop: ReadonlySignal<ShopText>
  /** True while the shop is the example one. */
  readonly shopIsExample: ReadonlySignal<boolean>
  /** The piece that is open. */
  readonly piece: ReadonlySignal<Piece | undefined>
  /** Its document as it stands, as typed. */
  readonly job: ReadonlySignal<JobText>
  /** The same with the shop of this device, if it brings none: what is computed, saved, linked and printed. */
  readonly composed: ReadonlySignal<JobText>
  readonly outlook: Outlook
  /** Threads for questions that are asked once: steels, routes, files. */
  readonly crew: Crew

  /** Changes the open piece; one step to undo. Changes in a row with the same `merge` (a drag, typing in a field) are one step. */
  edit(says: string, change: (job: JobText) => JobText, merge?: string): void
  /** The drag or the typing is over. */
  settle(): void
  undo(): void
  redo(): void
  readonly undoSays: ReadonlySignal<string | undefined>
  readonly redoSays: ReadonlySignal<string | undefined>

  open(id: string): void
  /** Takes a document onto the bench and opens it. */
  add(job: JobText): string
  remove(id: string): void
  keepBar(bar: Omit<Bar, 'id' | 'made'> & { readonly id?: string }): void
  removeBar(id: string): void
  keepShop(shop: ShopText): void

  /** Looking: the instant of the time line [s from the start], what the cut-away shows, what is touched, the place whose history is shown. */
  readonly instantS: Signal<number>
  readonly field: Signal<Field>
  readonly selection: Signal<Selection | undefined>
  readonly point: Signal<MetalPoint | undefined>
}

export function openBench(shelf: Shelf, device: Device): Bench {
  const ready = signal(false)
  const pieces = signal<readonly Piece[]>([])
  const bars = signal<readonly Bar[]>([])
  const shop = signal<ShopText>({})
  const shopIsExample = signal(true)
  const openId = signal<string | undefined>()
  const history = signal<History<JobText>>(begun({}))
  const selection = signal<Selection | undefined>()
  const point = signal<MetalPoint | undefined>()
  const instantS = signal(Number.POSITIVE_INFINITY)
  const field = signal<Field>('tempered')

  const piece = computed(() => pieces.value.find(({ id }) => id === openId.value))
  const job = computed(() => history.value.now)
  const composed = computed(() => withShop(job.value, shop.value))

  const asks = crew(1, 2)
  const outlook = desk(crew(1, 1), crew(2, 2))

  void load()
  async function load(): Promise<void> {
    const [keptPieces, keptBars, keptShop] = await Promise.all([shelf.pieces(), shelf.bars(), shelf.shop()])
    const now = new Date().toISOString()
    const first = keptShop === undefined && keptPieces.length === 0
    batch(() => {
      shop.value = keptShop?.shop ?? exampleShop
      shopIsExample.value = keptShop?.example ?? true
      pieces.value = first
        ? examplePieces.map((each) => ({ id: newId(), job: each, made: now, changed: now, example: true }))
        : keptPieces.toSorted((a, b) => b.changed.localeCompare(a.changed))
      bars.value = first ? exampleBars.map((each) => ({ ...each, id: newId(), made: now })) : keptBars
      ready.value = true
    })
    if (!first) return
    await shelf.keepShop(exampleShop, true)
    for (const each of pieces.value) await shelf.keepPiece(each)
    for (const each of bars.value) await shelf.keepBar(each)
  }

  effect(() => {
    if (piece.value !== undefined) outlook.ask(composed.value, device.units.value, piece.value.id)
  })

  function put(next: History<JobText>): void {
    const open = piece.value
    if (open === undefined || next === history.value) return
    const documentChanged = next.now !== history.value.now
    batch(() => {
      history.value = next
      if (!documentChanged) return
      const kept: Piece = { ...open, job: next.now, changed: new Date().toISOString() }
      pieces.value = pieces.value.map((each) => (each.id === open.id ? kept : each))
      keepSoon(kept)
    })
  }

  const unkept = new Map<string, ReturnType<typeof setTimeout>>()
  /** A drag makes sixty changes a second; the device is told when it pauses. */
  function keepSoon(kept: Piece): void {
    clearTimeout(unkept.get(kept.id))
    const write = (): void => {
      unkept.delete(kept.id)
      void shelf.keepPiece(kept)
    }
    unkept.set(kept.id, setTimeout(write, KEEP_AFTER_MS))
  }
  addEventListener('pagehide', () => {
    for (const [id, timer] of unkept) {
      clearTimeout(timer)
      const kept = pieces.value.find((each) => each.id === id)
      if (kept !== undefined) void shelf.keepPiece(kept)
    }
  })

  function openPiece(id: string): void {
    const found = pieces.value.find((each) => each.id === id)
    if (found === undefined || openId.value === id) return
    batch(() => {
      openId.value = id
      history.value = begun(found.job)
      selection.value = undefined
      point.value = undefined
      instantS.value = Number.POSITIVE_INFINITY
    })
  }

  return {
    device,
    trouble: shelf.trouble,
    ready,
    pieces,
    bars,
    shop,
    shopIsExample,
    piece,
    job,
    composed,
    outlook,
    crew: asks,
    edit: (says, change, merge) => put(changed(history.value, change(history.value.now), says, merge)),
    settle: () => put(settled(history.value)),
    undo: () => put(undone(history.value)),
    redo: () => put(redone(history.value)),
    undoSays: computed(() => history.value.past.at(-1)?.says),
    redoSays: computed(() => history.value.future[0]?.says),
    open: openPiece,
    add(document) {
      const now = new Date().toISOString()
      const made: Piece = { id: newId(), job: document, made: now, changed: now }
      pieces.value = [made, ...pieces.value]
      void shelf.keepPiece(made)
      openPiece(made.id)
      return made.id
    },
    remove(id) {
      batch(() => {
        pieces.value = pieces.value.filter((each) => each.id !== id)
        if (openId.value === id) openId.value = undefined
      })
      clearTimeout(unkept.get(id))
      unkept.delete(id)
      void shelf.dropPiece(id)
    },
    keepBar(bar) {
      const before = bars.value.find(({ id }) => id === bar.id)
      const kept: Bar = { ...bar, id: bar.id ?? newId(), made: before?.made ?? new Date().toISOString() }
      bars.value = before === undefined ? [...bars.value, kept] : bars.value.map((each) => (each === before ? kept : each))
      void shelf.keepBar(kept)
    },
    removeBar(id) {
      bars.value = bars.value.filter((each) => each.id !== id)
      void shelf.dropBar(id)
    },
    keepShop(next) {
      batch(() => {
        shop.value = next
        shopIsExample.value = false
      })
      void shelf.keepShop(next, false)
    },
    instantS,
    field,
    selection,
    point,
  }
}

const KEEP_AFTER_MS = 400

/** A job with a shop: its own, or else that of this device. */
export function withShop(job: JobText, shop: ShopText): JobText {
  return job.shop === undefined ? { ...job, shop } : job
}
