import type { ZoneOutlook } from '#engine/ensemble/outlook.ts'
import { drawings } from '#engine/findings/account.ts'
import { rulingDrawing, zoneHrcAt } from '#engine/findings/temper-choice.ts'
import { temperGear } from '#engine/planning/temper-gear.ts'
import type { TemperGear } from '#engine/planning/temper-ladder.ts'
import type { System } from '#units/length.ts'
import type { RemedyGround } from './remedy-edits-ground.ts'
import { heatSetting, type Setting } from './remedy-edits-settings.ts'

/** Which temper would bring the zones to their aims, and in what. */

const COOLEST_K = 423.15
const STEP_K = 2.5
const UNDER_AC1_K = 40

/** A temper and how far it leaves the zones from their aims, summed [K, HRC]; a little for the distance from the middle. */
export interface TemperFound {
  readonly atK: number
  readonly missHrc: number
}

interface TemperWanted {
  readonly holdS: number
  readonly times: number
  readonly leastK?: number
  readonly mostK?: number
  /** Tempers to stay out of [K]. */
  readonly outOf?: readonly (readonly [from: number, to: number])[]
}

/** The best temper of the whole piece within what is asked, by the steel's curve; undefined where nothing is hard or nothing is allowed. */
export function bestTemper(ground: RemedyGround, wanted: TemperWanted): TemperFound | undefined {
  const { account } = ground
  if (judged(ground).length === 0) return undefined
  const mostK = Math.min(wanted.mostK ?? Number.POSITIVE_INFINITY, account.steel.critical.ac1K - UNDER_AC1_K)
  let best: TemperFound | undefined
  for (let atK = wanted.leastK ?? COOLEST_K; atK <= mostK; atK += STEP_K) {
    if (wanted.outOf?.some(([from, to]) => atK > from && atK < to)) continue
    const missHrc = missAt(ground, atK, wanted)
    if (best === undefined || missHrc < best.missHrc - 1e-9) best = { atK, missHrc }
  }
  return best
}

/** How far the zones would be from their aims after a temper of the whole piece [HRC]. */
export function missAt(ground: RemedyGround, atK: number, temper: { readonly holdS: number; readonly times: number }): number {
  return judged(ground).reduce((sum, zone) => sum + missOf(zone, hrcAt(ground, zone, atK, temper)), 0)
}

/** Zones that a temper can do something about: hardened, and not drawn in a flame by themselves. */
function judged({ account }: RemedyGround): ZoneOutlook[] {
  const drawn = drawings(account).tempers.flatMap(({ part }) => (part === undefined ? [] : [part]))
  return account.outlook.zones.filter(
    ({ spots, zone }) =>
      spots.some(({ martensiteFraction }) => martensiteFraction >= 0.3) &&
      drawn.every(({ fromM, toM }) => Math.min(zone.toM, toM) - Math.max(zone.fromM, fromM) <= 0.5 * (zone.toM - zone.fromM)),
  )
}

/** Hardness of a zone after another temper [HRC]: from what the forecast gives, or from the bath where nothing was tempered. */
export function hrcAt(
  { account }: RemedyGround,
  zone: ZoneOutlook,
  atK: number,
  temper: { readonly holdS: number; readonly times: number },
): number {
  const ruling = rulingDrawing(account)
  if (ruling !== undefined && ruling.holdS === temper.holdS && ruling.times === temper.times)
    return zoneHrcAt(account, zone, ruling, atK)
  return account.steel.temperedHrc(zone.quenchedHrc.value, { atK, ...temper })
}

function missOf({ zone: { aim } }: ZoneOutlook, hrc: number): number {
  const { lowHrc, highHrc } = aim
  const out = Math.max(0, (lowHrc ?? -1e3) - hrc) + Math.max(0, hrc - (highHrc ?? 1e3))
  const middle =
    lowHrc !== undefined && highHrc !== undefined
      ? 0.5 * (lowHrc + highHrc)
      : lowHrc !== undefined
        ? lowHrc + 2
        : (highHrc ?? 0) - 4
  return out + 0.02 * Math.min(20, Math.abs(hrc - middle))
}

/** A temper that this shop can do, in what it is done. */
export interface TemperReached extends TemperFound {
  readonly gear: TemperGear
}

/** The best temper that some gear of this shop reaches, in what is in use now where that is as good. */
export function bestReachable(ground: RemedyGround, wanted: TemperWanted, now?: string): TemperReached | undefined {
  const found = temperGear(ground.account.job, ground.practice()).flatMap((gear): TemperReached[] => {
    const leastK = Math.max(wanted.leastK ?? 0, gear.leastK + gear.offsetK)
    const mostK = Math.min(wanted.mostK ?? Number.POSITIVE_INFINITY, gear.mostK + gear.offsetK)
    const best = bestTemper(ground, { ...wanted, leastK, mostK })
    return best === undefined ? [] : [{ ...best, gear }]
  })
  const worth = ({ missHrc, gear }: TemperReached): number => missHrc + (gear.name === now ? 0 : AS_GOOD_HRC) + 0.01 * gear.order
  return found.sort((a, b) => worth(a) - worth(b))[0]
}

const AS_GOOD_HRC = 0.3

/** A fire to draw over by eye, for want of an oven that goes so hot; muffles first, they hold a heat. */
export function overFire({ account }: RemedyGround): TemperGear | undefined {
  const order = ['muffle', 'gas', 'charcoal', 'coal']
  const [fire] = account.job.shop.fires
    .filter(({ kind }) => order.includes(kind))
    .sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind))
  return fire === undefined ? undefined : { name: fire.name, leastK: COOLEST_K, mostK: HOTTEST_K, offsetK: 0, order: 200 }
}

const HOTTEST_K = 973.15

/** What this shop has that holds a temper of `trueK`, what is in use now before anything else; undefined where nothing reaches it. */
export function temperGearFor(ground: RemedyGround, trueK: number, now?: string): TemperGear | undefined {
  return temperGear(ground.account.job, ground.practice())
    .filter(({ leastK, mostK, offsetK }) => trueK - offsetK >= leastK - REACH_K && trueK - offsetK <= mostK + REACH_K)
    .sort((a, b) => Number(b.name === now) - Number(a.name === now) || a.order - b.order)[0]
}

/** So near to its end is within an oven [K]. */
const REACH_K = 3

/** What to set it to. */
export function dialOf({ offsetK, mostK }: TemperGear, trueK: number, units: System): Setting {
  const dial = heatSetting(trueK - offsetK, units)
  return dial.si > mostK + 1e-6 ? heatSetting(mostK, units, 'down') : dial
}
