import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { Routes } from '#contract/answers.ts'
import type { Problem } from '#contract/problems.ts'
import type { System } from '#units/length.ts'
import type { Bench } from '#web/bench/bench.ts'
import type { JobText } from '#web/job/job-text.ts'
import { type Asked, Dropped } from '#web/work/crew.ts'
import { isFault } from '#web/work/fault.ts'
import type { Progress } from '#web/work/messages.ts'
import { sameQuestion } from './route-question.ts'

/** Routes that were proposed, and what they were proposed for. */
export interface Proposed {
  readonly routes: Routes
  readonly job: JobText
  readonly units: System
}

/** The planner's proposals for the open piece, kept at hand until they are put away. */
export interface RoutesDesk {
  readonly proposed: ReadonlySignal<Proposed | undefined>
  /** True when the piece, its steel or the shop has changed since they were proposed. */
  readonly outdated: ReadonlySignal<boolean>
  /** Present while the planner is at work. */
  readonly asking: ReadonlySignal<{ readonly progress?: Progress } | undefined>
  /** What keeps the planner from beginning. */
  readonly problems: ReadonlySignal<readonly Problem[]>
  readonly failed: ReadonlySignal<boolean>
  /** True while they are laid out side by side. */
  readonly laidOut: Signal<boolean>
  ask(): void
  cancel(): void
  putAway(): void
}

const desks = new WeakMap<Bench, RoutesDesk>()

export function routesDesk(bench: Bench): RoutesDesk {
  const known = desks.get(bench)
  if (known !== undefined) return known
  const kept = signal<ReadonlyMap<string, Proposed>>(new Map())
  const state = signal<
    | {
        readonly pieceId: string
        readonly asking?: { readonly progress?: Progress }
        readonly problems?: readonly Problem[]
        readonly failed?: true
      }
    | undefined
  >()
  const laidOut = signal(false)
  const pieceId = computed(() => bench.piece.value?.id ?? '')
  const ours = computed(() => (state.value?.pieceId === pieceId.value ? state.value : undefined))
  const proposed = computed(() => kept.value.get(pieceId.value))
  let running: Asked<unknown> | undefined

  async function ask(): Promise<void> {
    const id = pieceId.peek()
    const job = bench.composed.peek()
    const units = bench.device.units.peek()
    running?.drop()
    state.value = { pieceId: id, asking: {} }
    const asked = bench.crew.ask('routes', [{ job, units }], {
      onProgress: (progress) => {
        if (running === asked) state.value = { pieceId: id, asking: { progress } }
      },
    })
    running = asked
    try {
      const routes = await asked.answer
      if (running !== asked) return
      batch(() => {
        if (isFault(routes)) state.value = { pieceId: id, problems: routes.problems }
        else {
          state.value = undefined
          kept.value = new Map(kept.peek()).set(id, { routes, job, units })
          if (pieceId.peek() === id) laidOut.value = true
        }
      })
    } catch (error) {
      if (error instanceof Dropped || running !== asked) return
      console.error(error)
      state.value = { pieceId: id, failed: true }
    }
  }

  const desk: RoutesDesk = {
    proposed,
    outdated: computed(() => proposed.value !== undefined && !sameQuestion(proposed.value.job, bench.composed.value)),
    asking: computed(() => ours.value?.asking),
    problems: computed(() => ours.value?.problems ?? []),
    failed: computed(() => ours.value?.failed === true),
    laidOut,
    ask: () => void ask(),
    cancel() {
      running?.drop()
      running = undefined
      state.value = undefined
    },
    putAway() {
      const rest = new Map(kept.peek())
      rest.delete(pieceId.peek())
      batch(() => {
        kept.value = rest
        laidOut.value = false
      })
    },
  }
  desks.set(bench, desk)
  return desk
}
