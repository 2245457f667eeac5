import type { ZoneOutlook } from '#engine/ensemble/outlook.ts'
import type { TemperRecord } from '#engine/simulation/records.ts'
import type { Oven } from '#engine/surface-heat/gear.ts'
import { type Account, BRITTLE_HRC, drawings, hardZones, isWater, lastHardening, skinOf } from './account.ts'
import type { EngineFinding } from './finding.ts'
import { isPlain } from './steel-facts.ts'
import { isStruckZone, STRUCK_END_WARN_HRC } from './struck.ts'
import { aimedHrc, coolerTemperK, hotterTemperK, rulingTemper, zoneHrcAt } from './temper-choice.ts'
import type { Wording } from './wording.ts'
import { place } from './words.ts'

/** What the temper did, or failed to do. */
export function temperFindings(account: Account, say: Wording): EngineFinding[] {
  return [
    ...temperSoon(account, say),
    ...temperTooCool(account, say),
    ...temperTooHot(account, say),
    ...ovenCannotReach(account, say),
    ...ovenErrorMatters(account, say),
    ...embrittlingRange(account, say),
    ...moreThanOneTemper(account, say),
    ...coloursUnreliable(account, say),
    ...retainedAustenite(account, say),
  ]
}

/** Steel this hard as quenched may crack by itself while it lies about [HRC]: common practice, no source. */
const GLASS_HRC = 50

const GLASS_CAUTION = 'As quenched it is glass: no test blows, no dropping, no vice; eye protection until it is tempered.'

function temperSoon(account: Account, say: Wording): EngineFinding[] {
  const last = lastHardening(account)
  if (last === undefined) return []
  const { tempers, colours } = drawings(account)
  const hard = account.outlook.along.map(({ skin }) => skin).filter(({ quenchedHrc }) => quenchedHrc.value >= GLASS_HRC)
  const hardest = [...hard].sort((a, b) => b.quenchedHrc.value - a.quenchedHrc.value)[0]
  if (hardest === undefined) return []
  const where = { step: last.quench.step }
  if (tempers.length === 0 && colours.length === 0)
    return [
      {
        id: 'temper-soon',
        severity: 'stop',
        where,
        says: 'It is not tempered after the quench: temper it at once.',
        because: `It comes out of the bath at ${say.hardness(hardest.quenchedHrc.value)}; steel that hard can crack by itself, from minutes to a day later.`,
        remedy: 'Into the oven as soon as it can be held in the hand.',
        caution: GLASS_CAUTION,
      },
    ]
  if (colours.length === 0 && tempers.every(({ part }) => part !== undefined)) {
    const left = hard.find(({ spot }) => tempers.every(({ part }) => part !== undefined && !reaches(part, spot.xM)))
    if (left !== undefined)
      return [
        {
          id: 'temper-soon',
          severity: 'stop',
          where: { ...where, xM: left.spot.xM },
          says: `Only one end is drawn: ${place(left.spot.xM, account.lengthM, say)} it is left as hard as the bath made it.`,
          because: `It stands at ${say.hardness(left.quenchedHrc.value)} there, and the part in the flame does not reach it.`,
          remedy: 'Temper the whole piece in the oven first, then draw the end.',
          caution: GLASS_CAUTION,
        },
      ]
  }
  const [first] = tempers
  if (first === undefined || colours.length > 0) return []
  const limitS = longestWaitS(account)
  if (first.delayS <= limitS) return []
  return [
    {
      id: 'temper-soon',
      severity: 'warn',
      where: { step: first.step },
      says: `It waits ${say.time(first.delayS)} between the quench and the temper.`,
      because: `At ${say.hardness(hardest.quenchedHrc.value)} it should be in the oven within about ${say.time(limitS)} (PMPA and Industrial Heating both name late tempering among the causes of cracks).`,
      remedy: 'Have the oven hot before you quench; if it must wait, keep it hand-warm.',
      caution: GLASS_CAUTION,
    },
  ]
}

/** How far the heat of a drawn end spreads beyond it [m]: common practice, no source. */
const SPREAD_M = 0.015

function reaches(part: { readonly fromM: number; readonly toM: number }, xM: number): boolean {
  return xM >= part.fromM - SPREAD_M && xM <= part.toM + SPREAD_M
}

/** Within the hour for most; half of that for high carbon and for water (above 0.6 % C 1..2 h is late by handbook rules, from memory). */
function longestWaitS(account: Account): number {
  const quench = lastHardening(account)?.quench
  const { C } = account.steel.composition
  return C >= 0.8 || (C >= 0.6 && quench !== undefined && isWater(quench.bath)) ? 1800 : 3600
}

/** A zone counts as missed when the best estimate is outside, and more than half of the pieces with it. */
function isTooHard({ zone, temperedHrc, tooHard }: ZoneOutlook): boolean {
  return zone.aim.highHrc !== undefined && temperedHrc.value > zone.aim.highHrc && tooHard >= 0.5
}

function isTooSoft({ zone, temperedHrc, tooSoft }: ZoneOutlook): boolean {
  return zone.aim.lowHrc !== undefined && temperedHrc.value < zone.aim.lowHrc && tooSoft >= 0.5
}

/** A zone that came out too hard, with the temper that would bring it down. */
interface TooHard {
  readonly each: ZoneOutlook
  readonly temper: TemperRecord
  readonly atK: number | undefined
  /** Another zone would come out too soft at that temper. */
  readonly spoils: ZoneOutlook | undefined
}

function tooHardZones(account: Account): TooHard[] {
  const temper = rulingTemper(account)
  if (temper === undefined) return []
  return account.outlook.zones.filter(isTooHard).flatMap((each): TooHard[] => {
    // The struck end has its own finding.
    if (isStruckZone(account, each) && each.temperedHrc.value > STRUCK_END_WARN_HRC) return []
    // Soft steel that is still above its aim was not hardened; a temper does nothing to it.
    if (each.spots.every(({ martensiteFraction }) => martensiteFraction < 0.3)) return []
    const atK = hotterTemperK(account, each, temper, aimedHrc(each))
    const spoils =
      atK === undefined
        ? undefined
        : account.outlook.zones.find(
            (other) => other !== each && zoneHrcAt(account, other, temper, atK) < (other.zone.aim.lowHrc ?? 0),
          )
    return [{ each, temper, atK, spoils }]
  })
}

function temperTooCool(account: Account, say: Wording): EngineFinding[] {
  return tooHardZones(account).flatMap(({ each, temper, atK, spoils }): EngineFinding[] => {
    if (atK === undefined) return []
    // Asked hotter than the oven goes: `oven-cannot-reach` says it.
    if (temper.oven !== undefined && temper.setK > temper.oven.maxK + 0.5) return []
    const { zone, temperedHrc } = each
    return [
      {
        id: 'temper-too-cool-for-aim',
        severity: 'warn',
        where: { step: temper.step, zone: zone.name },
        says: `The ${zone.name} stays too hard at ${say.hardness(temperedHrc.value)}; it wants a temper at ${say.temperature(atK)}.`,
        because: `${say.temperature(temper.trueK)} for ${say.time(temper.holdS)} leaves it above ${say.hardness(zone.aim.highHrc ?? 0)}.`,
        remedy:
          spoils === undefined && beyondOven(temper, atK)
            ? `Temper again hotter; the ${temper.oven?.name ?? 'oven'} does not go there.`
            : spoils === undefined
              ? `Temper again at ${say.temperature(atK - (temper.oven?.readsLowK ?? 0))} by this oven; going up is always possible.`
              : `Draw that end alone, with the ${spoils.zone.name} kept cool and wet: at ${say.temperature(atK)} the ${spoils.zone.name} would be too soft.`,
      },
    ]
  })
}

function beyondOven({ oven }: TemperRecord, atK: number): boolean {
  return oven !== undefined && atK > oven.maxK + oven.readsLowK
}

function temperTooHot(account: Account, say: Wording): EngineFinding[] {
  const temper = rulingTemper(account)
  if (temper === undefined) return []
  return hardZones(account)
    .filter(isTooSoft)
    .flatMap((each): EngineFinding[] => {
      const { zone, temperedHrc, quenchedHrc } = each
      // Not hard enough to begin with: the bath, the heat or the steel is to blame.
      if (each.chanceQuenched < 0.5 || quenchedHrc.value < (zone.aim.lowHrc ?? 0)) return []
      const atK =
        coolerTemperK(account, each, temper, aimedHrc(each)) ?? coolerTemperK(account, each, temper, zone.aim.lowHrc ?? 0)
      if (atK === undefined) return []
      return [
        {
          id: 'temper-too-hot-for-aim',
          severity: 'warn',
          where: { step: temper.step, zone: zone.name },
          says: `The temper takes the ${zone.name} down to ${say.hardness(temperedHrc.value)}: too soft.`,
          because: `It comes out of the bath at ${say.hardness(quenchedHrc.value)}; ${say.temperature(temper.trueK)} for ${say.time(temper.holdS)} leaves it below ${say.hardness(zone.aim.lowHrc ?? 0)}.`,
          remedy: `Temper at ${say.temperature(atK - (temper.oven?.readsLowK ?? 0))} by this oven. Only hardening again brings back what is lost.`,
        },
      ]
    })
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

/** A shift that a file can feel [HRC]. */
const FELT_HRC = 1

/** Mean heat that a swing is worth: 15 K either way tempers like 4 K more (additivity in the tempering parameter). */
function swingWorthK(swingK: number): number {
  return 4 * (swingK / 15) ** 2
}

function ovenErrorMatters(account: Account, say: Wording): EngineFinding[] {
  const temper = rulingTemper(account)
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
    return { each, believed, truly, leaves: within(believed) && !within(truly) }
  })
  const worst = [...shifts].sort(
    (a, b) => Number(b.leaves) - Number(a.leaves) || Math.abs(b.truly - b.believed) - Math.abs(a.truly - a.believed),
  )[0]
  if (worst === undefined) return []
  if (Math.abs(worst.truly - worst.believed) <= FELT_HRC && !worst.leaves) return []
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

function embrittlingRange(account: Account, say: Wording): EngineFinding[] {
  const { steel, outlook, job } = account
  if (!outlook.along.some(({ skin }) => skin.quenchedHrc.value >= BRITTLE_HRC && skin.martensiteFraction >= 0.5)) return []
  return drawings(account).tempers.flatMap((temper): EngineFinding[] => {
    const range = steel.embrittling.find(({ fromK, toK }) => temper.trueK >= fromK && temper.trueK <= toK)
    if (range === undefined) return []
    return [
      {
        id: 'embrittling-range',
        severity: job.struck ? 'warn' : 'note',
        where: { step: temper.step },
        says: `${say.temperature(temper.trueK)} is a brittle temper for ${steel.name}.`,
        because: `${range.says}, ${say.temperature(range.fromK)} to ${say.temperature(range.toK)} (${range.source}): softer than a cooler temper, and no tougher.`,
        remedy: `Stay under ${say.temperature(range.fromK)} or go over ${say.temperature(range.toK)}, whichever the aim allows.`,
      },
    ]
  })
}

function moreThanOneTemper(account: Account, say: Wording): EngineFinding[] {
  const { steel, outlook } = account
  const whole = drawings(account).tempers.filter(({ part }) => part === undefined)
  const [first] = whole
  const given = whole.reduce((sum, { times }) => sum + times, 0)
  if (first === undefined || given >= steel.cycles.least) return []
  const hardest = Math.max(...outlook.along.map(({ skin }) => skin.quenchedHrc.value))
  if (hardest < BRITTLE_HRC) return []
  return [
    {
      id: 'more-than-one-temper',
      severity: 'warn',
      where: { step: first.step },
      says: `${steel.name} wants ${inWords(steel.cycles.least)} tempers; it gets ${inWords(given)}.`,
      because: `Austenite left from the quench turns to fresh, untempered martensite as the first temper cools (${steel.cycles.source}).`,
      remedy: `Cool it to the hand, then ${say.time(first.holdS)} again at the same heat${steel.cycles.least - given > 1 ? ', and once more' : ''}.`,
    },
  ]
}

function inWords(count: number): string {
  return ['no', 'one', 'two', 'three', 'four'][count] ?? String(count)
}

/** Colours lie some 15 K apart (five old tables); an eye and a hand need about three seconds for one of them. */
const COLOUR_WIDTH_K = 15
const LEAST_SECONDS = 3

function coloursUnreliable(account: Account, say: Wording): EngineFinding[] {
  const { composition, name } = account.steel
  return drawings(account).colours.flatMap((record): EngineFinding[] => {
    const where = { step: record.step }
    if (record.reachedS === null)
      return [
        {
          id: 'colours-unreliable',
          severity: 'warn',
          where,
          says: `The colour never comes: the heat left in the body takes the edge to ${say.temperature(record.hottestEdgeK)} only.`,
          because: `It should stop at ${say.temperature(record.stopAtK)}; too much was cooled in the bath, or for too long.`,
          remedy: 'Dip less, or lift it sooner; or temper it in the oven.',
        },
      ]
    const seconds = record.risePerS > 0 ? COLOUR_WIDTH_K / record.risePerS : Number.POSITIVE_INFINITY
    if (seconds < LEAST_SECONDS)
      return [
        {
          id: 'colours-unreliable',
          severity: 'warn',
          where,
          says: 'The colours race to the edge: you will not catch the right one.',
          because: `At ${say.temperature(record.stopAtK)} the edge has one colour for ${say.time(seconds)}; an eye and a hand need about ${say.time(LEAST_SECONDS)}.`,
          remedy:
            'Leave it in the bath a little longer, so that less heat stays behind the edge; dip the edge again when it runs away.',
        },
      ]
    if (isPlain(composition) && composition.Si < 1) return []
    return [
      {
        id: 'colours-unreliable',
        severity: 'note',
        where,
        says: `The colours lie on ${name}: they are those of plain carbon steel.`,
        because: `It holds ${composition.Cr.toFixed(1)} % chromium and ${composition.Si.toFixed(1)} % silicon; rich steel must be hotter to show the same colour.`,
        remedy: 'Temper it in the oven by a thermometer.',
      },
    ]
  })
}

/** Share from which it is felt in hardness and in size (common practice, no source). */
const RETAINED = 0.12
const MUCH_RETAINED = 0.25
/** Over what the same models leave by the book; their own bias falls out of the difference. */
const OVER_USUAL = 0.04

function retainedAustenite(account: Account, say: Wording): EngineFinding[] {
  const last = lastHardening(account)
  if (last === undefined) return []
  const zones = hardZones(account)
  const spots = zones.length > 0 ? zones.flatMap(skinOf) : account.outlook.along.map(({ skin }) => skin)
  const rich = account.steel.composition.Cr >= 3
  const worst = spots
    // A hot enough temper has turned it: about 290 degC in plain steel, 480 in rich (tempering stages, from memory).
    .filter(({ temperPeakK }) => temperPeakK < (rich ? 753 : 563))
    .sort((a, b) => b.retainedAusteniteFraction - a.retainedAusteniteFraction)[0]
  const usual = account.steel.usualRetained
  if (worst === undefined || worst.retainedAusteniteFraction <= Math.max(RETAINED, usual + OVER_USUAL)) return []
  return [
    {
      id: 'retained-austenite',
      severity: worst.retainedAusteniteFraction > MUCH_RETAINED ? 'warn' : 'note',
      where: { step: last.heat.step, xM: worst.spot.xM },
      says: `About ${Math.round(100 * worst.retainedAusteniteFraction)} % of it stays soft austenite after the quench.`,
      because: `It was at ${say.temperature(worst.peakK)}; hardened by the book about ${Math.round(100 * usual)} % would stay. The more carbon and alloy goes into solution, and the warmer the quench ends, the more stays.`,
      remedy: 'Harden from the low end of the range, quench down to the warmth of the room, and temper twice.',
    },
  ]
}
