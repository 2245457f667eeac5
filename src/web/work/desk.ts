import { batch, type ReadonlySignal, signal } from '@preact/signals'
import type { Forecast } from '#contract/answers.ts'
import type { Picture } from '#contract/picture-fields.ts'
import type { Problem } from '#contract/problems.ts'
import type { System } from '#units/length.ts'
import type { JobText } from '#web/job/job-text.ts'
import { type Asked, type Crew, Dropped, WorkerLost } from './crew.ts'
import { knownAnswers } from './known-answers.ts'
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
  /** True when the full answer was stopped by hand. */
  readonly halted: ReadonlySignal<boolean>
  /** The program failed: what to tell, and a way to try again. */
  readonly failed: ReadonlySignal<{ readonly says: string; readonly retry: () => void } | undefined>
  /** Stops the full answer that is being worked out. */
  halt(): void
  /** Works it out after all. */
  resume(): void
}

export interface Desk extends Outlook {
  /**
   * Asks for the forecast of a job: a sketch now, the full answer once `ask` has been quiet for a moment. Older questions are dropped.
   * The answers of another piece (`pieceId`) do not stand in for this one's.
   */
  ask(job: JobText, units: System, pieceId?: string): void
}

interface Question {
  readonly job: JobText
  readonly units: System
}

/** Rest before the full answer is begun: a hand that only pauses does not start it. */
const REST_MS = 300
/** Full answers kept: each holds a few megabytes. */
const KEPT = 8
const SKETCH_SILENT_MS = 15_000

const LOST = 'The forecast stopped: the part of the page that works it out ended. Your drawing is kept.'
const FAULTY = 'The forecast stopped on a fault of the program. Your drawing is kept.'

/**
 * Keeps one forecast up to date. Sketches go to a crew of one and never queue: while one is worked out only the newest question waits.
 * The full answer goes to another crew after its sketch, and is dropped in mid-work when the job changes.
 */
export function desk(quick: Crew, thorough: Crew, restMs = REST_MS): Desk {
  const answered = signal<Answered | undefined>()
  const stale = signal(true)
  const problems = signal<readonly Problem[]>([])
  const untreated = signal(false)
  const progress = signal<Progress | undefined>()
  const halted = signal(false)
  const failed = signal<{ says: string; retry: () => void } | undefined>()
  const known = knownAnswers(KEPT)

  let asked: Question | undefined
  let pieceOf: string | undefined
  let sketching = false
  let waiting = false
  /** The hand has rested, and the full answer begins when the sketch is there. */
  let rested = false
  let full: Asked<ForecastReply> | undefined
  let rest: ReturnType<typeof setTimeout> | undefined

  function takeAnswer(answer: Answered): void {
    batch(() => {
      answered.value = answer
      if (answer.job === asked?.job && answer.units === asked.units) {
        failed.value = undefined
        problems.value = []
        untreated.value = false
        stale.value = answer.fineness !== 'normal'
      }
    })
  }

  /** What came of the question that stands. */
  function take(question: Question, fineness: Fineness, reply: ForecastReply): void {
    if (reply.kind === 'answer') {
      const { forecast, picture } = reply
      const answer: Answered = { ...question, fineness, forecast, picture }
      if (fineness === 'normal') known.keep(answer)
      takeAnswer(answer)
      return
    }
    batch(() => {
      failed.value = undefined
      progress.value = undefined
      problems.value = reply.kind === 'problems' ? reply.problems : []
      untreated.value = reply.kind === 'no-process'
      if (reply.kind === 'no-process') answered.value = undefined
      stale.value = reply.kind === 'problems'
    })
  }

  function fail(error: unknown): void {
    if (error instanceof Dropped) return
    console.error(error)
    batch(() => {
      progress.value = undefined
      failed.value = { says: error instanceof WorkerLost ? LOST : FAULTY, retry: again }
    })
  }

  async function sketch(): Promise<void> {
    waiting = sketching
    if (sketching) return
    sketching = true
    try {
      do {
        waiting = false
        const question = asked
        if (question === undefined) return
        const piece = pieceOf
        const reply = await sketched(question)
        if (question === asked) {
          // A full answer is never replaced by its sketch.
          if (stale.value || reply.kind !== 'answer') take(question, 'sketch', reply)
          // Where there is nothing to work out, the full answer would say the same.
          if (reply.kind !== 'answer') forget()
        } else if (reply.kind === 'answer' && piece === pieceOf && stale.value) take(question, 'sketch', reply)
      } while (waiting)
    } catch (error) {
      fail(error)
    } finally {
      sketching = false
      if (rested) void complete()
    }
  }

  /** A thread that is lost over a sketch is replaced without a word, once. */
  async function sketched(question: Question): Promise<ForecastReply> {
    const askQuick = (): Promise<ForecastReply> =>
      quick.ask('forecast', [{ ...question, fineness: 'sketch' }], { silentForMs: SKETCH_SILENT_MS }).answer
    try {
      return await askQuick()
    } catch (error) {
      if (error instanceof WorkerLost) return askQuick()
      throw error
    }
  }

  async function complete(): Promise<void> {
    const question = asked
    rested = sketching
    if (question === undefined || sketching) return
    progress.value = { done: 0, total: 1, says: 'begin' }
    const mine = thorough.ask('forecast', [{ ...question, fineness: 'normal' }], {
      onProgress: (now) => {
        if (mine === full) progress.value = now
      },
    })
    full = mine
    try {
      const reply = await mine.answer
      if (mine !== full) return
      full = undefined
      batch(() => {
        progress.value = undefined
        take(question, 'normal', reply)
      })
    } catch (error) {
      if (mine !== full) return
      full = undefined
      fail(error)
    }
  }

  /** Nothing is under way any more, and nothing will begin by itself. */
  function forget(): void {
    clearTimeout(rest)
    rested = false
    const dropped = full
    full = undefined
    dropped?.drop()
    progress.value = undefined
  }

  function again(): void {
    if (asked !== undefined) ask(asked.job, asked.units, pieceOf)
  }

  function ask(job: JobText, units: System, pieceId?: string): void {
    asked = { job, units }
    forget()
    const found = known.find(job, units)
    batch(() => {
      if (pieceId !== pieceOf) {
        answered.value = undefined
        problems.value = []
        untreated.value = false
      }
      pieceOf = pieceId
      failed.value = undefined
      halted.value = false
      stale.value = true
      if (found !== undefined) takeAnswer(found)
    })
    if (found !== undefined) {
      waiting = false
      return
    }
    rest = setTimeout(() => void complete(), restMs)
    void sketch()
  }

  return {
    answered,
    stale,
    problems,
    untreated,
    progress,
    halted,
    failed,
    ask,
    halt() {
      batch(() => {
        forget()
        halted.value = true
      })
    },
    resume() {
      halted.value = false
      void complete()
    },
  }
}
