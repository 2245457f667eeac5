import { radiusAt } from '#engine/geometry/outline.ts'
import type { Body } from '#engine/simulation/body.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { Zone } from '#engine/simulation/process.ts'

/** An aim from here on asks for a quench [HRC]: softer is had from bar as it comes or is annealed to. */
const HARD_FROM_HRC = 20

/** So much softer than the hardest zone that a temper of the whole piece does not serve both [HRC]. */
const APART_HRC = 3

/** Zones that must be hardened; one that must be well softer than the hardest is kept soft or drawn instead. */
export function hardZonesOf(zones: readonly Zone[]): readonly Zone[] {
  const hardest = Math.max(0, ...zones.map(({ aim }) => aim.lowHrc ?? 0))
  return zones.filter(({ aim }) => (aim.lowHrc ?? 0) >= HARD_FROM_HRC && (aim.highHrc ?? 100) > hardest - APART_HRC)
}

/** Must be hard, and where: the end of the furthest hard zone, and where the softer ones beyond it begin [m]. */
export interface Layout {
  readonly hard: readonly Zone[]
  readonly soft: readonly Zone[]
  readonly lengthM: number
  readonly hardToM: number
  /** Absent where nothing beyond the hard zones asks to be softer. */
  readonly softFromM?: number
  /** Thickness where the hard zones end [m]. */
  readonly acrossM: number
  readonly thickestM: number
  readonly shouldersM: readonly number[]
}

export function layoutOf(job: Job, body: Body): Layout {
  const hard = hardZonesOf(job.zones)
  const soft = job.zones.filter((zone) => !hard.includes(zone))
  const { lengthM } = body
  const hardToM = Math.max(0, ...hard.map(({ toM }) => toM))
  const softBeyond = soft.filter(({ fromM }) => fromM >= hardToM - 1e-9)
  const shouldersM: number[] = []
  let atM = 0
  for (const section of job.profile.sections.slice(0, -1)) {
    atM += section.lengthM
    shouldersM.push(atM)
  }
  return {
    hard,
    soft,
    lengthM,
    hardToM,
    ...(hardToM > 0 && softBeyond.length > 0 ? { softFromM: Math.min(...softBeyond.map(({ fromM }) => fromM)) } : {}),
    acrossM: 2 * radiusAt(body.outline, Math.min(hardToM, lengthM * (1 - 1e-6))),
    thickestM: 2 * Math.max(...body.localRadiusM),
    shouldersM,
  }
}

/** Hard and soft asked for side by side, with less than half a thickness between: no fire and no bath makes so sharp a line. */
export function tooNear({
  hard,
  soft,
  acrossM,
}: Layout): { readonly hard: Zone; readonly soft: Zone; readonly gapM: number } | undefined {
  for (const one of hard)
    for (const other of soft) {
      const gapM = Math.max(other.fromM - one.toM, one.fromM - other.toM)
      const apart = (one.aim.lowHrc ?? 0) - (other.aim.highHrc ?? 100)
      if (apart >= 5 && gapM < 0.5 * acrossM) return { hard: one, soft: other, gapM }
    }
  return undefined
}
