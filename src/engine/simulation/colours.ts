import { runStage } from '#engine/conduction/stage.ts'
import { heatByColourK, hotterForColourK, oxideGrownS } from '#engine/metallurgy/temper-oxide.ts'
import { advanceParameter } from '#engine/metallurgy/tempering-parameter.ts'
import { airContact } from '#engine/surface-heat/air.ts'
import { bathContact } from '#engine/surface-heat/bath.ts'
import type { Bench } from './bench.ts'
import { allUnderM, type Body, typicalAcrossM } from './body.ts'
import { ROOM_K } from './node-state.ts'
import type { ProcessStep } from './process.ts'
import { bathNow, coolInAir, isAir } from './quenching.ts'
import type { EdgeMoment } from './records.ts'

/** Longest that a smith waits for the colours to come [s]. */
const PATIENCE_S = 900
/** The edge that is watched: skin within this distance of the working end [m]. */
const EDGE_M = 0.003

/** Longest and shortest time between two looks at the edge [s], and how far it may rise between them [K]. */
const LOOK_S = [4, 0.2] as const
const LOOK_K = 8

/** Half of what is left to the stop, so that it is not overshot; a colour lags and then comes up with the heat. */
function untilNextLook(now: EdgeMoment, before: EdgeMoment, leftK: number): number {
  const rise = Math.max(now.temperatureK - before.temperatureK, now.shownK > 0 ? now.shownK - before.shownK : 0)
  if (rise <= 0) return LOOK_S[0]
  const perS = rise / (now.timeS - before.timeS)
  return Math.max(LOOK_S[1], Math.min(LOOK_S[0], Math.min(LOOK_K, 0.5 * leftK) / perS))
}

/** How far on past the stop the edge is followed as if nobody had stopped it [s, K]. */
const FOLLOWED_S = 60
const FOLLOWED_K = 90

/** Skin nodes of the working end that an eye watches. */
export function edgeNodes({ mesh: { xM, depthM } }: Body): number[] {
  const to = Math.max(EDGE_M, Math.min(...xM))
  const nodes: number[] = []
  for (let i = 0; i < xM.length; i++) if (depthM[i] === 0 && xM[i]! <= to) nodes.push(i)
  return nodes
}

/** The edge as it is watched: how hot, how far tempered, what colour. */
class Edge {
  readonly moments: EdgeMoment[] = []
  private readonly nodes: readonly number[]
  private readonly hotterK: number
  private oxideS: number

  constructor({ body, state, job }: Bench) {
    this.nodes = edgeNodes(body)
    this.hotterK = hotterForColourK(job.steel.composition)
    this.oxideS = this.mean(state.oxideS)
    this.note(0, state.temperatureK)
  }

  note(timeS: number, temperatures: Float64Array): EdgeMoment {
    const temperatureK = this.mean(temperatures)
    const before = this.moments[this.moments.length - 1]
    const stepS = before === undefined ? 0 : timeS - before.timeS
    const meanK = 0.5 * (temperatureK + (before?.temperatureK ?? temperatureK))
    this.oxideS += oxideGrownS(meanK, stepS, this.hotterK)
    const advanced = (constant: number, parameterK = 0): number =>
      meanK < 373 ? parameterK : advanceParameter(parameterK, constant, meanK, stepS)
    const moment = {
      timeS,
      temperatureK,
      parameter18K: advanced(18, before?.parameter18K),
      parameter20K: advanced(20, before?.parameter20K),
      shownK: heatByColourK(this.oxideS),
    }
    this.moments.push(moment)
    return moment
  }

  private mean(values: Float64Array): number {
    return this.nodes.reduce((sum, i) => sum + values[i]!, 0) / this.nodes.length
  }
}

/** Heat left in the body runs to the edge; when the edge has come to the stop, everything goes back into the bath. */
export function runColours(bench: Bench, step: Extract<ProcessStep, { do: 'run-colours' }>, index: number): void {
  const { body, state } = bench
  const startS = bench.nowS
  const byColour = step.byColour === true
  // Rubbed bright as it is lifted.
  state.oxideS.fill(0)
  const edge = new Edge(bench)
  let reachedS: number | null = null
  let hottestEdgeK = 0
  let risePerS = 0
  let lookS: number = LOOK_S[0]
  coolInAir(
    bench,
    (timeS, temperatureK) => {
      const before = edge.moments[edge.moments.length - 1]!
      if (timeS <= before.timeS) return false
      const now = edge.note(timeS, temperatureK)
      risePerS = (now.temperatureK - before.temperatureK) / (timeS - before.timeS)
      hottestEdgeK = Math.max(hottestEdgeK, now.temperatureK)
      lookS = untilNextLook(now, before, byColour ? step.stopAtK - now.shownK : step.stopAtK - now.temperatureK)
      if ((byColour ? now.shownK : now.temperatureK) < step.stopAtK) return timeS >= PATIENCE_S
      reachedS = timeS
      return true
    },
    () => lookS,
  )
  const stopped = edge.moments[edge.moments.length - 1]!
  if (reachedS !== null) followOn(bench, edge, reachedS)

  const bath = bathNow(bench, step.in)
  const lengthUnderM = Math.min(step.depthM ?? body.lengthM, body.lengthM)
  const acrossM = typicalAcrossM(body, 0, lengthUnderM)
  const againS = bench.nowS
  const levelM = step.depthM ?? allUnderM(body)
  const outcome = runStage({
    mesh: body.mesh,
    materials: bench.tables.tempered,
    materialOfNode: new Uint8Array(state.temperatureK.length),
    temperatureK: state.temperatureK,
    surroundings: {
      covered: bathContact(bath, { agitation: 'moderate', acrossM }),
      rest: airContact(bath.temperatureK, { acrossM }),
      fromM: 0,
      level: [[0, step.depthM ?? Number.POSITIVE_INFINITY]],
    },
    endS: 120,
    toleranceK: Math.max(0.5, bench.care.toleranceK),
    ...bench.care.stepping,
    observe: (timeS, temperatureK) => bench.writer.add(againS + timeS, temperatureK, isAir(bath) ? Number.NaN : levelM),
  })
  state.temperatureK.set(outcome.temperatureK)
  bench.nowS = againS + outcome.endedS
  bench.quenchedAtS = bench.nowS
  if (!isAir(bath)) bench.baths.set(bath.name, { ...bath, temperatureK: outcome.fluidEndK })
  bench.records.push({
    kind: 'run-colours',
    step: index,
    startS,
    endS: bench.nowS,
    bath,
    stopAtK: step.stopAtK,
    reachedS,
    hottestEdgeK,
    risePerS,
    byColour,
    edgeK: reachedS === null ? hottestEdgeK : stopped.temperatureK,
    shownK: stopped.shownK,
    edge: edge.moments,
  })
}

/** What the edge would go on to do if it were not stopped: on a copy, and no longer than a hand could be late. */
function followOn({ body, state, tables, care }: Bench, edge: Edge, fromS: number): void {
  const stoppedK = edge.moments[edge.moments.length - 1]!.temperatureK
  const air = airContact(ROOM_K, { acrossM: typicalAcrossM(body, 0, body.lengthM) })
  runStage({
    mesh: body.mesh,
    materials: tables.tempered,
    materialOfNode: new Uint8Array(state.temperatureK.length),
    temperatureK: state.temperatureK.slice(),
    surroundings: { covered: air, rest: air, fromM: 0, level: [[0, Number.POSITIVE_INFINITY]] },
    endS: FOLLOWED_S,
    maxStepS: 2,
    toleranceK: Math.max(1, 2 * care.toleranceK),
    ...care.stepping,
    observe: (timeS, temperatureK) => {
      if (timeS <= 0) return false
      return edge.note(fromS + timeS, temperatureK).temperatureK > stoppedK + FOLLOWED_K
    },
  })
}
