import type { Body } from './body.ts'

/** Temperature of the skin and of the middle at one height, through the whole treatment. */
export interface Trace {
  readonly xM: number
  readonly timeS: number[]
  readonly skinK: number[]
  readonly centreK: number[]
}

/** Writes a trace while the stages run; points closer together than the eye can tell are dropped. */
export class TraceWriter {
  readonly trace: Trace
  readonly skinNode: number
  readonly centreNode: number

  constructor(body: Body, xM: number) {
    this.trace = { xM, timeS: [], skinK: [], centreK: [] }
    this.skinNode = nearestNode(body, xM, (i) => body.mesh.depthM[i] === 0)
    this.centreNode = nearestNode(body, xM, (i) => body.mesh.rM[i]! <= 0.3 * body.localRadiusM[i]! && body.mesh.depthM[i]! > 0)
  }

  add(timeS: number, temperatureK: Float64Array): void {
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
