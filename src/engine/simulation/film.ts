import type { ProcessStep } from './process.ts'

/** The whole piece through time: instants out of the solver's own steps, each of one step of the process. Times never fall. */
export interface Film {
  /** Since the start of the treatment [s]. */
  readonly timeS: readonly number[]
  /** Index in the job's process; the air after a quench belongs to the quench. */
  readonly step: readonly number[]
  /** How far up the piece the bath stands [m]; NaN where the piece is in no bath, more than its length where it is all under. */
  readonly levelM: readonly number[]
  /** Each [n, K]. */
  readonly temperatureK: readonly Float32Array[]
}

interface Frame {
  timeS: number
  readonly levelM: number
  readonly temperatureK: Float32Array
  /** What would be lost without this instant: how far straight lines between its neighbours pass it by, in kelvin. */
  worth: number
}

/** Temperatures in a film, over all nodes and instants: 3.2 MB of them. */
const MOST_VALUES = 800_000
/** Instants of a step at most, and of a quench, where things move fastest. */
const MOST = 40
const MOST_OF_QUENCH = 64
const FEWEST = 6

/** How many instants to keep of each step, so that a long treatment on a fine mesh still makes a film of bearable size. */
export function instantsWanted(process: readonly ProcessStep[], nodes: number): number[] {
  const weight = (step: ProcessStep): number => (step.do === 'quench' ? 1.6 : step.do === 'carry' ? 0.5 : 1)
  const rounds = (step: ProcessStep): number => ('times' in step ? step.times : 1)
  const all = process.reduce((sum, step) => sum + rounds(step) * weight(step), 0)
  return process.map((step) => {
    const share = Math.floor((MOST_VALUES / nodes) * (weight(step) / all))
    return Math.max(FEWEST, Math.min(share, step.do === 'quench' ? MOST_OF_QUENCH : MOST))
  })
}

/** Instants of a step that are kept however little happens. */
const LEAST = 12
/** Beyond those, an instant that straight lines meet as nearly as this is let go [K]. */
const TELLS_K = 0.3
/** Instants lie about evenly in the logarithm of time where temperatures stand still: worth of one e-fold, and of a metre of the bath's rise [K]. */
const EVEN_K = 2
const RISE_K_PER_M = 500

/**
 * Keeps the instants of a step that tell most. Each solver step comes in; whenever there are more than wanted, the one that its neighbours
 * tell nearly as well without is let go. The first and last of a step stay, and so does the moment the piece leaves the bath.
 */
export class FilmRecorder {
  private readonly most: readonly number[]
  private readonly timeS: number[] = []
  private readonly step: number[] = []
  private readonly levelM: number[] = []
  private readonly temperatureK: Float32Array[] = []
  private frames: Frame[] = []
  private readonly spare: Float32Array[] = []

  /** `most`: instants wanted of each step of the process. */
  constructor(most: readonly number[]) {
    this.most = most
  }

  add(step: number, timeS: number, temperatureK: ArrayLike<number>, levelM = Number.NaN): void {
    const { frames } = this
    const last = frames.length - 1
    // One stage begins where another of the same step ended.
    if (last >= 0 && timeS <= frames[last]!.timeS) return
    const kept = this.spare.pop() ?? new Float32Array(temperatureK.length)
    kept.set(temperatureK)
    frames.push({ timeS, levelM, temperatureK: kept, worth: Number.POSITIVE_INFINITY })
    if (last < 1) return
    this.weigh(last)
    const most = this.most[step] ?? LEAST
    while (frames.length > Math.min(LEAST, most)) {
      const least = this.leastWorth()
      if (frames.length <= most && frames[least]!.worth > TELLS_K) break
      this.drop(least)
    }
  }

  /** Ends a step at `timeS` with the piece as it is then, after `rounds` like the one recorded, `roundS` long each. */
  endStep(step: number, timeS: number, temperatureK: ArrayLike<number>, rounds: number, roundS: number): void {
    // Nothing was solved: the piece lies as it was.
    if (this.frames.length === 0) this.add(step, this.timeS[this.timeS.length - 1] ?? 0, temperatureK)
    const last = this.frames[this.frames.length - 1]
    // Sums of stages end a rounding away from the step.
    const roundEndS = timeS - (rounds - 1) * roundS
    if (last !== undefined && Math.abs(roundEndS - last.timeS) < 1e-3) last.timeS = roundEndS
    for (let round = 0; round < rounds; round++) {
      for (const frame of this.frames) {
        // Sums of rounds end a rounding away from one another, and time never falls.
        this.timeS.push(Math.max(this.timeS[this.timeS.length - 1] ?? 0, frame.timeS + round * roundS))
        this.step.push(step)
        this.levelM.push(frame.levelM)
        this.temperatureK.push(frame.temperatureK)
      }
    }
    this.frames = []
    const endS = this.timeS[this.timeS.length - 1] ?? Number.NEGATIVE_INFINITY
    if (timeS - endS < 1e-3) return
    this.timeS.push(timeS)
    this.step.push(step)
    this.levelM.push(Number.NaN)
    this.temperatureK.push(Float32Array.from(temperatureK))
  }

  film(): Film {
    const { timeS, step, levelM, temperatureK } = this
    return { timeS, step, levelM, temperatureK }
  }

  private leastWorth(): number {
    let least = 1
    for (let i = 2; i < this.frames.length - 1; i++) if (this.frames[i]!.worth < this.frames[least]!.worth) least = i
    return least
  }

  private drop(i: number): void {
    this.spare.push(this.frames[i]!.temperatureK)
    this.frames.splice(i, 1)
    if (i - 1 > 0) this.weigh(i - 1)
    if (i < this.frames.length - 1) this.weigh(i)
  }

  private weigh(i: number): void {
    const before = this.frames[i - 1]!
    const frame = this.frames[i]!
    const after = this.frames[i + 1]!
    if (Number.isNaN(before.levelM) !== Number.isNaN(after.levelM)) {
      frame.worth = Number.POSITIVE_INFINITY
      return
    }
    const share = (frame.timeS - before.timeS) / (after.timeS - before.timeS)
    const a = before.temperatureK
    const b = frame.temperatureK
    const c = after.temperatureK
    let bendK = 0
    for (let n = 0; n < b.length; n++) {
      const away = Math.abs(b[n]! - a[n]! - share * (c[n]! - a[n]!))
      if (away > bendK) bendK = away
    }
    const even = (after.timeS - before.timeS) / Math.max(after.timeS - this.frames[0]!.timeS, 1e-9)
    const rise = Math.abs(frame.levelM - before.levelM - share * (after.levelM - before.levelM))
    frame.worth = bendK + EVEN_K * even + (Number.isNaN(rise) ? 0 : RISE_K_PER_M * rise)
  }
}
