import { lengthText, type System } from '#units/length.ts'
import type { JobText, StepText, ZoneText } from './job-text.ts'
import { metres } from './profile-reading.ts'

/**
 * Where a height from the working end goes when the shape changes [m]; `side` tells which metal it belongs to at a joint, `farM` is the
 * other end of the zone that it bounds.
 */
export type Way = (xM: number, side: 'above' | 'below', farM?: number) => number

/** Lengths this near are the same [m]. */
const SAME_M = 1e-9

/** Zones, points and part lengths after section `index` has another length: what lies beyond it moves with its metal. */
export function followedLength(before: JobText, after: JobText, index: number): JobText {
  const lengths = (before.profile ?? []).map(({ length }) => metres(length))
  const afterM = metres(after.profile?.[index]?.length)
  const beforeM = lengths[index]
  if (afterM === undefined || beforeM === undefined || lengths.some((each) => each === undefined)) return after
  const startM = lengths.slice(0, index).reduce<number>((sum, each) => sum + (each ?? 0), 0)
  const jointM = startM + beforeM
  return followed(after, (xM, side, farM = 0) => {
    if (xM >= jointM - SAME_M) return xM + afterM - beforeM
    // A zone that reaches up over the joint keeps its length.
    const reachesOver = side === 'above' && xM > startM + SAME_M && farM >= jointM - SAME_M
    return reachesOver ? Math.max(startM, xM + afterM - beforeM) : Math.min(xM, startM + Math.max(afterM, 0))
  })
}

/** A document whose heights go the way of the metal. Zones that lose all of theirs go; treatment that reached beyond the piece ends with it. */
export function followed(job: JobText, way: Way): JobText {
  const totalM = (job.profile ?? []).reduce((sum, { length }) => sum + (metres(length) ?? 0), 0)
  const zones = apart(
    job.zones ?? [],
    job.zones?.map((zone) => followedZone(zone, way))?.filter((zone) => zone !== undefined),
  )
  const probes = job.probes?.map((probe) => {
    const x = moved(probe.x, (xM) => Math.min(way(xM, 'above'), totalM))
    return x === probe.x ? probe : { ...probe, x }
  })
  const process = job.process?.map((step) => followedStep(step, totalM))
  return {
    ...job,
    ...(zones === undefined ? {} : { zones: sameOr(job.zones, zones) }),
    ...(probes === undefined ? {} : { probes: sameOr(job.probes, probes) }),
    ...(process === undefined ? {} : { process: sameOr(job.process, process) }),
  }
}

function followedZone(zone: ZoneText, way: Way): ZoneText | undefined {
  const from = moved(zone.from, (xM) => way(xM, 'above', metres(zone.to)))
  const to = moved(zone.to, (xM) => way(xM, 'below', metres(zone.from)))
  if (from === zone.from && to === zone.to) return zone
  const [fromM, toM] = [metres(from), metres(to)]
  if (fromM !== undefined && toM !== undefined && toM - fromM < SAME_M) return undefined
  return { ...zone, from, to }
}

/** Zones that did not lie over each other still do not: the upper one begins where the lower one ends. */
function apart(before: readonly ZoneText[], after: readonly ZoneText[] | undefined): readonly ZoneText[] | undefined {
  if (after === undefined || after.length !== before.length) return after
  return after.map((zone, i) => {
    if (zone === before[i]) return zone
    const lower = after.filter((_, j) => liesBelow(before[j], before[i]))
    const least = lower.toSorted((a, b) => (metres(b.to) ?? 0) - (metres(a.to) ?? 0))[0]
    return least !== undefined && (metres(zone.from) ?? 0) < (metres(least.to) ?? 0) ? { ...zone, from: least.to } : zone
  })
}

function liesBelow(lower: ZoneText | undefined, upper: ZoneText | undefined): boolean {
  return lower !== upper && (metres(lower?.to) ?? 0) <= (metres(upper?.from) ?? 0) + SAME_M
}

/** A part that is heated, or how deep it goes, is no longer than the piece. */
function followedStep(step: StepText, totalM: number): StepText {
  const shortened = (typed: unknown): unknown => (typeof typed === 'string' ? moved(typed, (xM) => Math.min(xM, totalM)) : typed)
  const part = step.part as { readonly from?: unknown; readonly to?: unknown } | undefined
  const next: Record<string, unknown> = { ...step }
  if (step.depth !== undefined) next.depth = shortened(step.depth)
  if (part !== undefined && part !== null && typeof part === 'object') next.part = { ...part, to: shortened(part.to) }
  const same = next.depth === step.depth && (next.part as { to?: unknown } | undefined)?.to === part?.to
  return same ? step : { ...step, ...next }
}

/** A length as typed, moved; written anew in its own units, and only if it moves. */
function moved(typed: string, way: (xM: number) => number): string {
  const xM = metres(typed)
  if (xM === undefined) return typed
  const thereM = way(xM)
  return Math.abs(thereM - xM) < SAME_M ? typed : lengthText(Math.max(0, thereM), systemOf(typed))
}

/** The units something was typed in. */
export function systemOf(typed: string): System {
  return /in|["″”']|ft|thou|foot|feet/iu.test(typed) ? 'inch' : 'metric'
}

function sameOr<Each>(before: readonly Each[] | undefined, after: readonly Each[]): readonly Each[] {
  return before !== undefined && before.length === after.length && after.every((each, i) => each === before[i]) ? before : after
}
