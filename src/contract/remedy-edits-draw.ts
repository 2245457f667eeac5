import { hardZones } from '#engine/findings/account.ts'
import { drawingFlame } from '#engine/planning/temper-gear.ts'
import type { Zone } from '#engine/simulation/process.ts'
import type { JobEdit } from './job-edits.ts'
import { partText, placedSteps, type Remedy, type RemedyGround } from './remedy-edits-ground.ts'
import { heatSetting, holdSetting, lengthSetting } from './remedy-edits-settings.ts'

/** The flame stays so far from what must stay hard, and reaches so far past what must be soft, as the rest is wet [m]: common practice, no source. */
const CLEAR_OF_HARD_M = 0.015
const PAST_ZONE_M = 0.03
const SHORTEST_M = 0.008
/** A draw ends this far under Ac1; a flame draws unevenly, so it is aimed this far under the bound [K, HRC]: common practice, no source. */
const UNDER_AC1_K = 40
const COOLEST_K = 673.15
const WELL_UNDER_HRC = 4

/** One zone drawn by itself in a flame with the rest kept wet, after everything else. */
export function drawn(ground: RemedyGround, zone: Pick<Zone, 'name' | 'fromM' | 'toM' | 'aim'> | undefined): Remedy[] {
  const { account, units } = ground
  const flame = drawingFlame(account.job)
  if (zone === undefined || flame === undefined) return []
  const part = drawnPart(ground, zone)
  if (part === undefined) return []
  const { thickestM } = ground.layout()
  const hold = holdSetting(Math.min(5, Math.max(2, Math.round(thickestM * 100))) * 60)
  const atK = drawingK(ground, zone, hold.si)
  if (atK === undefined) return []
  const at = heatSetting(atK, units)
  const edges = { from: lengthSetting(part.fromM, units), to: lengthSetting(part.toM, units, 'down') }
  const steps = placedSteps(ground)
  const last = steps.at(-1)
  // The same end may be drawn already, only not enough.
  const before = steps.find(
    ({ step }) => step.do === 'temper' && step.part !== undefined && step.part.toM > zone.fromM && step.part.fromM < zone.toM,
  )
  const step = {
    do: 'temper',
    in: flame.name,
    at: at.text,
    hold: hold.text,
    part: partText(part, (m) => lengthSetting(m, units, 'down').text),
  }
  const edit: JobEdit =
    before === undefined ? { path: ['process', (last?.place ?? -1) + 1], insert: step } : { path: before.path, value: step }
  return [
    {
      says: `Draw the ${zone.name} at ${at.text} in the ${flame.name}, from ${edges.from.text} on, with the rest in water`,
      edits: [edit],
    },
  ]
}

function drawnPart(
  ground: RemedyGround,
  zone: Pick<Zone, 'fromM' | 'toM'>,
): { readonly fromM: number; readonly toM: number } | undefined {
  const { account } = ground
  const { lengthM } = account
  const hard = hardZones(account).map((each) => each.zone)
  const below = hard.filter(({ toM }) => toM <= zone.fromM + 1e-9).map(({ toM }) => toM + CLEAR_OF_HARD_M)
  const above = hard.filter(({ fromM }) => fromM >= zone.toM - 1e-9).map(({ fromM }) => fromM - CLEAR_OF_HARD_M)
  const pastM = Math.max(PAST_ZONE_M, 3 * ground.layout().thickestM)
  const fromM = Math.min(zone.fromM, Math.max(0, ...below, zone.fromM - pastM))
  const toM = zone.toM > lengthM - 0.002 ? lengthM : Math.min(lengthM, ...above, zone.toM + pastM)
  return toM - fromM < SHORTEST_M ? undefined : { fromM, toM }
}

/** Coolest flame that brings the zone well under its bound, or under it at all [K]; undefined where none does. */
function drawingK(ground: RemedyGround, zone: Pick<Zone, 'name' | 'aim'>, holdS: number): number | undefined {
  const { account } = ground
  const mostK = account.steel.critical.ac1K - UNDER_AC1_K
  const { lowHrc, highHrc = 45 } = zone.aim
  const wantedHrc = lowHrc === undefined ? highHrc - WELL_UNDER_HRC : lowHrc + 0.25 * (highHrc - lowHrc)
  const spots = account.outlook.zones.find((each) => each.zone.name === zone.name)?.spots ?? []
  // The hardest place rules, and one that its middle has tempered already is no measure.
  const quenchedHrc = Math.max(account.steel.fullHrc.value - 2, ...spots.map((spot) => spot.quenchedHrc.value))
  for (let k = COOLEST_K; k < mostK; k += 10) {
    if (account.steel.temperedHrc(quenchedHrc, { atK: k, holdS, times: 1 }) <= wantedHrc) return k
  }
  return account.steel.temperedHrc(quenchedHrc, { atK: mostK, holdS, times: 1 }) <= highHrc ? mostK : undefined
}
