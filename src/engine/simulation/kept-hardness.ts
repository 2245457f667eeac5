import { CLASSES } from '#engine/kinetics/temperature-classes.ts'
import type { Bench } from './bench.ts'
import type { NodeState } from './node-state.ts'
import { noteTempering } from './quenching.ts'

/**
 * What earlier heats hardened, while the piece goes through the fire again: the other end of a hammer, a second try at one part. Places that the
 * new heat turns to austenite begin anew; the others keep what they were, tempered by all the warmth that reaches them.
 */
export interface KeptHardness {
  /** After every solver step of the heat: when [s since the start of the treatment], and the temperatures [n]. */
  note(nowS: number, temperatureK: Float64Array): void
  /** At the end of the heat: gives the places that stayed under Ac1 back what they were. */
  restore(): void
}

/** Undefined where nothing is hard yet, which is the common case and costs nothing. */
export function keptHardness(bench: Bench): KeptHardness | undefined {
  const { state, critical } = bench
  if (!state.lowestK.some((kelvin, i) => kelvin < critical.msK && state.peakK[i]! > critical.ac1K)) return undefined
  const earlier = state.copy()
  const beforeK = state.temperatureK.slice()
  let beforeS = bench.nowS
  return {
    note: (nowS, temperatureK) => {
      noteTempering({ ...bench, state: earlier }, beforeK, temperatureK, nowS - beforeS)
      beforeK.set(temperatureK)
      beforeS = nowS
    },
    restore: () => restoreUnder(critical.ac1K, state, earlier),
  }
}

function restoreUnder(ac1K: number, state: NodeState, earlier: NodeState): void {
  const n = state.peakK.length
  for (let i = 0; i < n; i++) {
    if (state.peakK[i]! >= ac1K || earlier.peakK[i]! < ac1K) continue
    for (const field of [
      'peakK',
      'soakS',
      'coolingS',
      'lowestK',
      'parameter18K',
      'parameter20K',
      'temperPeakK',
      'oxideS',
    ] as const)
      state[field][i] = earlier[field][i]!
    for (let k = 0; k < CLASSES; k++) state.dwellS[k * n + i] = earlier.dwellS[k * n + i]!
  }
}
