import { square } from '#engine/arithmetic/square.ts'
import type { ZoneOutlook } from '#engine/ensemble/outlook.ts'
import type { Oven } from '#engine/surface-heat/gear.ts'
import type { Account } from './account.ts'
import type { EngineFinding } from './finding.ts'
import { rulingDrawing, tooHardZones, zoneHrcAt } from './temper-choice.ts'
import type { Wording } from './wording.ts'

/** What the ovens can't do, and what their errors cost. */
export function ovenFindings(account: Account, say: Wording): EngineFinding[] {
  return [...ovenCannotReach(account, say), ...ovenErrorMatters(account, say)]
}

function ovenCannotReach(account: Account, say: Wording): EngineFinding[] {
  const { records, job } = account
  const asked = records.flatMap((record): EngineFinding[] => {
    if (record.kind === 'temper' && record.oven !== undefined) return beyond(record.oven, record.setK, record.step, say)
    if (record.kind === 'heat' || record.kind === 'normalise' || record.kind === 'anneal' || record.kind === 'stress-relieve') {
      const oven = job.shop.ovens.find(({ name }) => name === record.fire.name)
      const named = job.shop.fires.some(({ name }) => name === record.fire.name)
      return oven === undefined || named ? [] : beyond(oven, record.toK, record.step, say)
    }
    return []
  })
  if (asked.length > 0 || job.shop.ovens.length === 0) return asked
  const hottest = [...job.shop.ovens].sort((a, b) => b.maxK + b.readsLowK - a.maxK - a.readsLowK)[0]
  if (hottest === undefined) return []
  return tooHardZones(account).flatMap(({ each, temper, atK, spoils }): EngineFinding[] => {
    if (atK === undefined || spoils !== undefined || atK <= hottest.maxK + hottest.readsLowK) return []
    return [
      {
        id: 'oven-cannot-reach',
        severity: 'warn',
        where: { step: temper.step, zone: each.zone.name },
        says: `No oven here tempers hot enough for the ${each.zone.name}.`,
        because: `It wants about ${say.temperature(atK)}; the ${hottest.name} goes to ${say.temperature(hottest.maxK + hottest.readsLowK)} at most.`,
        remedy: otherHeat(),
        figures: { temperK: atK },
      },
    ]
  })
}

function beyond(oven: Oven, askedK: number, step: number, say: Wording): EngineFinding[] {
  if (askedK <= oven.maxK + 0.5) return []
  return [
    {
      id: 'oven-cannot-reach',
      severity: 'stop',
      where: { step },
      says: `The ${oven.name} does not go to ${say.temperature(askedK)}.`,
      because: `Its dial ends at ${say.temperature(oven.maxK)}${Math.abs(oven.readsLowK) < 0.5 ? '' : `, which is truly ${say.temperature(oven.maxK + oven.readsLowK)}`}.`,
      remedy: otherHeat(),
    },
  ]
}

function otherHeat(): string {
  return 'A muffle in the fire with a thermometer in it, a hot block of iron, or a spring drawn by eye over the fire; never a pot of hot oil on a flame.'
}

/** A shift that a file can feel [HRC]; in a narrow aim a quarter of its width counts already (common practice, no source). */
const FELT_HRC = 1
const FELT_SHARE_OF_AIM = 0.25
/** Less than this nobody can measure [HRC]. */
const UNFELT_HRC = 0.3

function feltHrc({ zone: { aim } }: ZoneOutlook): number {
  const widthHrc = (aim.highHrc ?? Number.POSITIVE_INFINITY) - (aim.lowHrc ?? 0)
  return Math.min(FELT_HRC, Math.max(UNFELT_HRC, FELT_SHARE_OF_AIM * widthHrc))
}

/** Mean heat that a swing is worth: 15 K either way tempers like 4 K more (additivity in the tempering parameter). */
function swingWorthK(swingK: number): number {
  return 4 * square(swingK / 15)
}

function ovenErrorMatters(account: Account, say: Wording): EngineFinding[] {
  const temper = rulingDrawing(account)
  if (temper?.oven === undefined || temper.setK > temper.oven.maxK + 0.5) return []
  const { oven } = temper
  const offK = oven.readsLowK + swingWorthK(oven.swingK)
  if (Math.abs(offK) < 1) return []
  const hardened = account.outlook.zones.filter(({ spots }) => spots.some(({ martensiteFraction }) => martensiteFraction >= 0.5))
  const shifts = hardened.map((each) => {
    const believed = zoneHrcAt(account, each, temper, temper.setK)
    const truly = zoneHrcAt(account, each, temper, temper.setK + offK)
    const { lowHrc = Number.NEGATIVE_INFINITY, highHrc = Number.POSITIVE_INFINITY } = each.zone.aim
    const within = (hrc: number): boolean => hrc >= lowHrc && hrc <= highHrc
    const shiftHrc = Math.abs(truly - believed)
    return { each, believed, truly, shiftHrc, leaves: shiftHrc >= UNFELT_HRC && within(believed) && !within(truly) }
  })
  const [worst] = shifts
    .filter(({ each, shiftHrc, leaves }) => leaves || shiftHrc > feltHrc(each))
    .sort((a, b) => Number(b.leaves) - Number(a.leaves) || b.shiftHrc - a.shiftHrc)
  if (worst === undefined) return []
  const { each, believed, truly, leaves } = worst
  return [
    {
      id: 'oven-error-matters',
      severity: leaves ? 'warn' : 'note',
      where: { step: temper.step, zone: each.zone.name },
      says: `The error of the ${oven.name} is felt: the ${each.zone.name} comes to ${say.hardness(truly)} where its dial says ${say.hardness(believed)}.`,
      because: `Set to ${say.temperature(temper.setK)} it holds ${say.temperature(temper.setK + oven.readsLowK)}${oven.swingK > 0 ? `, swinging between ${say.temperature(temper.setK + oven.readsLowK - oven.swingK)} and ${say.temperature(temper.setK + oven.readsLowK + oven.swingK)}` : ''}.`,
      remedy: 'Set it by a thermometer of its own beside the piece; a thick plate or a box of sand evens the swing.',
    },
  ]
}
