import { effect, type ReadonlySignal, signal } from '@preact/signals'
import type { Bench } from '#web/bench/bench.ts'
import type { Answered } from '#web/work/desk.ts'

/** Two full answers of one piece, one after the other. */
export interface Turn {
  readonly before: Answered
  readonly after: Answered
}

export interface Turns {
  /** The last full answer of the open piece; while a newer one is worked out it stays. */
  readonly full: ReadonlySignal<Answered | undefined>
  /** What the last change came to; undefined until something was changed and answered. */
  readonly turn: ReadonlySignal<Turn | undefined>
}

const watched = new WeakMap<Bench, Turns>()

/** Follows the full answers of the open piece. Sketches are left aside: a rough figure beside a fine one would tell of a change that is none. */
export function turnsOf(bench: Bench): Turns {
  const known = watched.get(bench)
  if (known !== undefined) return known
  const full = signal<Answered | undefined>()
  const turn = signal<Turn | undefined>()
  let pieceId: string | undefined
  effect(() => {
    const answered = bench.outlook.answered.value
    const piece = bench.piece.value?.id
    if (piece !== pieceId) {
      pieceId = piece
      full.value = undefined
      turn.value = undefined
    }
    if (answered?.fineness !== 'normal' || answered.job !== bench.composed.peek()) return
    const before = full.peek()
    if (before === answered) return
    if (before !== undefined && before.job !== answered.job) turn.value = { before, after: answered }
    full.value = answered
  })
  const turns = { full, turn }
  watched.set(bench, turns)
  return turns
}
