import { ln } from '#engine/arithmetic/elementary.ts'

/** The window of the cooling time: from 800 to 500 degC [K]. */
const FROM_K = 1073.15
const TO_K = 773.15
/** What starts colder than this has no meaningful share of the window left [K]. */
const LEAST_START_K = 900
/** Below this whatever the austenite became is settled [K]: no later warming gives the node another cooling time. */
const SETTLED_K = 623.15

/**
 * Times every node from 800 to 500 degC, the measure by which hardness is looked up (`HardeningResponse`).
 *
 * A node that starts the quench below 800 degC is timed from its start and the time is scaled to the whole window by the ratio of the
 * temperature differences: a time at the same mean rate. A node that warms again above 500 degC before it has passed 350 degC is timed
 * to its last crossing; once below 350 degC its time stands.
 */
export class CoolingClock {
  private readonly enteredS: Float64Array
  private readonly leftS: Float64Array
  private readonly scale: Float64Array
  private readonly settled: Uint8Array
  private readonly beforeK: Float64Array
  private beforeS = 0

  /** `startK` [n]: temperatures at time 0 of the quench. `peakK` [n]: what the heat reached; nodes below 900 K are never timed. */
  constructor(startK: Float64Array, peakK: Float64Array) {
    const n = startK.length
    this.enteredS = new Float64Array(n).fill(Number.NaN)
    this.leftS = new Float64Array(n).fill(Number.NaN)
    this.scale = new Float64Array(n).fill(1)
    this.settled = new Uint8Array(n)
    this.beforeK = startK.slice()
    for (let i = 0; i < n; i++) {
      const start = startK[i]!
      if (peakK[i]! < LEAST_START_K) {
        this.settled[i] = 1
        continue
      }
      if (start <= FROM_K) {
        this.enteredS[i] = 0
        this.scale[i] = start > TO_K ? (FROM_K - TO_K) / Math.max(start - TO_K, LEAST_START_K - TO_K) : Number.POSITIVE_INFINITY
      }
    }
  }

  /** After every solver step: `timeS` since the start of the quench, rising; temperatures [n] at that time. */
  update(timeS: number, temperatureK: Float64Array): void {
    const { beforeK, beforeS, settled } = this
    if (!(timeS > beforeS)) {
      beforeK.set(temperatureK)
      return
    }
    for (let i = 0; i < temperatureK.length; i++) {
      if (settled[i] === 1) continue
      const a = beforeK[i]!
      const b = temperatureK[i]!
      if (a > FROM_K && b <= FROM_K) {
        this.enteredS[i] = crossing(beforeS, timeS, a, b, FROM_K)
        this.scale[i] = 1
      }
      if (a > TO_K && b <= TO_K) this.leftS[i] = crossing(beforeS, timeS, a, b, TO_K)
      if (b < SETTLED_K && this.leftS[i]! >= 0) settled[i] = 1
    }
    beforeK.set(temperatureK)
    this.beforeS = timeS
  }

  /** Time from 800 to 500 degC of each node so far [n, s]; Infinity where it has not passed the window (or was never hot). */
  times(): Float64Array {
    return this.enteredS.map((entered, i) => {
      const left = this.leftS[i]!
      return left > entered ? (left - entered) * this.scale[i]! : Number.POSITIVE_INFINITY
    })
  }
}

/** When the temperature passed `atK`, exponential between the two instants toward a surrounding 300 K. */
function crossing(t0: number, t1: number, a: number, b: number, atK: number): number {
  const share = ln((a - 300) / (atK - 300)) / ln((a - 300) / (b - 300))
  return t0 + (t1 - t0) * Math.min(1, Math.max(0, share))
}

/** Time from 800 to 500 degC of one cooling curve [s], by the same rules as the clock; Infinity when it never passes. */
export function coolingTime800To500(timesS: readonly number[], temperaturesK: readonly number[]): number {
  const first = temperaturesK[0]
  if (first === undefined || timesS.length !== temperaturesK.length)
    throw new RangeError(
      `cooling time: ${timesS.length} times for ${temperaturesK.length} temperatures; give one for each, at least one`,
    )
  const clock = new CoolingClock(Float64Array.of(first), Float64Array.of(Number.POSITIVE_INFINITY))
  for (let i = 1; i < timesS.length; i++) clock.update(timesS[i]! - timesS[0]!, Float64Array.of(temperaturesK[i]!))
  return clock.times()[0]!
}
