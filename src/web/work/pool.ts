import { type Pool, pool } from 'workerpool'
import workerUrl from './engine.worker.ts?worker&url'

/** Threads of the engine as a crew uses them. */
export interface Threads {
  exec(task: string, questions: unknown[], on: (event: unknown) => void): Running
  /** Questions that wait for a thread. */
  queued(): number
  end(): void
}

export interface Running extends PromiseLike<unknown> {
  /** Ends the thread that is at it. */
  cancel(): unknown
}

/**
 * Opens threads: `ready` of them at once, `most` in all. `onEnded` is told the name of one that ended by itself; those ended from here are
 * not told.
 */
export type OpenThreads = (
  ready: number,
  most: number,
  onEnded: (name: string) => void,
) => Threads & { readonly began: (name: string) => void }

let count = 0

/** How often it is looked whether a new thread has its lock, and when it will not come any more [ms]. */
const LOOK_MS = 500
const BORN_BY_MS = 20_000

export const openThreads: OpenThreads = (ready, most, onEnded) => {
  const alive = new Set<string>()
  const watched = new Set<string>()
  const ended = (name: string): void => {
    if (alive.delete(name)) onEnded(name)
  }
  /** A thread has its lock for as long as it lives; whoever gets it after that outlived the thread. */
  const watch = (name: string): void => {
    if (watched.has(name) || navigator.locks === undefined) return
    watched.add(name)
    void navigator.locks.request(name, () => ended(name))
  }
  async function expectLock(name: string, leftMs: number): Promise<void> {
    if (!alive.has(name) || watched.has(name) || navigator.locks === undefined) return
    const { held = [] } = await navigator.locks.query()
    if (held.some((lock) => lock.name === name)) watch(name)
    else if (leftMs <= 0) ended(name)
    else setTimeout(() => void expectLock(name, leftMs - LOOK_MS), LOOK_MS)
  }
  const workers: Pool = pool(workerUrl, {
    minWorkers: ready,
    maxWorkers: most,
    workerOpts: { type: 'module' },
    // A busy thread cannot be asked to stop; it is given this long all the same [ms]. Nought would stand for a whole second.
    workerTerminateTimeout: 1,
    onCreateWorker: () => {
      const name = `engine-${Math.random().toString(36).slice(2)}-${++count}`
      alive.add(name)
      void expectLock(name, BORN_BY_MS)
      return { script: `${workerUrl}#${name}` }
    },
    onTerminateWorker: ({ script }) => {
      alive.delete(script?.split('#')[1] ?? '')
    },
  })
  return {
    exec: (task, questions, on) => workers.exec(task, questions, { on }) as Running,
    queued: () => workers.stats().pendingTasks,
    end: () => {
      alive.clear()
      void workers.terminate(true)
    },
    began: watch,
  }
}
