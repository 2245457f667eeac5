import { runStage } from '#engine/conduction/stage.ts'
import { airContact } from '#engine/surface-heat/air.ts'
import { bathContact } from '#engine/surface-heat/bath.ts'
import type { Bench } from './bench.ts'
import { allUnderM, typicalAcrossM } from './body.ts'
import type { ProcessStep } from './process.ts'
import { bathNow, coolInAir, isAir } from './quenching.ts'

/** Longest that a smith waits for the colours to come [s]. */
const PATIENCE_S = 900
/** The edge that is watched: skin within this distance of the working end [m]. */
const EDGE_M = 0.003

/** Heat left in the body runs to the edge; when the edge has reached the stop, everything goes back into the bath. */
export function runColours(bench: Bench, step: Extract<ProcessStep, { do: 'run-colours' }>, index: number): void {
  const { body, state } = bench
  const startS = bench.nowS
  const edge: number[] = []
  const { xM, depthM } = body.mesh
  for (let i = 0; i < xM.length; i++) if (depthM[i] === 0 && xM[i]! <= Math.max(EDGE_M, Math.min(...xM))) edge.push(i)
  const meanEdge = (temperatureK: Float64Array): number => edge.reduce((sum, i) => sum + temperatureK[i]!, 0) / edge.length
  let reachedS: number | null = null
  let hottestEdgeK = 0
  let risePerS = 0
  let lastS = 0
  let lastK = Number.NaN
  coolInAir(bench, (timeS, temperatureK) => {
    const nowK = meanEdge(temperatureK)
    if (timeS > lastS && !Number.isNaN(lastK)) risePerS = (nowK - lastK) / (timeS - lastS)
    lastS = timeS
    lastK = nowK
    hottestEdgeK = Math.max(hottestEdgeK, nowK)
    if (nowK < step.stopAtK) return timeS >= PATIENCE_S
    reachedS = timeS
    return true
  })

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
  })
}
