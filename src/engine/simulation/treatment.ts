import type { MeshGrade } from '#engine/geometry/mesh.ts'
import { criticalTemperatures } from '#engine/metallurgy/critical-temperatures.ts'
import { hardeningResponse } from '#engine/metallurgy/hardening-response.ts'
import type { Bench } from './bench.ts'
import { type Body, bodyOf } from './body.ts'
import { CARE } from './care.ts'
import { runColours } from './colours.ts'
import { temper } from './drawing.ts'
import { type Film, FilmRecorder, instantsWanted } from './film.ts'
import { heat } from './heating.ts'
import type { Job } from './job.ts'
import { NodeState } from './node-state.ts'
import type { ProcessStep } from './process.ts'
import { carry, coolInAir, quench, warmBath } from './quenching.ts'
import type { StepRecord } from './records.ts'
import type { Hardening } from './section-run.ts'
import { steelTables } from './steel-tables.ts'
import { type Trace, TraceWriter } from './trace.ts'

export interface TreatOptions {
  readonly grade: MeshGrade
  /** Only what decides the hardness out of the bath; normalising and tempering are left out. */
  readonly onlyHardening?: boolean
  /** Other films to run the last hardening quench with, as factors on the nominal one. */
  readonly filmFactors?: readonly number[]
  /** Height whose skin and middle are traced [m]. */
  readonly traceAtM: number
  /** Keeps the temperatures of the whole piece at chosen instants. */
  readonly filmed?: boolean
  /** Told before each step, for progress: index of the step. */
  readonly onStep?: (step: number) => void
}

/** A piece after its treatment: what each step did, what each node went through, and one place through time. */
export interface Treatment {
  readonly body: Body
  readonly state: NodeState
  readonly records: readonly StepRecord[]
  readonly trace: Trace
  /** What the piece met in its hardening, stage by stage, and its steel: what a cross-section is sent through. */
  readonly hardening: Hardening
  /** Only when asked for. */
  readonly film?: Film
  /** Nodes after hardening only, for each of `filmFactors`. */
  readonly variants: readonly NodeState[]
}

/** Steps that decide how hard the piece comes out of the bath; the others leave it cold as they found it. */
const HARDENS: ReadonlySet<string> = new Set(['heat', 'carry', 'quench', 'run-colours', 'warm-bath'])

/**
 * Runs a job's process step by step on its piece: fire, walk, bath, air and oven, one conduction stage after another.
 * Pure: the same job and options give the same bits.
 */
export function treat(job: Job, options: TreatOptions): Treatment {
  const body = bodyOf(job, options.grade)
  const recorder = options.filmed ? new FilmRecorder(instantsWanted(job.process, body.mesh.xM.length)) : undefined
  const bench = newBench(job, body, options, recorder)
  const variants: NodeState[] = []
  const lastHeat = job.process.findLastIndex((step) => step.do === 'heat')
  // Of several baths after one heat the first decides most.
  const hardens = job.process.findIndex((step, index) => step.do === 'quench' && index > lastHeat)
  bench.writer.add(0, bench.state.temperatureK)
  job.process.forEach((step, index) => {
    if (options.onlyHardening && !HARDENS.has(step.do)) return
    options.onStep?.(index)
    const before = index === hardens && (options.filmFactors ?? []).length > 0 ? bench.state.copy() : undefined
    run(bench, step, index)
    bench.writer.end(bench.nowS, bench.state.temperatureK)
    if (before === undefined) return
    for (const filmFactor of options.filmFactors ?? []) variants.push(hardenedWith(bench, before, filmFactor, index))
  })
  const { state, records, writer } = bench
  return {
    body,
    state,
    records,
    trace: writer.trace,
    hardening: { met: bench.met, critical: bench.critical, response: bench.response, tables: bench.tables },
    ...(recorder === undefined ? {} : { film: recorder.film() }),
    variants,
  }
}

function newBench(job: Job, body: Body, { grade, traceAtM }: TreatOptions, recorder: FilmRecorder | undefined): Bench {
  const found = criticalTemperatures(job.steel.composition, job.steel.gradeId === undefined ? {} : { gradeId: job.steel.gradeId })
  const critical = { ac1K: found.ac1K.value, ac3K: Math.max(found.ac3K.value, found.ac1K.value + 5), msK: found.msK.value }
  return {
    job,
    body,
    state: new NodeState(body.mesh.xM.length),
    filmFactor: 1,
    care: CARE[grade],
    records: [],
    writer: new TraceWriter(body, traceAtM, recorder),
    met: [],
    baths: new Map(job.shop.baths.map((bath) => [bath.name, bath])),
    bathsBefore: new Map(),
    critical,
    response: hardeningResponse(job.steel, job.steel.composition),
    tables: steelTables(job.steel.composition, critical),
    nowS: 0,
    quenchedAtS: Number.NaN,
    clock: undefined,
    clockStartS: 0,
    expectedCoolingS: undefined,
  }
}

/** The same quench from the same heat in another film, with what follows it up to the first temper. */
function hardenedWith(bench: Bench, before: NodeState, filmFactor: number, index: number): NodeState {
  const { job, body } = bench
  const twin: Bench = {
    ...bench,
    state: before.copy(),
    filmFactor,
    records: [],
    writer: new TraceWriter(body, 0),
    met: [],
    baths: new Map(bench.bathsBefore),
    nowS: 0,
  }
  for (let i = index; i < job.process.length; i++) {
    const step = job.process[i]!
    if (!HARDENS.has(step.do)) break
    run(twin, step, i)
  }
  return twin.state
}

function run(bench: Bench, step: ProcessStep, index: number): void {
  const { writer, state } = bench
  writer.begin(index)
  switch (step.do) {
    case 'normalise':
    case 'anneal':
    case 'stress-relieve':
    case 'heat':
      heat(bench, step, index)
      break
    case 'carry':
      carry(bench, step, index)
      break
    case 'quench':
      bench.bathsBefore = new Map(bench.baths)
      quench(bench, step, index)
      writer.atEnd(state.temperatureK)
      if (!goesOnWarm(bench.job.process.slice(index + 1))) coolInAir(bench)
      return
    case 'run-colours':
      runColours(bench, step, index)
      writer.atEnd(state.temperatureK)
      coolInAir(bench)
      return
    case 'temper':
      temper(bench, step, index)
      break
    case 'warm-bath':
      warmBath(bench, step, index)
      break
    default:
      throw new Error(`treat: unknown step ${JSON.stringify(step satisfies never)}`)
  }
  writer.atEnd(state.temperatureK)
}

/** Colours run in the air themselves, and a second bath takes the piece as the first one leaves it; anything else finds it cold. */
function goesOnWarm(then: readonly ProcessStep[]): boolean {
  const next = then.find((step) => step.do !== 'carry')
  return then[0]?.do === 'run-colours' || next?.do === 'quench'
}
