import { computed, signal } from '@preact/signals'
import type { Forecast } from '#contract/answers.ts'
import type { Problem } from '#contract/problems.ts'
import type { System } from '#units/length.ts'
import type { Bench, Field, MetalPoint, Selection } from '#web/bench/bench.ts'
import { begun, changed, redone, settled, undone } from '#web/job/history.ts'
import type { JobText } from '#web/job/job-text.ts'
import { type Asked, Dropped } from '#web/work/crew.ts'
import type { Answered } from '#web/work/desk.ts'
import type { Progress } from '#web/work/messages.ts'

/** A question to the crew that a test answers when it likes. */
export interface Question {
  readonly name: string
  readonly questions: readonly unknown[]
  readonly progress: (progress: Progress) => void
  readonly answer: (reply: unknown) => void
  readonly fail: (error: Error) => void
}

/** A bench with a real history and no engine: a test hands in the answers. */
export interface TestBench {
  readonly bench: Bench
  readonly questions: Question[]
  /** The full answer to the document as it stands. */
  answer(forecast: Forecast): void
  fault(problems: readonly Problem[]): void
}

export function testBench(job: JobText): TestBench {
  const history = signal(begun(job))
  const now = computed(() => history.value.now)
  const composed = computed(() => ({ ...now.value, shop: now.value.shop ?? SHOP }))
  const answered = signal<Answered | undefined>()
  const problems = signal<readonly Problem[]>([])
  const piece = { id: 'test', job, made: '', changed: '' }
  const questions: Question[] = []
  const put = (next: typeof history.value): void => {
    history.value = next
  }
  const ask = (
    name: string,
    asked: readonly unknown[],
    { onProgress }: { onProgress?: (progress: Progress) => void } = {},
  ): Asked<unknown> => {
    let fail = (_: Error): void => undefined
    const answer = new Promise<unknown>((resolve, reject) => {
      fail = reject
      questions.push({ name, questions: asked, progress: (each) => onProgress?.(each), answer: resolve, fail: reject })
    })
    answer.catch(() => undefined)
    return { answer, drop: () => fail(new Dropped(name)) }
  }
  const bench: Partial<Bench> = {
    device: { units: signal<System>('metric'), ground: signal('paper') },
    piece: signal(piece),
    pieces: signal([piece]),
    job: now,
    composed,
    outlook: {
      answered,
      stale: computed(() => answered.value?.job !== composed.value),
      problems,
      untreated: computed(() => now.value.process === undefined),
      progress: signal(undefined),
      halted: signal(false),
      failed: signal(undefined),
      halt: () => undefined,
      resume: () => undefined,
    },
    crew: { ask: ask as Bench['crew']['ask'] },
    edit: (says, change, merge) => put(changed(history.value, change(history.value.now), says, merge)),
    settle: () => put(settled(history.value)),
    undo: () => put(undone(history.value)),
    redo: () => put(redone(history.value)),
    undoSays: computed(() => history.value.past.at(-1)?.says),
    redoSays: computed(() => history.value.future[0]?.says),
    instantS: signal(Number.POSITIVE_INFINITY),
    field: signal<Field>('tempered'),
    selection: signal<Selection | undefined>(),
    point: signal<MetalPoint | undefined>(),
  }
  return {
    bench: bench as Bench,
    questions,
    answer(forecast) {
      answered.value = {
        job: composed.value,
        units: 'metric',
        fineness: 'normal',
        forecast,
        picture: undefined as unknown as Answered['picture'],
      }
    },
    fault(found) {
      problems.value = found
    },
  }
}

const SHOP = {
  fires: [{ name: 'gas forge', kind: 'gas' }],
  baths: [{ name: 'slack tub', kind: 'water', volume: '60 L', depth: '400 mm' }],
  ovens: [{ name: 'small oven', max: '232 °C' }],
}

/** The document that the forecast of the tests answers. */
export const CHISEL: JobText = {
  piece: 'cold chisel',
  steel: { grade: 'W1' },
  profile: [
    { shape: 'flat', from: '2.5 x 22 mm', to: '11 x 20 mm', length: '45 mm' },
    { shape: 'octagon', across: '19 mm', length: '125 mm' },
  ],
  zones: [{ name: 'edge', from: '0 mm', to: '20 mm', aim: '54..59 HRC' }],
  process: [
    { do: 'normalise', in: 'gas forge', to: '830 °C', hold: '3 min', times: 2 },
    { do: 'heat', in: 'gas forge', to: '785 °C', hold: '5 min' },
    { do: 'carry', for: '3 s' },
    { do: 'quench', in: 'slack tub', depth: '35 mm', for: '2 min' },
    { do: 'temper', in: 'small oven', at: '220 °C', hold: '2 h' },
  ],
}
