import { CLASSES } from '#engine/kinetics/temperature-classes.ts'

/** Room temperature, where every piece starts and ends [K]. */
export const ROOM_K = 293.15
/** Cool enough to hold in the hand, and to go on with [K]: 150 degF, common practice, no source. */
export const HAND_WARM_K = 338.7

/** One temper of so many alike: what it alone gives each node, by the parameter for the constant 20 [K], and its hottest [K]. */
export interface RoundState {
  readonly times: number
  readonly parameter20K: Float64Array
  readonly peakK: Float64Array
}

/** What every node is and has been through [n each]. Mutable: the steps of one treatment write it in turn. */
export class NodeState {
  /** Now [K]. */
  readonly temperatureK: Float64Array
  /** Hottest in the last hardening heat [K]; room temperature before one. */
  readonly peakK: Float64Array
  /** Time within 15 K of `peakK` in that heat [s]. */
  readonly soakS: Float64Array
  /** Time from 800 to 500 degC in the first quench after the heat [s]; Infinity where it was never passed. */
  readonly coolingS: Float64Array
  /** How long at which temperature since the last hardening heat: class after class of `CLASS_MIDDLES_K` [CLASSES x n, s]. */
  readonly dwellS: Float64Array
  /** Coldest since the last hardening heat [K]; Infinity before one. */
  readonly lowestK: Float64Array
  /** Tempering parameters for the constants 18 and 20 (hours) [K]; 0 while untempered. */
  readonly parameter18K: Float64Array
  readonly parameter20K: Float64Array
  /** Hottest in any temper since the last quench [K]; 0 before one. */
  readonly temperPeakK: Float64Array
  /** Film of oxide grown on bright skin since the last quench, as `oxideGrownS` counts it [s]; 0 inside. */
  readonly oxideS: Float64Array
  /** Tempers since the last hardening heat, those of one step together: times, and what one of them gave each node. */
  rounds: readonly RoundState[] = []
  /** Whether the piece has been normalised (or annealed) before hardening, and how often. */
  normalised = 0
  annealed = false

  constructor(nodes: number) {
    this.temperatureK = new Float64Array(nodes).fill(ROOM_K)
    this.peakK = new Float64Array(nodes).fill(ROOM_K)
    this.soakS = new Float64Array(nodes)
    this.coolingS = new Float64Array(nodes).fill(Number.POSITIVE_INFINITY)
    this.dwellS = new Float64Array(CLASSES * nodes)
    this.lowestK = new Float64Array(nodes).fill(Number.POSITIVE_INFINITY)
    this.parameter18K = new Float64Array(nodes)
    this.parameter20K = new Float64Array(nodes)
    this.temperPeakK = new Float64Array(nodes)
    this.oxideS = new Float64Array(nodes)
  }

  /** A copy that can go its own way. */
  copy(): NodeState {
    const twin = new NodeState(this.temperatureK.length)
    twin.temperatureK.set(this.temperatureK)
    twin.peakK.set(this.peakK)
    twin.soakS.set(this.soakS)
    twin.coolingS.set(this.coolingS)
    twin.dwellS.set(this.dwellS)
    twin.lowestK.set(this.lowestK)
    twin.parameter18K.set(this.parameter18K)
    twin.parameter20K.set(this.parameter20K)
    twin.temperPeakK.set(this.temperPeakK)
    twin.oxideS.set(this.oxideS)
    twin.rounds = this.rounds
    twin.normalised = this.normalised
    twin.annealed = this.annealed
    return twin
  }
}
