import type { CoolingClock } from '#engine/metallurgy/cooling-clock.ts'
import type { HardeningResponse } from '#engine/metallurgy/hardening-response.ts'
import type { Bath } from '#engine/surface-heat/gear.ts'
import type { Body } from './body.ts'
import type { Care } from './care.ts'
import type { Job } from './job.ts'
import type { MetStage } from './met-stage.ts'
import type { NodeState } from './node-state.ts'
import type { StepRecord } from './records.ts'
import type { SteelTables } from './steel-tables.ts'
import type { TraceWriter } from './trace.ts'

/** All that the steps share while a treatment runs. */
export interface Bench {
  readonly job: Job
  readonly body: Body
  readonly state: NodeState
  /** On every film coefficient of the bath: 1, or what a member of the ensemble has instead. */
  readonly filmFactor: number
  readonly care: Care
  readonly records: StepRecord[]
  readonly writer: TraceWriter
  /** What the piece has met since its last hardening heat, and how it left that. */
  readonly met: MetStage[]
  /** Baths as they stand now: a quench warms them. */
  readonly baths: Map<string, Bath>
  /** As they stood before the last quench. */
  bathsBefore: ReadonlyMap<string, Bath>
  readonly critical: { readonly ac1K: number; readonly ac3K: number; readonly msK: number }
  readonly response: HardeningResponse
  readonly tables: SteelTables
  /** Since the start of the treatment [s]. */
  nowS: number
  /** End of the last quench [s]; NaN before one. */
  quenchedAtS: number
  /** The cooling clock of the last quench, still running in the air after it, and when it was started [s]. */
  clock: CoolingClock | undefined
  clockStartS: number
  /** Rough cooling times of the quench in hand, once known [n, s]. */
  expectedCoolingS: Float64Array | undefined
}

/** Nodes at which the steel has to harden: zones with a lower aim above what soft steel has; without any, the whole of `within`. */
export function mustHarden(body: Body, job: Job, within: { readonly fromM: number; readonly toM: number }): number[] {
  const zones = job.zones.filter(({ aim }) => (aim.lowHrc ?? 0) >= 30)
  const lengths = zones.length > 0 ? zones : [within]
  const nodes: number[] = []
  for (let i = 0; i < body.mesh.xM.length; i++) {
    const x = body.mesh.xM[i]!
    if (x >= within.fromM && x <= within.toM && lengths.some(({ fromM, toM }) => x >= fromM && x <= toM)) nodes.push(i)
  }
  return nodes
}
