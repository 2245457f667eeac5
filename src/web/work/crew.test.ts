import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { crew, Dropped, WorkerLost } from './crew.ts'
import type { OpenThreads } from './pool.ts'

interface Exec {
  readonly on: (event: unknown) => void
  readonly give: (reply: unknown) => void
  readonly break: (error: Error) => void
}

/** Threads that do as the test says. */
function fakeThreads() {
  const opened: { execs: Exec[]; onEnded: (name: string) => void; ended: boolean; began: string[]; queued: number }[] = []
  const open: OpenThreads = (_, __, onEnded) => {
    const set = { execs: [] as Exec[], onEnded, ended: false, began: [] as string[], queued: 0 }
    opened.push(set)
    return {
      exec(_task, _questions, on) {
        let give: Exec['give'] = () => undefined
        let fail: Exec['break'] = () => undefined
        const running = new Promise((resolve, reject) => {
          give = resolve
          fail = reject
        })
        set.execs.push({ on, give, break: fail })
        return Object.assign(running, { cancel: () => fail(new Error('promise cancelled')) })
      },
      queued: () => set.queued,
      end: () => {
        set.ended = true
      },
      began: (name) => set.began.push(name),
    }
  }
  return { open, opened }
}

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

const question = {}

test('an answer comes back, and progress before it', async () => {
  const { open, opened } = fakeThreads()
  const progress: number[] = []
  const { answer } = crew(1, 1, open).ask('problems', [question], { onProgress: ({ done }) => progress.push(done) })
  const [exec] = opened[0]?.execs ?? []
  exec?.on({ by: 'one' })
  exec?.on({ done: 2, total: 3, says: 'quench' })
  exec?.give([])
  expect(await answer).toEqual([])
  expect(progress).toEqual([2])
  expect(opened[0]?.began).toEqual(['one'])
})

test('dropped work rejects as dropped, whatever its thread says', async () => {
  const { open } = fakeThreads()
  const { answer, drop } = crew(1, 1, open).ask('problems', [question])
  drop()
  await expect(answer).rejects.toBeInstanceOf(Dropped)
})

test('a thread that ends under its work is told, and the next question goes to new threads', async () => {
  const { open, opened } = fakeThreads()
  const made = crew(2, 2, open)
  const lost = made.ask('problems', [question])
  const other = made.ask('problems', [question])
  opened[0]?.execs[0]?.on({ by: 'one' })
  opened[0]?.execs[1]?.on({ by: 'two' })
  opened[0]?.onEnded('one')
  await expect(lost.answer).rejects.toBeInstanceOf(WorkerLost)
  const next = made.ask('problems', [question])
  expect(opened).toHaveLength(2)
  // What was under way on the other thread comes to its end, and then the old threads go.
  expect(opened[0]?.ended).toBe(false)
  opened[0]?.execs[1]?.give([])
  await other.answer
  expect(opened[0]?.ended).toBe(true)
  opened[1]?.execs[0]?.give([])
  expect(await next.answer).toEqual([])
})

test('an idle thread that ends costs nobody anything', async () => {
  const { open, opened } = fakeThreads()
  const made = crew(1, 1, open)
  const first = made.ask('problems', [question])
  opened[0]?.execs[0]?.on({ by: 'one' })
  opened[0]?.execs[0]?.give([])
  await first.answer
  opened[0]?.onEnded('one')
  expect(opened[0]?.ended).toBe(true)
  const second = made.ask('problems', [question])
  opened[1]?.execs[0]?.give([])
  expect(await second.answer).toEqual([])
})

test('a thread that ends before its first word is told too', async () => {
  const { open, opened } = fakeThreads()
  const { answer } = crew(1, 1, open).ask('problems', [question])
  opened[0]?.onEnded('one')
  await expect(answer).rejects.toBeInstanceOf(WorkerLost)
})

test('a thread that falls silent counts as lost; one that waits its turn does not', async () => {
  const { open, opened } = fakeThreads()
  const made = crew(1, 1, open)
  const silent = made.ask('problems', [question], { silentForMs: 1000 })
  opened[0]?.execs[0]?.on({ by: 'one' })
  vi.advanceTimersByTime(900)
  opened[0]?.execs[0]?.on({ done: 1, total: 2, says: 'heat' })
  vi.advanceTimersByTime(900)
  const queued = made.ask('problems', [question], { silentForMs: 50 })
  if (opened[0] !== undefined) opened[0].queued = 1
  vi.advanceTimersByTime(90)
  let settled = false
  void queued.answer.then(
    () => (settled = true),
    () => (settled = true),
  )
  await Promise.resolve()
  expect(settled).toBe(false)
  vi.advanceTimersByTime(100)
  await expect(silent.answer).rejects.toBeInstanceOf(WorkerLost)
})

test('what the engine itself throws is no loss', async () => {
  const { open, opened } = fakeThreads()
  const { answer } = crew(1, 1, open).ask('problems', [question])
  opened[0]?.execs[0]?.break(new Error('a fault of the program'))
  await expect(answer).rejects.toThrow('a fault of the program')
  await expect(answer).rejects.not.toBeInstanceOf(WorkerLost)
})

test('threads that cannot be begun are told as lost', async () => {
  const { open, opened } = fakeThreads()
  const { answer } = crew(1, 1, open).ask('problems', [question])
  opened[0]?.execs[0]?.break(new Error('Workerpool Worker error: Unknown worker error'))
  await expect(answer).rejects.toBeInstanceOf(WorkerLost)
})
