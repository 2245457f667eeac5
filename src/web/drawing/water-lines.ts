import type { JobText } from '#web/job/job-text.ts'
import { metres } from '#web/job/profile-reading.ts'

/** How far up the piece the liquid of one quench comes. */
export interface WaterLine {
  readonly step: number
  readonly bath: string
  /** Height on the piece [mm]; null: all of it goes under. */
  readonly lineMm: number | null
  /** As it stands in the step. */
  readonly typed: string
}

/** What stands under the piece, and the lines that its quenches leave. */
export interface BathBelow {
  /** The bath of the last quench; absent where nothing is quenched in a liquid. */
  readonly name?: string
  /** It cools in this air. */
  readonly air?: string
  readonly lines: readonly WaterLine[]
}

export function bathBelow({ process }: JobText): BathBelow {
  const lines: WaterLine[] = []
  let last: { name?: string; air?: string } = {}
  for (const [step, quench] of (process ?? []).entries()) {
    if (quench.do !== 'quench') continue
    const bath = typeof quench.in === 'string' ? quench.in : ''
    if (/\bair\b/iu.test(bath)) {
      last = { air: bath }
      continue
    }
    const depthM = metres(quench.depth)
    last = { name: bath === '' ? 'bath' : bath }
    lines.push({
      step,
      bath,
      lineMm: depthM === undefined || depthM === 0 ? null : depthM * 1000,
      typed: String(quench.depth ?? 'whole'),
    })
  }
  return { ...last, lines }
}
