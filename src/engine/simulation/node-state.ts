/** Room temperature, where every piece starts and ends [K]. */
export const ROOM_K = 293.15

/** What every node is and has been through [n each]. Mutable: the steps of one treatment write it in turn. */
export class NodeState {
  /** Now [K]. */
  readonly temperatureK: Float64Array
  /** Hottest in the last hardening heat [K]; room temperature before one. */
  readonly peakK: Float64Array
  /** Time within 15 K of `peakK` in that heat [s]. */
  readonly soakS: Float64Array
  /** Time from 800 to 500 degC in the last quench [s]; Infinity where it was never passed. */
  readonly coolingS: Float64Array
  /** Coldest since the last quench [K]; Infinity before one. */
  readonly lowestK: Float64Array
  /** Tempering parameters for the constants 18 and 20 (hours) [K]; 0 while untempered. */
  readonly parameter18K: Float64Array
  readonly parameter20K: Float64Array
  /** Hottest in any temper since the last quench [K]; 0 before one. */
  readonly temperPeakK: Float64Array
  /** Whether the piece has been normalised (or annealed) before hardening, and how often. */
  normalised = 0
  annealed = false

  constructor(nodes: number) {
    this.temperatureK = new Float64Array(nodes).fill(ROOM_K)
    this.peakK = new Float64Array(nodes).fill(ROOM_K)
    this.soakS = new Float64Array(nodes)
    this.coolingS = new Float64Array(nodes).fill(Number.POSITIVE_INFINITY)
    this.lowestK = new Float64Array(nodes).fill(Number.POSITIVE_INFINITY)
    this.parameter18K = new Float64Array(nodes)
    this.parameter20K = new Float64Array(nodes)
    this.temperPeakK = new Float64Array(nodes)
  }
}
