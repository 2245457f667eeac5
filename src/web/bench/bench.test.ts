// @vitest-environment happy-dom
import { signal } from '@preact/signals'
import { afterEach, describe, expect, test, vi } from 'vitest'
import type { Shelf } from '#web/shelf/shelf.ts'
import { openBench } from './bench.ts'
import type { Device } from './device.ts'
import { examplePieces, exampleShop } from './example-shop.ts'

const { answered, stale, ask } = vi.hoisted(() => ({
  answered: { value: undefined as unknown },
  stale: { value: true },
  ask: vi.fn(),
}))
vi.mock('#web/work/crew.ts', () => ({ crew: () => ({}) }))
vi.mock('#web/work/desk.ts', async () => {
  const { signal: real } = await import('@preact/signals')
  const signals = { answered: real<unknown>(undefined), stale: real(true) }
  Object.defineProperty(answered, 'value', { set: (value) => (signals.answered.value = value) })
  Object.defineProperty(stale, 'value', { set: (value) => (signals.stale.value = value) })
  return { desk: () => ({ ...signals, ask }) }
})
afterEach(() => {
  vi.clearAllMocks()
  answered.value = undefined
})

/** A shelf in memory that says what it was asked to do. */
function shelf(kept: Partial<Shelf> = {}): { shelf: Shelf; did: string[] } {
  const did: string[] = []
  const noted =
    (what: string) =>
    async (thing: unknown): Promise<void> => {
      did.push(`${what} ${typeof thing === 'string' ? thing : (((thing as { id?: string }).id ?? '') as string)}`.trim())
    }
  const empty = async (): Promise<never[]> => []
  return {
    did,
    shelf: {
      trouble: signal(undefined),
      pieces: empty,
      bars: empty,
      shop: async () => undefined,
      keepPiece: noted('keep'),
      dropPiece: noted('drop'),
      keepBar: noted('keep bar'),
      dropBar: noted('drop bar'),
      keepShop: noted('keep shop'),
      ...kept,
    },
  }
}

const device = (): Device => ({ units: signal('metric'), ground: signal('paper') })

async function bench(kept?: Partial<Shelf>) {
  const made = shelf(kept)
  const open = openBench(made.shelf, device())
  await vi.waitFor(() => expect(open.ready.value).toBe(true))
  return { bench: open, did: made.did }
}

describe('pieces in hand', () => {
  test('a newcomer finds the example workshop', async () => {
    const { bench: open } = await bench()
    expect(open.pieces.value.map(({ job }) => job.piece)).toEqual(examplePieces.map(({ piece }) => piece))
    expect(open.shop.value).toEqual(exampleShop)
    expect(open.shopIsExample.value).toBe(true)
  })

  test('a first visit that was cut off goes on: what is missing comes, what was kept stays, and the shop is kept last', async () => {
    const [job = {}] = examplePieces
    const early = { id: 'early', job, made: '2025-03-14T08:00:00Z', changed: '2025-03-14T08:00:00Z', example: true }
    const { bench: open, did } = await bench({ pieces: async () => [early] })
    expect(open.pieces.value.map(({ job: each }) => each.piece)).toEqual(examplePieces.map(({ piece }) => piece))
    expect(open.pieces.value[0]).toBe(early)
    await vi.waitFor(() => expect(did.at(-1)).toBe('keep shop'))
    expect(did.filter((each) => /^keep /u.test(each)).length).toBe(examplePieces.length + open.bars.value.length + 1)
  })

  test('a piece put away is off the device, and comes back as it was', async () => {
    const { bench: open, did } = await bench()
    const before = open.pieces.value
    const gone = before[1]!
    open.open(gone.id)
    open.remove(gone.id)
    expect(open.pieces.value.map(({ id }) => id)).not.toContain(gone.id)
    expect(open.piece.value).toBeUndefined()
    expect(did).toContain(`drop ${gone.id}`)
    expect(open.putAway.value?.pieces).toEqual([gone])
    open.takeBack()
    expect(open.pieces.value).toContainEqual(gone)
    expect(open.putAway.value).toBeUndefined()
    expect(did.filter((each) => each === `keep ${gone.id}`)).toHaveLength(2)
  })

  test('my own shop: gear empty, untouched examples put away, what was worked on stays; all of it can be taken back', async () => {
    const { bench: open } = await bench()
    const [worked, ...others] = open.pieces.value
    open.open(worked!.id)
    await new Promise((resolve) => setTimeout(resolve, 5))
    open.edit('name', (job) => ({ ...job, piece: 'mine' }))
    const own = open.add({ piece: 'drift' })
    const bars = open.bars.value
    open.keepBar({ ...bars[0]!, length: '2 ft' })
    open.startOwnShop()
    expect(open.pieces.value.map(({ id }) => id).toSorted()).toEqual([worked!.id, own].toSorted())
    expect(open.bars.value.map(({ length }) => length)).toEqual(['2 ft'])
    expect(open.shop.value).toEqual({ fires: [], baths: [], ovens: [], testers: [], files: [] })
    expect(open.shopIsExample.value).toBe(false)
    open.takeBack()
    expect(open.pieces.value).toHaveLength(others.length + 2)
    expect(open.bars.value).toHaveLength(bars.length)
    expect(open.shop.value).toEqual(exampleShop)
    expect(open.shopIsExample.value).toBe(true)
  })
})

describe('what a full answer promises', () => {
  const forecast = {
    zones: [
      { name: 'edge', chance: 0.9 },
      { name: 'head', chance: 0.6 },
    ],
  }

  test('is kept with the piece until the piece changes, and asks nothing anew', async () => {
    const { bench: open } = await bench()
    const { id } = open.pieces.value[0]!
    open.open(id)
    expect(ask).toHaveBeenCalledTimes(1)
    stale.value = false
    answered.value = { job: open.composed.value, fineness: 'normal', forecast }
    const promise = () => open.pieces.value.find((each) => each.id === id)?.promise
    expect(promise()).toEqual({ zone: 'head', chance: 0.6 })
    expect(ask).toHaveBeenCalledTimes(1)
    open.edit('name', (job) => ({ ...job, piece: 'other' }))
    expect(promise()).toBeUndefined()
  })

  test('is gone when the gear changes, unless the piece brings its own', async () => {
    const { bench: open } = await bench()
    const promised = (id: string) => {
      open.open(id)
      stale.value = false
      answered.value = { job: open.composed.value, fineness: 'normal', forecast }
    }
    const plain = open.pieces.value[0]!.id
    promised(plain)
    const own = open.add({ piece: 'drift', shop: { ovens: [] } })
    promised(own)
    open.keepShop({ ovens: [] })
    const promises = Object.fromEntries(open.pieces.value.map(({ id, promise }) => [id, promise]))
    expect(promises[plain]).toBeUndefined()
    expect(promises[own]).toEqual({ zone: 'head', chance: 0.6 })
  })

  test('a sketch promises nothing', async () => {
    const { bench: open } = await bench()
    const { id } = open.pieces.value[0]!
    open.open(id)
    stale.value = false
    answered.value = { job: open.composed.value, fineness: 'sketch', forecast }
    expect(open.pieces.value[0]?.promise).toBeUndefined()
  })
})
