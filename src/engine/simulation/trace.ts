import type { Body } from './body.ts'
import type { FilmRecorder } from './film.ts'

/** Temperature of the skin and of the middle at one height, through the whole treatment. */
export interface Trace {
  readonly xM: number
  readonly timeS: number[]
  readonly skinK: number[]
  readonly centreK: number[]
  /** The same two at the end of each step: for a quench when it comes out of the bath, for a temper when it is cold again. */
  readonly atEnds: { readonly skinK: number; readonly centreK: number }[]
}

/** Writes a trace while the stages run; points closer together than the eye can tell are dropped. */
export class TraceWriter {
  readonly trace: Trace
  readonly skinNode: number
  readonly centreNode: number
  private readonly film: FilmRecorder | undefined
  private step = 0
  private times = 1
  private roundS = 0

  constructor(body: Body, xM: number, film?: FilmRecorder) {
    this.film = film
    this.trace = { xM, timeS: [], skinK: [], centreK: [], atEnds: [] }
    this.skinNode = nearestNode(body, xM, (i) => body.mesh.depthM[i] === 0)
    this.centreNode = nearestNode(body, xM, (i) => body.mesh.rM[i]! <= 0.3 * body.localRadiusM[i]! && body.mesh.depthM[i]! > 0)
  }

  /** `levelM`: how far up the piece the bath stands; left out where there is none. */
  add(timeS: number, temperatureK: Float64Array, levelM?: number): void {
    this.film?.add(this.step, timeS, temperatureK, levelM)
    const { trace } = this
    const last = trace.timeS.length - 1
    const skinK = temperatureK[this.skinNode]!
    const centreK = temperatureK[this.centreNode]!
    if (last >= 0) {
      const still = Math.abs(skinK - trace.skinK[last]!) < 2 && Math.abs(centreK - trace.centreK[last]!) < 2
      if (still && timeS - trace.timeS[last]! < 600) return
    }
    trace.timeS.push(timeS)
    trace.skinK.push(skinK)
    trace.centreK.push(centreK)
  }

  /** A step begins. */
  begin(step: number): void {
    this.step = step
    this.times = 1
  }

  /** What was written since the step began is one of `times` rounds, each like it and `roundS` long. */
  repeats(times: number, roundS: number): void {
    this.times = times
    this.roundS = roundS
  }

  /** What the step was to do is done; the air after a quench still belongs to it. */
  atEnd(temperatureK: Float64Array): void {
    this.trace.atEnds.push({ skinK: temperatureK[this.skinNode]!, centreK: temperatureK[this.centreNode]! })
  }

  /** The step is over, air and all. */
  end(timeS: number, temperatureK: Float64Array): void {
    this.film?.endStep(this.step, timeS, temperatureK, this.times, this.roundS)
  }
}

/** The node that lies nearest to height `xM` among those that `wanted` takes; of equals, the deepest. */
function nearestNode(body: Body, xM: number, wanted: (node: number) => boolean): number {
  let best = 0
  let bestDistance = Number.POSITIVE_INFINITY
  for (let i = 0; i < body.mesh.xM.length; i++) {
    if (!wanted(i)) continue
    const distance = Math.abs(body.mesh.xM[i]! - xM) - 1e-3 * body.mesh.depthM[i]!
    if (distance < bestDistance) {
      bestDistance = distance
      best = i
    }
  }
  return best
}
