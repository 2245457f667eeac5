import { effect, type ReadonlySignal, signal } from '@preact/signals'
import type { Bench } from '#web/bench/bench.ts'
import type { JobText } from '#web/job/job-text.ts'
import type { Answered } from '#web/work/desk.ts'

/** Two answers of one piece and of one fineness, the one without a change and the one with it. */
export interface Turn {
  readonly before: Answered
  readonly after: Answered
  /** Told from two sketches: a first look, until both full answers are there. */
  readonly rough: boolean
}

export interface Turns {
  /** The last full answer of the open piece; while a newer one is worked out it stays. */
  readonly full: ReadonlySignal<Answered | undefined>
  /** What the last change came to; undefined until something was changed and answered. */
  readonly turn: ReadonlySignal<Turn | undefined>
  /** The answer that all changes are measured from, and why it is that one. */
  readonly mark: ReadonlySignal<Mark | undefined>
  /** Measures from now on from the answer that is there, or from the next one. */
  setMark(says: string, answer: 'this' | 'next'): void
  dropMark(): void
}

export interface Mark {
  readonly says: string
  readonly from: Answered
}

/** The answers to one document. */
export interface Answers {
  readonly job: JobText
  readonly sketch?: Answered
  readonly full?: Answered
}

/** The document that changes are told against, and the one that stands. */
export interface Pair {
  readonly base?: Answers
  readonly now?: Answers
}

/**
 * Takes the next answer in. Another document becomes the one that stands; the one before it is what its change is told against, unless it
 * was only passed through (a drag, a key held down) and never fully answered.
 */
export function withAnswer({ base, now }: Pair, answered: Answered): Pair {
  const key = answered.fineness === 'normal' ? 'full' : 'sketch'
  if (now?.job === answered.job) return { ...(base === undefined ? {} : { base }), now: { ...now, [key]: answered } }
  const against = now?.full !== undefined || base === undefined ? now : base
  return { ...(against === undefined ? {} : { base: against }), now: { job: answered.job, [key]: answered } }
}

/** The change that a pair tells of: from full answers where both have one, else from sketches. A sketch and a full answer are never compared. */
export function turnOfPair({ base, now }: Pair): Turn | undefined {
  if (base?.full !== undefined && now?.full !== undefined) return { before: base.full, after: now.full, rough: false }
  if (base?.sketch !== undefined && now?.sketch !== undefined) return { before: base.sketch, after: now.sketch, rough: true }
  return undefined
}

const watched = new WeakMap<Bench, Turns>()

/** Follows the answers of the open piece from the first call on. */
export function turnsOf(bench: Bench): Turns {
  const known = watched.get(bench)
  if (known !== undefined) return known
  const full = signal<Answered | undefined>()
  const turn = signal<Turn | undefined>()
  const mark = signal<Mark | undefined>()
  let pair: Pair = {}
  let markNext: string | undefined
  let pieceId: string | undefined
  effect(() => {
    const answered = bench.outlook.answered.value
    const piece = bench.piece.value?.id
    if (piece !== pieceId) {
      pieceId = piece
      pair = {}
      markNext = undefined
      full.value = undefined
      turn.value = undefined
      mark.value = undefined
    }
    // An answer to a document that has moved on tells of no change that stands.
    if (answered === undefined || answered.job !== bench.composed.peek()) return
    pair = withAnswer(pair, answered)
    turn.value = turnOfPair(pair)
    if (answered.fineness !== 'normal') return
    full.value = answered
    if (markNext !== undefined) mark.value = { says: markNext, from: answered }
    markNext = undefined
  })
  const turns: Turns = {
    full,
    turn,
    mark,
    setMark(says, answer) {
      const from = full.peek()
      if (answer === 'next') markNext = says
      else if (from !== undefined) mark.value = { says, from }
    },
    dropMark() {
      markNext = undefined
      mark.value = undefined
    },
  }
  watched.set(bench, turns)
  return turns
}
