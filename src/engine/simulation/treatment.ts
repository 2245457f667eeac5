import type { MeshGrade } from '#engine/geometry/mesh.ts'
import { criticalTemperatures } from '#engine/metallurgy/critical-temperatures.ts'
import { hardeningResponse } from '#engine/metallurgy/hardening-response.ts'
import { type Body, bodyOf } from './body.ts'
import type { Bench } from './bench.ts'
import { runColours } from './colours.ts'
import { temper } from './drawing.ts'
import { heat } from './heating.ts'
import type { Job } from './job.ts'
import { carry, coolInAir, quench, warmBath } from './quenching.ts'
import type { StepRecord } from './records.ts'
import { NodeState } from './node-state.ts'
import { NOMINAL, type Scenario } from './scenario.ts'
import { type Trace, TraceWriter } from './trace.ts'

export interface TreatOptions {
  readonly grade: MeshGrade
  readonly scenario?: Scenario
  /** Stop once the piece is cold after the last quench; tempering is then left out. */
  readonly onlyHardening?: boolean
  /** Height whose skin and middle are traced [m]. */
  readonly traceAtM: number
  /** Told before each step, for progress: index of the step. */
  readonly onStep?: (step: number) => void
}

/** A piece after its treatment: what each step did, what each node went through, and one place through time. */
export interface Treatment {
  readonly body: Body
  readonly state: NodeState
  readonly records: readonly StepRecord[]
  readonly trace: Trace
}

const TOLERANCE_K: { readonly [Grade in MeshGrade]: number } = { draft: 1, normal: 0.4, fine: 0.2 }

/**
 * Runs a job's process step by step on its piece: fire, walk, bath, air and oven, one conduction stage after another.
 * Pure: the same job, grade and scenario give the same bits.
 */
export function treat(job: Job, options: TreatOptions): Treatment {
  const body = bodyOf(job, options.grade)
  const found = criticalTemperatures(job.steel.composition, job.steel.gradeId === undefined ? {} : { gradeId: job.steel.gradeId })
  const critical = { ac1K: found.ac1K.value, ac3K: Math.max(found.ac3K.value, found.ac1K.value + 5), msK: found.msK.value }
  const bench: Bench = {
    job,
    body,
    state: new NodeState(body.mesh.xM.length),
    scenario: options.scenario ?? NOMINAL,
    toleranceK: TOLERANCE_K[options.grade],
    records: [],
    writer: new TraceWriter(body, options.traceAtM),
    baths: new Map(job.shop.baths.map((bath) => [bath.name, bath])),
    critical,
    response: hardeningResponse(job.steel, job.steel.composition),
    nowS: 0,
    quenchedAtS: Number.NaN,
    clock: undefined,
    clockStartS: 0,
  }
  bench.writer.add(0, bench.state.temperatureK)
  job.process.forEach((step, index) => {
    if (options.onlyHardening && (step.do === 'temper' || step.do === 'stress-relieve') && !Number.isNaN(bench.quenchedAtS)) return
    options.onStep?.(index)
    switch (step.do) {
      case 'normalise':
      case 'anneal':
      case 'stress-relieve':
      case 'heat':
        return heat(bench, step, index)
      case 'carry':
        return carry(bench, step, index)
      case 'quench':
        quench(bench, step, index)
        // What follows decides whether the piece is left to cool right out of the bath.
        if (job.process[index + 1]?.do !== 'run-colours') coolInAir(bench)
        return
      case 'run-colours':
        runColours(bench, step, index)
        coolInAir(bench)
        return
      case 'temper':
        return temper(bench, step, index)
      case 'warm-bath':
        return warmBath(bench, step, index)
      default:
        return unreachable(step)
    }
  })
  return { body, state: bench.state, records: bench.records, trace: bench.writer.trace }
}

function unreachable(step: never): never {
  throw new Error(`treat: unknown step ${JSON.stringify(step)}`)
}
