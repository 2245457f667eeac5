import { batch, computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import { v7 as newId } from 'uuid'
import { weakestZone } from '#web/forecast/outlook-says.ts'
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

/** What left the bench and can come back. */
export interface PutAway {
  readonly pieces: readonly Piece[]
  readonly bars: readonly Bar[]
  /** The gear as it was, where that went too. */
  readonly shop?: ShopText
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
  /** Puts a piece away; `takeBack` undoes it. */
  remove(id: string): void
  /** Empties the gear to be filled in, and puts the example pieces and bars away that nobody worked on; `takeBack` undoes it. */
  startOwnShop(): void
  /** What was put away last, until something else is or it is taken back. */
  readonly putAway: ReadonlySignal<PutAway | undefined>
  takeBack(): void
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
  const putAway = signal<PutAway | undefined>()

  const piece = computed(() => pieces.value.find(({ id }) => id === openId.value))
  const openNow = computed(() => piece.value?.id)
  const job = computed(() => history.value.now)
  const composed = computed(() => withShop(job.value, shop.value))

  const asks = crew(1, 2)
  const outlook = desk(crew(1, 1), crew(2, 2))

  void load()
  async function load(): Promise<void> {
    const [keptPieces, keptBars, keptShop] = await Promise.all([shelf.pieces(), shelf.bars(), shelf.shop()])
    const now = new Date().toISOString()
    // The shop is kept last: without it a first visit was cut off, and goes on.
    const first = keptShop === undefined && keptPieces.every(({ example }) => example === true)
    batch(() => {
      shop.value = keptShop?.shop ?? exampleShop
      shopIsExample.value = keptShop?.example ?? true
      pieces.value = first
        ? examplePieces.map(
            (each) =>
              keptPieces.find(({ job }) => job.piece === each.piece) ?? {
                id: newId(),
                job: each,
                made: now,
                changed: now,
                example: true,
              },
          )
        : keptPieces.toSorted((a, b) => b.changed.localeCompare(a.changed))
      bars.value = first
        ? exampleBars.map(
            (each) => keptBars.find(({ name }) => name === each.name) ?? { ...each, id: newId(), made: now, example: true },
          )
        : keptBars
      ready.value = true
    })
    if (!first) return
    for (const each of pieces.value) await shelf.keepPiece(each)
    for (const each of bars.value) await shelf.keepBar(each)
    await shelf.keepShop(shop.value, shopIsExample.value)
  }

  effect(() => {
    const id = openNow.value
    if (id !== undefined) outlook.ask(composed.value, device.units.value, id)
  })

  // What a full answer promises is shown on the bench when another piece is open.
  effect(() => {
    const answered = outlook.answered.value
    if (answered?.fineness !== 'normal' || outlook.stale.value || answered.job !== composed.peek()) return
    const open = piece.peek()
    const zone = weakestZone(answered.forecast)
    if (open === undefined || (open.promise?.chance === zone?.chance && open.promise?.zone === zone?.name)) return
    const { promise: _, ...rest } = open
    const kept: Piece = zone === undefined ? rest : { ...rest, promise: { zone: zone.name, chance: zone.chance } }
    pieces.value = pieces.peek().map((each) => (each.id === open.id ? kept : each))
    keepSoon(kept)
  })

  function put(next: History<JobText>): void {
    const open = piece.value
    if (open === undefined || next === history.value) return
    const documentChanged = next.now !== history.value.now
    batch(() => {
      history.value = next
      if (!documentChanged) return
      const { promise: _, ...rest } = open
      const kept: Piece = { ...rest, job: next.now, changed: new Date().toISOString() }
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

  function setShop(next: ShopText, example: boolean): void {
    batch(() => {
      shop.value = next
      shopIsExample.value = example
      // Promised with other gear.
      pieces.value = pieces.value.map(({ promise, ...each }) =>
        promise === undefined || each.job.shop !== undefined ? { ...each, ...(promise && { promise }) } : each,
      )
    })
    void shelf.keepShop(next, example)
  }

  function dropPiece(id: string): void {
    pieces.value = pieces.value.filter((each) => each.id !== id)
    if (openId.value === id) openId.value = undefined
    clearTimeout(unkept.get(id))
    unkept.delete(id)
    void shelf.dropPiece(id)
  }

  function dropBar(id: string): void {
    bars.value = bars.value.filter((each) => each.id !== id)
    void shelf.dropBar(id)
  }

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
      const gone = pieces.value.filter((each) => each.id === id)
      batch(() => {
        dropPiece(id)
        putAway.value = { pieces: gone, bars: [] }
      })
    },
    startOwnShop() {
      const untouched = pieces.value.filter(({ example, made, changed: last }) => example === true && made === last)
      const unusedBars = bars.value.filter(({ example }) => example === true)
      batch(() => {
        putAway.value = { pieces: untouched, bars: unusedBars, shop: shop.value }
        for (const { id } of untouched) dropPiece(id)
        for (const { id } of unusedBars) dropBar(id)
        setShop({ fires: [], baths: [], ovens: [], testers: [], files: [] }, false)
      })
    },
    putAway,
    takeBack() {
      const back = putAway.value
      if (back === undefined) return
      batch(() => {
        putAway.value = undefined
        pieces.value = [...back.pieces, ...pieces.value].toSorted((a, b) => b.changed.localeCompare(a.changed))
        bars.value = [...bars.value, ...back.bars]
        if (back.shop !== undefined) setShop(back.shop, true)
      })
      for (const each of back.pieces) void shelf.keepPiece(each)
      for (const each of back.bars) void shelf.keepBar(each)
    },
    keepBar(bar) {
      const before = bars.value.find(({ id }) => id === bar.id)
      // Worked on: no longer one of ours.
      const { example: _, ...own } = bar
      const kept: Bar = { ...own, id: bar.id ?? newId(), made: before?.made ?? new Date().toISOString() }
      bars.value = before === undefined ? [...bars.value, kept] : bars.value.map((each) => (each === before ? kept : each))
      void shelf.keepBar(kept)
    },
    removeBar: dropBar,
    keepShop: (next) => setShop(next, false),
    instantS,
    field,
    selection,
    point,
  }
}

const KEEP_AFTER_MS = 400

/** A job with a shop: its own, or else that of this device. */
function withShop(job: JobText, shop: ShopText): JobText {
  return job.shop === undefined ? { ...job, shop } : job
}
