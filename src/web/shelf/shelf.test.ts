// @vitest-environment happy-dom
import { IDBFactory, IDBObjectStore, IDBOpenDBRequest } from 'fake-indexeddb'
import 'fake-indexeddb/auto'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { openShelf, type Piece } from './shelf.ts'
import { store } from './store.ts'
import { troubleOf } from './trouble.ts'

const piece = (id: string, name = id): Piece => ({ id, job: { piece: name }, made: '2025-03-14', changed: '2025-03-14' })

beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory())
})
afterEach(() => {
  vi.restoreAllMocks()
  vi.unstubAllGlobals()
})

describe('things are kept', () => {
  test('over the life of the page', async () => {
    const first = openShelf()
    await first.keepPiece(piece('a'))
    await first.keepPiece(piece('b'))
    await first.dropPiece('a')
    await first.keepShop({ baths: [{ name: 'tub' }] }, false)
    await first.keepBar({ id: 'r', name: 'drill rod', steel: { grade: 'W1' }, made: '2025-03-14' })
    const second = openShelf()
    expect((await second.pieces()).map(({ id }) => id)).toEqual(['b'])
    expect(await second.shop()).toEqual({ shop: { baths: [{ name: 'tub' }] }, example: false })
    expect((await second.bars()).map(({ name }) => name)).toEqual(['drill rod'])
    expect(first.trouble.value).toBeUndefined()
  })

  test('it asks to stay once there is work of the smith, and not for the examples', async () => {
    const persist = vi.fn(async () => true)
    vi.stubGlobal('navigator', { storage: { persist } })
    const shelf = openShelf()
    await shelf.keepPiece({ ...piece('a'), example: true })
    expect(persist).not.toHaveBeenCalled()
    await shelf.keepPiece(piece('b'))
    await shelf.keepPiece(piece('c'))
    expect(persist).toHaveBeenCalledTimes(1)
  })
})

describe('the device refuses', () => {
  test('a full one: said, kept in memory, and written with the next thing when there is room', async () => {
    const shelf = openShelf()
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('no room', 'QuotaExceededError')
    })
    await shelf.keepPiece(piece('a'))
    expect(shelf.trouble.value?.says).toMatch(/is full/u)
    expect(shelf.trouble.value?.mend).toMatch(/Save the piece as a file/u)
    expect((await shelf.pieces()).map(({ id }) => id)).toEqual(['a'])
    put.mockRestore()
    await shelf.keepPiece(piece('b'))
    expect(shelf.trouble.value).toBeUndefined()
    expect((await openShelf().pieces()).map(({ id }) => id)).toEqual(['a', 'b'])
  })

  test('no storage at all: said, and everything goes on in memory', async () => {
    vi.stubGlobal('indexedDB', {
      open: () => {
        throw new DOMException('no', 'SecurityError')
      },
    })
    const shelf = openShelf()
    expect(await shelf.pieces()).toEqual([])
    expect(shelf.trouble.value?.says).toMatch(/refuses to keep anything/u)
    await shelf.keepPiece(piece('a'))
    await shelf.keepPiece(piece('a', 'renamed'))
    expect((await shelf.pieces()).map(({ job }) => job.piece)).toEqual(['renamed'])
    expect(await shelf.shop()).toBeUndefined()
    expect(shelf.trouble.value?.says).toMatch(/refuses to keep anything/u)
  })

  test('a piece that was put away while the device refused does not come back', async () => {
    const before = openShelf()
    await before.keepPiece(piece('a'))
    const shelf = openShelf()
    vi.spyOn(IDBObjectStore.prototype, 'delete').mockImplementation(() => {
      throw new DOMException('no', 'UnknownError')
    })
    await shelf.dropPiece('a')
    expect(await shelf.pieces()).toEqual([])
  })

  test('a store that never answers is given up, and asked again later', async () => {
    const real = indexedDB
    vi.stubGlobal('indexedDB', { open: () => new IDBOpenDBRequest() })
    const shelf = openShelf(store(20))
    expect(await shelf.pieces()).toEqual([])
    expect(shelf.trouble.value?.says).toMatch(/does not answer/u)
    vi.stubGlobal('indexedDB', real)
    await shelf.keepPiece(piece('a'))
    expect(shelf.trouble.value).toBeUndefined()
  })

  test('a store closed by a newer page is opened anew', async () => {
    const shelf = openShelf()
    await shelf.keepPiece(piece('a'))
    const gone = indexedDB.deleteDatabase('quenchwright')
    await new Promise((resolve, reject) => {
      gone.onsuccess = resolve
      gone.onblocked = reject
    })
    await shelf.keepPiece(piece('b'))
    expect(shelf.trouble.value).toBeUndefined()
  })
})

test.each([
  ['QuotaExceededError', /full/u],
  ['VersionError', /newer Quenchwright/u],
  ['SecurityError', /refuses/u],
  ['anything', /refuses/u],
])('%s is said in words, with what to do', (name, says) => {
  const trouble = troubleOf(new DOMException('x', name))
  expect(trouble.says).toMatch(says)
  expect(trouble.mend).toMatch(/file/u)
})
