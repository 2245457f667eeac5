import { type Pool, pool } from 'workerpool'
import workerUrl from './engine.worker.ts?worker&url'
import type { Progress } from './messages.ts'
import type { Tasks } from './tasks.ts'

/** One question under way. */
export interface Asked<Answer> {
  readonly answer: Promise<Answer>
  /** Drops the work at once; the answer rejects with `Dropped`. */
  readonly drop: () => void
}

/** The work was dropped because its answer is no longer wanted. */
export class Dropped extends Error {
  override readonly name = 'Dropped'
}

/** The engine's thread ended, or gave no sign of life for too long. */
export class WorkerLost extends Error {
  override readonly name = 'WorkerLost'
}

type TaskName = keyof Tasks
type Answer<Name extends TaskName> = Awaited<ReturnType<Tasks[Name]>>

interface AskOptions {
  readonly onProgress?: (progress: Progress) => void
  readonly silentForMs?: number
}

export interface Crew {
  ask<Name extends TaskName>(name: Name, questions: Parameters<Tasks[Name]>, options?: AskOptions): Asked<Answer<Name>>
}

/** Longest silence of a thread that is at work before it counts as lost: many times the longest step seen on a slow phone. */
const SILENT_FOR_MS = 45_000

/**
 * Threads that run the engine: up to `most` at once, `ready` of them started beforehand. A thread whose work is dropped is ended, and
 * another takes its place.
 */
export function crew(ready: number, most: number): Crew {
  let workers: Pool | undefined
  const started = (): Pool => {
    workers ??= pool(workerUrl, {
      minWorkers: ready,
      maxWorkers: most,
      workerOpts: { type: 'module' },
      workerTerminateTimeout: 0,
    })
    return workers
  }
  return {
    ask<Name extends TaskName>(
      name: Name,
      questions: Parameters<Tasks[Name]>,
      { onProgress, silentForMs = SILENT_FOR_MS }: AskOptions = {},
    ): Asked<Answer<Name>> {
      let dropped = false
      let lost = false
      let watch: ReturnType<typeof setTimeout> | undefined
      const running = started().exec(name, questions as unknown[], {
        on: (progress: Progress) => {
          alive()
          onProgress?.(progress)
        },
      })
      const alive = (): void => {
        clearTimeout(watch)
        watch = setTimeout(() => {
          lost = true
          running.cancel()
        }, silentForMs)
      }
      alive()
      const answer = (async (): Promise<Answer<Name>> => {
        try {
          return (await running) as Answer<Name>
        } catch (error) {
          if (dropped) throw new Dropped(name)
          if (lost || isLoss(error)) throw new WorkerLost(`${name}: ${String(error)}`)
          throw error
        } finally {
          clearTimeout(watch)
        }
      })()
      // Whoever drops a question does not wait for its answer.
      answer.catch(() => undefined)
      return {
        answer,
        drop: () => {
          dropped = true
          running.cancel()
        },
      }
    },
  }
}

/** Ways in which workerpool says that a thread ended under its work. */
function isLoss(error: unknown): boolean {
  return error instanceof Error && /terminated|Worker is/u.test(error.message)
}
