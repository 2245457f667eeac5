import { worker, workerEmit } from 'workerpool'
import type { Begun } from './messages.ts'
import { tasks } from './tasks.ts'

/**
 * The engine's own thread: it answers one question at a time, and is ended when the answer is no longer wanted. While it lives it holds a
 * lock of its own name, which the browser frees when it ends in any way: so the page notices at once.
 */
const name = decodeURIComponent(location.hash.slice(1))
await held()

const methods = Object.fromEntries(
  Object.entries(tasks(workerEmit)).map(([task, does]) => [
    task,
    (...questions: unknown[]) => {
      workerEmit({ by: name } satisfies Begun)
      return (does as (...all: unknown[]) => unknown)(...questions)
    },
  ]),
)
worker(methods)

/** Browsers give locks to secure pages only (this computer, or https); without them silence alone tells of a lost thread. */
function held(): Promise<void> {
  if (navigator.locks === undefined || name === '') return Promise.resolve()
  return new Promise((resolve) => {
    void navigator.locks.request(name, () => {
      resolve()
      return new Promise(() => undefined)
    })
  })
}
