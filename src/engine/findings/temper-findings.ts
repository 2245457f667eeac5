import { type Account, drawings, hardZones, isWater, lastHardening } from './account.ts'
import type { EngineFinding } from './finding.ts'
import { aimedHrc, coolerTemperK, type Drawing, isTooSoft, rulingDrawing, tooHardZones } from './temper-choice.ts'
import type { Wording } from './wording.ts'
import { place } from './words.ts'

/** Whether it is tempered in time, and to the hardness that was asked for. */
export function temperFindings(account: Account, say: Wording): EngineFinding[] {
  return [...temperSoon(account, say), ...temperTooCool(account, say), ...temperTooHot(account, say)]
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
        figures: { cause: 'no-temper', times: account.steel.cycles.least },
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
          figures: { cause: 'end-only', times: account.steel.cycles.least },
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
      figures: { cause: 'late', waitS: limitS },
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
              ? temper.oven === undefined
                ? `Let it run on to a hotter colour, about ${say.temperature(atK)}.`
                : `Temper again at ${say.temperature(atK - temper.oven.readsLowK)} by this oven; going up is always possible.`
              : `Draw that end alone, with the ${spoils.zone.name} kept cool and wet: at ${say.temperature(atK)} the ${spoils.zone.name} would be too soft.`,
        figures: { ...(spoils === undefined ? {} : { cause: 'spoils-another' }), temperK: atK },
      },
    ]
  })
}

function beyondOven({ oven }: Drawing, atK: number): boolean {
  return oven !== undefined && atK > oven.maxK + oven.readsLowK
}

function temperTooHot(account: Account, say: Wording): EngineFinding[] {
  const temper = rulingDrawing(account)
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
          remedy: `Temper at ${say.temperature(atK - (temper.oven?.readsLowK ?? 0))}${temper.oven === undefined ? '' : ' by this oven'}. Only hardening again brings back what is lost.`,
          figures: { temperK: atK },
        },
      ]
    })
}
