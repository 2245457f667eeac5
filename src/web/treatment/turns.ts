import { effect, type ReadonlySignal, signal } from '@preact/signals'
import type { Bench } from '#web/bench/bench.ts'
import type { Answered } from '#web/work/desk.ts'

/** Two full answers of one piece, the one with a change and the one without. */
export interface Turn {
  readonly before: Answered
  readonly after: Answered
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

const watched = new WeakMap<Bench, Turns>()

/** Follows the full answers of the open piece. Sketches are left aside: a rough figure beside a fine one would tell of a change that is none. */
export function turnsOf(bench: Bench): Turns {
  const known = watched.get(bench)
  if (known !== undefined) return known
  const full = signal<Answered | undefined>()
  const turn = signal<Turn | undefined>()
  const mark = signal<Mark | undefined>()
  let markNext: string | undefined
  let pieceId: string | undefined
  effect(() => {
    const answered = bench.outlook.answered.value
    const piece = bench.piece.value?.id
    if (piece !== pieceId) {
      pieceId = piece
      full.value = undefined
      turn.value = undefined
      mark.value = undefined
      markNext = undefined
    }
    if (answered?.fineness !== 'normal' || answered.job !== bench.composed.peek()) return
    const before = full.peek()
    if (before === answered) return
    if (before !== undefined && before.job !== answered.job) turn.value = { before, after: answered }
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
