import { batch, type ReadonlySignal, signal } from '@preact/signals'
import type { Forecast } from '#contract/answers.ts'
import type { Picture } from '#contract/picture.ts'
import type { Problem } from '#contract/problems.ts'
import type { System } from '#units/length.ts'
import type { JobText } from '#web/job/job-text.ts'
import { type Asked, type Crew, Dropped } from './crew.ts'
import type { Fineness, ForecastReply, Progress } from './messages.ts'

/** An answer with what it is the answer to. */
export interface Answered {
  readonly job: JobText
  readonly units: System
  readonly fineness: Fineness
  readonly forecast: Forecast
  readonly picture: Picture
}

/** Where the forecast of the job in hand stands. */
export interface Outlook {
  /** The last answer; it stays, pale, while a newer one is worked out or while the job is at fault. */
  readonly answered: ReadonlySignal<Answered | undefined>
  /** True while `answered` is not the full answer to the job as it stands. */
  readonly stale: ReadonlySignal<boolean>
  /** What is at fault in the job as it stands; empty when nothing is. */
  readonly problems: ReadonlySignal<readonly Problem[]>
  /** True when the job is sound but has no treatment yet. */
  readonly untreated: ReadonlySignal<boolean>
  /** Of the full answer, while it is worked out. */
  readonly progress: ReadonlySignal<Progress | undefined>
  /** The program failed: what to tell, and a way to try again. */
  readonly failed: ReadonlySignal<{ readonly says: string; readonly retry: () => void } | undefined>
}

export interface Desk extends Outlook {
  /** Asks for the forecast of a job: a sketch now, the full answer once `ask` has been quiet for a moment. Older questions are dropped. */
  ask(job: JobText, units: System): void
}

/** Rest before the full answer is begun: a hand that only pauses does not start it. */
const REST_MS = 300

/**
 * Keeps one forecast up to date. Sketches go to a crew of one and never queue: while one is worked out only the newest question waits.
 * The full answer goes to another crew, and is dropped in mid-work when the job changes.
 */
export function desk(quick: Crew, thorough: Crew, restMs = REST_MS): Desk {
  const answered = signal<Answered | undefined>()
  const stale = signal(true)
  const problems = signal<readonly Problem[]>([])
  const untreated = signal(false)
  const progress = signal<Progress | undefined>()
  const failed = signal<{ says: string; retry: () => void } | undefined>()

  let asked: { job: JobText; units: System } | undefined
  let sketching = false
  let waiting = false
  let full: Asked<ForecastReply> | undefined
  let rest: ReturnType<typeof setTimeout> | undefined

  function take(question: { job: JobText; units: System }, fineness: Fineness, reply: ForecastReply): void {
    batch(() => {
      failed.value = undefined
      problems.value = reply.kind === 'problems' ? reply.problems : []
      untreated.value = reply.kind === 'no-process'
      if (reply.kind === 'answer') {
        const { forecast, picture } = reply
        answered.value = { ...question, fineness, forecast, picture }
      } else if (reply.kind === 'no-process') answered.value = undefined
      stale.value = fineness !== 'normal' && reply.kind === 'answer'
    })
  }

  function fail(error: unknown, retry: () => void): void {
    if (error instanceof Dropped) return
    console.error(error)
    batch(() => {
      progress.value = undefined
      failed.value = {
        says: 'The forecast stopped: the part of the page that works it out ended. Your drawing is kept.',
        retry: () => {
          failed.value = undefined
          retry()
        },
      }
    })
  }

  async function sketch(): Promise<void> {
    if (sketching) {
      waiting = true
      return
    }
    sketching = true
    try {
      do {
        waiting = false
        const question = asked
        if (question === undefined) return
        const reply = await quick.ask('forecast', [{ ...question, fineness: 'sketch' }], { silentForMs: 15_000 }).answer
        // A sketch of a job that has moved on still shows where the drag is going; a full answer is never replaced by its sketch.
        if (question === asked ? stale.value || reply.kind !== 'answer' : reply.kind === 'answer') take(question, 'sketch', reply)
      } while (waiting)
    } catch (error) {
      fail(error, () => again())
    } finally {
      sketching = false
    }
  }

  async function complete(): Promise<void> {
    const question = asked
    if (question === undefined) return
    full = thorough.ask('forecast', [{ ...question, fineness: 'normal' }], {
      onProgress: (now) => {
        if (question === asked) progress.value = now
      },
    })
    try {
      const reply = await full.answer
      if (question !== asked) return
      batch(() => {
        progress.value = undefined
        take(question, 'normal', reply)
      })
    } catch (error) {
      if (question === asked) fail(error, () => again())
    }
  }

  function again(): void {
    if (asked !== undefined) ask(asked.job, asked.units)
  }

  function ask(job: JobText, units: System): void {
    asked = { job, units }
    batch(() => {
      stale.value = true
      progress.value = undefined
    })
    full?.drop()
    full = undefined
    clearTimeout(rest)
    rest = setTimeout(() => void complete(), restMs)
    void sketch()
  }

  return { answered, stale, problems, untreated, progress, failed, ask }
}
