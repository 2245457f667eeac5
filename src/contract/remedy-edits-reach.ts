import type { EngineFinding } from '#engine/findings/finding.ts'
import { firesFor } from '#engine/planning/fires.ts'
import { quenchMeans } from '#engine/planning/media.ts'
import { INCH_ROUNDING, METRIC_ROUNDING } from '#engine/planning/rounding.ts'
import { durationText } from '#units/duration.ts'
import { hardnessRangeText } from '#units/hardness.ts'
import type { JobEdit } from './job-edits.ts'
import { placedSteps, type Remedy, type RemedyGround, writes, zoneNamed, zonePath } from './remedy-edits-ground.ts'
import { before, heatSetting, holdSetting, lengthSetting } from './remedy-edits-settings.ts'
import { otherGrade, temperToK } from './remedy-edits-steel.ts'
import { dialOf, temperGearFor } from './remedy-edits-temper-choice.ts'

/** What this bar cannot do: another bar, or a smaller wish. */

export function steelWillNotHarden({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  return [...otherGrade(ground, { zone: where?.zone }), ...smallerWish(ground, where?.zone, figures?.mostHrc)]
}

export function redShort(_finding: EngineFinding, ground: RemedyGround): Remedy[] {
  return otherGrade(ground)
}

export function aimOutOfReach({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  if (figures?.cause === 'two-aims') return shorterZone(ground, where?.zone)
  if (figures?.cause === 'no-quench') return hardened(ground)
  return [...smallerWish(ground, where?.zone, figures?.mostHrc), ...otherGrade(ground, { zone: where?.zone })]
}

/** Softer than this is no hard zone any more, and another tool [HRC]. */
const WORTH_HRC = 42
/** Width of an aim with one bound only [HRC]. */
const USUAL_WIDTH_HRC = 4

/** The same width of aim, as high as can be had. */
function smallerWish(ground: RemedyGround, name: string | undefined, mostHrc: number | undefined): Remedy[] {
  const zone = zoneNamed(ground, name)
  const path = name === undefined ? undefined : zonePath(ground, name)
  if (zone === undefined || path === undefined || mostHrc === undefined || mostHrc < WORTH_HRC) return []
  const { lowHrc = 0, highHrc } = zone.aim
  const width = Math.min(8, Math.max(2, (highHrc ?? lowHrc + USUAL_WIDTH_HRC) - lowHrc))
  const high = Math.floor(mostHrc)
  const aim = hardnessRangeText({ low: Math.round(high - width), high })
  const was = hardnessRangeText({ low: lowHrc, ...(highHrc === undefined ? {} : { high: highHrc }) })
  return [{ says: `Be content with ${aim} instead of ${was} for the ${zone.name}`, edits: [writes([...path, 'aim'], aim)] }]
}

/** The hard zone ended a thickness before the soft one begins. */
function shorterZone(ground: RemedyGround, name: string | undefined): Remedy[] {
  const zone = zoneNamed(ground, name)
  const path = name === undefined ? undefined : zonePath(ground, name)
  const soft = ground.account.job.zones.find(
    (other) =>
      other !== zone && other.aim.highHrc !== undefined && other.fromM < (zone?.toM ?? 0) && other.toM > (zone?.fromM ?? 0),
  )
  if (zone === undefined || path === undefined || soft === undefined) return []
  const to = lengthSetting(soft.fromM - ground.layout().thickestM, ground.units, 'down')
  if (to.si < zone.fromM + 0.005) return []
  return [
    {
      says: `End the ${zone.name} at ${to.text} instead of ${before.length(zone.toM, ground.units)}, a thickness before the ${soft.name}`,
      edits: [writes([...path, 'to'], to.text)],
    },
  ]
}

const WALK_S = 3
const AIR_S = 2400

/** Heat and quench put in before the first temper, or at the end. */
function hardened(ground: RemedyGround): Remedy[] {
  const { account, units } = ground
  const rounding = units === 'inch' ? INCH_ROUNDING : METRIC_ROUNDING
  const practice = ground.practice()
  const { thickestM } = ground.layout()
  const [means] = quenchMeans(account.job, practice, { thickestM }, rounding).means
  const [fire] = firesFor(account.job, practice.austeniteK)
  const steps = placedSteps(ground)
  if (means === undefined || fire === undefined) return []
  const place = steps.find(({ step }) => step.do === 'temper')?.place ?? (steps.at(-1)?.place ?? -1) + 1
  const to = heatSetting(practice.austeniteK, units)
  const hold = holdSetting(HOLD_S_PER_M * thickestM + practice.soakS)
  const air = means.medium === 'air'
  const added: object[] = [
    { do: 'heat', in: fire.name, to: to.text, hold: hold.text },
    { do: 'carry', for: durationText(WALK_S) },
    air
      ? { do: 'quench', in: means.bath.name, for: durationText(AIR_S) }
      : { do: 'quench', in: means.bath.name, depth: 'whole', for: '4 min', agitation: means.agitation },
  ]
  const lacking = steps.every(({ step }) => step.do !== 'temper') ? temperAfter(ground) : undefined
  if (lacking !== undefined) added.push(lacking)
  return [
    {
      says: `Heat it to ${to.text} in the ${fire.name}, ${lacking === undefined ? 'and ' : ''}${air ? 'let it cool in still air' : `quench it in the ${means.bath.name}`}${lacking === undefined ? '' : `, temper it at ${lacking.at} in the ${lacking.in}`}`,
      edits: added.map((insert, i): JobEdit => ({ path: ['process', place + i], insert })),
    },
  ]
}

const TEMPER_S = 7200
const PALE_STRAW_K = 478.15

/** A temper for what the quench will leave, to the middle of the hardest zone's aim. */
function temperAfter(ground: RemedyGround): { readonly do: 'temper'; readonly in: string; readonly at: string } | undefined {
  const times = Math.max(1, ground.practice().cycles)
  const [zone] = [...ground.layout().hard].sort((a, b) => (b.aim.lowHrc ?? 0) - (a.aim.lowHrc ?? 0))
  const { lowHrc = 0, highHrc = lowHrc + USUAL_WIDTH_HRC } = zone?.aim ?? {}
  const wantedK = temperToK(ground.account.steel, 0.5 * (lowHrc + highHrc), { holdS: TEMPER_S, times }) ?? PALE_STRAW_K
  const gear = temperGearFor(ground, wantedK) ?? temperGearFor(ground, PALE_STRAW_K)
  if (gear === undefined) return undefined
  const temper = {
    do: 'temper',
    in: gear.name,
    at: dialOf(gear, wantedK, ground.units).text,
    hold: durationText(TEMPER_S),
    times,
  } as const
  return temper
}

/** The middle is up this long after the outside [s/m]: common practice, no source. */
const HOLD_S_PER_M = 12_000
