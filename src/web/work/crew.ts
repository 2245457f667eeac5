import type { Begun, Progress } from './messages.ts'
import { type OpenThreads, openThreads, type Running } from './pool.ts'
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

/** A question that is with the threads. */
interface UnderWay {
  readonly running: Running
  by?: string
  lost: boolean
}

/** Threads opened together, and what they are at. */
interface Watch {
  readonly threads: ReturnType<OpenThreads>
  readonly underWay: Set<UnderWay>
}

/**
 * Threads that run the engine: up to `most` at once, `ready` of them started beforehand. A thread whose work is dropped is ended, and
 * another takes its place. When one is lost, the question it was at rejects with `WorkerLost`, and whatever is asked from then on goes to
 * new threads.
 */
export function crew(ready: number, most: number, open: OpenThreads = openThreads): Crew {
  let current: Watch | undefined

  function watch(): Watch {
    if (current !== undefined) return current
    const underWay = new Set<UnderWay>()
    const made: Watch = {
      underWay,
      threads: open(ready, most, (name) => {
        retire(made)
        // One that no thread has spoken for yet may be with it as well.
        for (const each of underWay) if (each.by === name || each.by === undefined) lose(each)
      }),
    }
    current = made
    return made
  }

  /** Nothing more is asked of these threads; they end with the last of what they are at. */
  function retire(old: Watch): void {
    if (current === old) current = undefined
    if (old.underWay.size === 0) old.threads.end()
  }

  return {
    ask<Name extends TaskName>(
      name: Name,
      questions: Parameters<Tasks[Name]>,
      { onProgress, silentForMs = SILENT_FOR_MS }: AskOptions = {},
    ): Asked<Answer<Name>> {
      const asked = watch()
      let dropped = false
      let silence: ReturnType<typeof setTimeout> | undefined
      const running = asked.threads.exec(name, questions as unknown[], (event) => {
        alive()
        if (isBegun(event)) {
          each.by = event.by
          asked.threads.began(event.by)
        } else onProgress?.(event as Progress)
      })
      const each: UnderWay = { running, lost: false }
      asked.underWay.add(each)
      const alive = (): void => {
        clearTimeout(silence)
        silence = setTimeout(() => {
          // One that waits its turn has nothing to say yet.
          if (each.by === undefined && asked.threads.queued() > 0) return alive()
          retire(asked)
          lose(each)
        }, silentForMs)
      }
      alive()
      const answer = (async (): Promise<Answer<Name>> => {
        try {
          return (await running) as Answer<Name>
        } catch (error) {
          if (dropped) throw new Dropped(name)
          if (each.lost) throw new WorkerLost(`${name}: its thread ended or fell silent`)
          if (isLoss(error)) {
            retire(asked)
            throw new WorkerLost(`${name}: ${String(error)}`)
          }
          throw error
        } finally {
          clearTimeout(silence)
          asked.underWay.delete(each)
          if (asked !== current && asked.underWay.size === 0) asked.threads.end()
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

function lose(each: UnderWay): void {
  each.lost = true
  each.running.cancel()
}

function isBegun(event: unknown): event is Begun {
  return typeof event === 'object' && event !== null && 'by' in event
}

/** Ways in which workerpool says that a thread ended under its work, or could not be begun. */
function isLoss(error: unknown): boolean {
  return error instanceof Error && /terminated|Worker (?:is|error)/iu.test(error.message)
}
