import { runStage } from '#engine/conduction/stage.ts'
import { CoolingClock } from '#engine/metallurgy/cooling-clock.ts'
import { airContact, type SurfaceContact } from '#engine/surface-heat/air.ts'
import { type Packing, packedContact } from '#engine/surface-heat/packing.ts'
import type { Bench } from './bench.ts'
import { typicalAcrossM } from './body.ts'
import { HAND_WARM_K, ROOM_K } from './node-state.ts'
import type { Cooled } from './records.ts'
import { SHARES } from './steel-tables.ts'

/** Closed up and left, a furnace falls by about this [K/s]: common practice, no source. */
const SHUT_FURNACE_K_PER_S = 20 / 3600
/** A bed gives its heat up over days; nobody waits longer [s]. */
const LONGEST_S = 72 * 3600
/** Below this the furnace is opened and the piece goes on in the air [K]. */
const OPENED_K = 811

/** How a piece cools after a fire: in the air, in a shut furnace that falls by so much, or buried in a powder. */
export type CoolingWay = { readonly in: 'still air' | Packing } | { readonly in: 'furnace'; readonly kPerS?: number }

/**
 * Cools the piece from where it is to the room and tells how slowly it went and how hard it is after it. The bed's film is that of the middle of
 * ever longer stages, so that each warms it as the last has left it.
 */
export function coolFrom(bench: Bench, way: CoolingWay): { readonly cooledS: number; readonly cooled: Cooled } {
  const { state, critical } = bench
  const hot = Array.from(state.temperatureK, (_, i) => i).filter((i) => state.temperatureK[i]! > critical.ac1K)
  if (way.in === 'furnace') return inFurnace(bench, way.kPerS ?? SHUT_FURNACE_K_PER_S, hot.length > 0)
  const clock = new CoolingClock(state.temperatureK, state.temperatureK)
  const acrossM = typicalAcrossM(bench.body, 0, bench.body.lengthM)
  const startS = bench.nowS
  const packed = way.in !== 'still air'
  // Slow enough for pearlite, with its heat; in air as before, for a piece that may be thin.
  const materials = packed ? bench.tables.cooling : bench.tables.cold
  const materialOfNode = new Uint8Array(state.temperatureK.length)
  if (packed) for (const i of hot) materialOfNode[i] = SHARES.length
  let doneS = 0
  let cold = false
  while (!cold && doneS < LONGEST_S) {
    const stageS = packed ? Math.max(FIRST_STAGE_S, doneS) : LONGEST_S
    const contact: SurfaceContact =
      way.in === 'still air'
        ? airContact(ROOM_K, { acrossM })
        : packedContact(way.in, ROOM_K, { acrossM, sinceS: doneS + stageS / 2 })
    const fromS = doneS
    const stage = runStage({
      mesh: bench.body.mesh,
      materials,
      materialOfNode,
      temperatureK: state.temperatureK,
      surroundings: { covered: contact, rest: contact, fromM: 0, level: [[0, Number.POSITIVE_INFINITY]] },
      endS: stageS,
      toleranceK: 5 * bench.care.toleranceK,
      ...bench.care.stepping,
      observe: (timeS, temperatureK) => {
        bench.writer.add(startS + fromS + timeS, temperatureK)
        clock.update(fromS + timeS, temperatureK)
        cold = highest(temperatureK) < HAND_WARM_K
        return cold
      },
    })
    state.temperatureK.set(stage.temperatureK)
    doneS += stage.endedS
  }
  state.temperatureK.fill(ROOM_K)
  const times = clock.times()
  return {
    cooledS: doneS,
    cooled: told(
      bench,
      way.in,
      doneS,
      hot.map((i) => times[i]!),
    ),
  }
}

const FIRST_STAGE_S = 120

/** The piece follows the furnace to black, then an hour of air. */
function inFurnace(bench: Bench, kPerS: number, hardened: boolean): { readonly cooledS: number; readonly cooled: Cooled } {
  const { state } = bench
  const cooledS = Math.max(0, (highest(state.temperatureK) - OPENED_K) / kPerS) + 3600
  state.temperatureK.fill(ROOM_K)
  bench.writer.add(bench.nowS + cooledS, state.temperatureK)
  return { cooledS, cooled: told(bench, 'furnace', cooledS, hardened ? [300 / kPerS] : []) }
}

function told({ response }: Bench, in_: Cooled['in'], coldS: number, times: readonly number[]): Cooled {
  const timed = times.filter((s) => Number.isFinite(s))
  if (timed.length === 0) return { in: in_, coldS }
  const slowestS = Math.max(...timed)
  const quickestS = Math.min(...timed)
  return {
    in: in_,
    coldS,
    slowestS,
    softestHv: response.quenchedHv(slowestS),
    hardestHv: response.quenchedHv(quickestS),
  }
}

function highest(values: Float64Array): number {
  let best = values[0]!
  for (let i = 1; i < values.length; i++) if (values[i]! > best) best = values[i]!
  return best
}
