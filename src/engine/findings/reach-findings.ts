import type { ZoneOutlook } from '#engine/ensemble/outlook.ts'
import { type Account, drawings, hardZones, lastHardening } from './account.ts'
import { cooledTooSlowly } from './bath-findings.ts'
import type { EngineFinding } from './finding.ts'
import { MILD_HRC } from './steel-facts.ts'
import type { Wording } from './wording.ts'

/** What no fire, bath or temper can do with this bar. */
export function reachFindings(account: Account, say: Wording): EngineFinding[] {
  return [...steelWillNotHarden(account, say), ...aimOutOfReach(account, say), ...aimsAgainstEachOther(account, say)]
}

/** Below this carbon a missed zone is the steel's fault, whatever the bath [% by weight]. */
const MILD_CARBON = 0.28

function steelWillNotHarden(account: Account, say: Wording): EngineFinding[] {
  const { steel, outlook } = account
  const last = lastHardening(account)
  const where = last === undefined ? {} : { step: last.quench.step }
  const carbon = `${steel.composition.C.toFixed(2)} % carbon`
  const remedy = `Take a bar with more carbon${steel.composition.C < 0.3 ? ': 0.45 % and up for a tool' : ', or with alloy that hardens deeper'}; this one only takes a case.`
  const zones = hardZones(account).flatMap((each): EngineFinding[] => {
    const lowHrc = each.zone.aim.lowHrc ?? 0
    if (lowHrc > steel.fullHrc.value)
      return [
        {
          id: 'steel-will-not-harden',
          severity: 'stop',
          where: { ...where, zone: each.zone.name },
          says: `${steel.name} does not get that hard: the ${each.zone.name} wants ${say.hardness(lowHrc)}.`,
          because: `With ${carbon} it comes to ${say.hardness(steel.fullHrc.value)} when it is hardened right through; that is set by the carbon alone.`,
          remedy: steel.composition.C < 0.3 ? remedy : 'Take a bar with more carbon, or be content with less.',
          figures: { mostHrc: steel.fullHrc.value },
        },
      ]
    if (last === undefined || (last.quench.bath.kind !== 'brine' && steel.composition.C >= MILD_CARBON)) return []
    const worst = worstOf(cooledTooSlowly(account, each, last.quench))
    if (worst === undefined || worst.quenchedHrc.value >= lowHrc) return []
    return [
      {
        id: 'steel-will-not-harden',
        severity: 'stop',
        where: { ...where, zone: each.zone.name, xM: worst.spot.xM },
        says: `${steel.name} does not harden in this thickness: the ${each.zone.name} comes out at ${say.hardness(worst.quenchedHrc.value)}.`,
        because: `With ${carbon} and little alloy it would have to cool from ${say.temperature(1073.15)} to ${say.temperature(773.15)} in ${say.time(steel.fullCoolingS)}; the ${last.quench.bath.name} takes ${Number.isFinite(worst.cooling800To500S) ? say.time(worst.cooling800To500S) : 'minutes'} there.`,
        remedy: 'Take a bar that hardens deeper, or make it thinner.',
        figures: { cause: 'shallow-hardening', coolingS: worst.cooling800To500S, hardensInS: steel.fullCoolingS },
      },
    ]
  })
  const asked = outlook.zones.some(({ zone }) => !zone.assumed)
  if (zones.length > 0 || asked || last === undefined || steel.fullHrc.value >= MILD_HRC) return zones
  return [
    {
      id: 'steel-will-not-harden',
      severity: 'warn',
      where,
      says: `${steel.name} is mild: the quench does next to nothing for it.`,
      because: `With ${carbon} it comes to ${say.hardness(steel.fullHrc.value)} at the very best, and only where it is thin.`,
      remedy,
    },
  ]
}

/** The coolest temper that makes a hardened piece safe: 150 degC for an hour (common practice, no source). */
const LEAST_TEMPER = { atK: 423.15, holdS: 3600, times: 1 } as const

function aimOutOfReach(account: Account, say: Wording): EngineFinding[] {
  const { steel, records } = account
  const { tempers, colours } = drawings(account)
  const drawn = tempers.length + colours.length > 0
  const softenedHrc = steel.temperedHrc(steel.fullHrc.value, LEAST_TEMPER)
  const quenched = records.some(({ kind }) => kind === 'quench')
  return hardZones(account).flatMap(({ zone, quenchedHrc }): EngineFinding[] => {
    const lowHrc = zone.aim.lowHrc ?? 0
    const where = { zone: zone.name }
    if (lowHrc > steel.fullHrc.value + 0.5)
      return [
        {
          id: 'aim-out-of-reach',
          severity: lowHrc > steel.fullHrc.high ? 'stop' : 'warn',
          where,
          says: `No temper brings the ${zone.name} to ${say.hardness(lowHrc)}: it is never that hard.`,
          because: `Fully hardened, ${steel.name} is at ${say.hardness(steel.fullHrc.value)}, the richest bar of that name at ${say.hardness(steel.fullHrc.high)}; tempering only takes away.`,
          remedy:
            softenedHrc < 42
              ? 'Take another steel.'
              : `Aim for ${say.hardness(Math.floor(softenedHrc - 1))} or less, or take another steel.`,
          figures: softenedHrc < 42 ? {} : { mostHrc: Math.floor(softenedHrc - 1) },
        },
      ]
    if (drawn && lowHrc > softenedHrc + 1)
      return [
        {
          id: 'aim-out-of-reach',
          severity: 'warn',
          where,
          says: `Tempered at all, the ${zone.name} falls below ${say.hardness(lowHrc)}.`,
          because: `${steel.name} comes out of the bath at ${say.hardness(steel.fullHrc.value)} at best, and the coolest useful temper, ${say.temperature(LEAST_TEMPER.atK)}, leaves ${say.hardness(softenedHrc)}.`,
          remedy: `Aim for ${say.hardness(Math.floor(softenedHrc - 1))} or less, or take a steel with more carbon and alloy.`,
          figures: { mostHrc: Math.floor(softenedHrc - 1) },
        },
      ]
    if (!quenched && quenchedHrc.value < lowHrc)
      return [
        {
          id: 'aim-out-of-reach',
          severity: 'stop',
          where,
          says: `Nothing in this process hardens the ${zone.name}.`,
          because: `It should come to ${say.hardness(lowHrc)} or more, and there is no quench.`,
          remedy: 'Add a heat and a quench; a steel that hardens in air wants its air cool written as a quench in still air.',
          figures: { cause: 'no-quench' },
        },
      ]
    return []
  })
}

/** Two zones that overlap and cannot both be right. */
function aimsAgainstEachOther({ outlook }: Account, say: Wording): EngineFinding[] {
  const { zones } = outlook
  return zones.flatMap((hard, i) =>
    zones.flatMap((soft, k): EngineFinding[] => {
      if (i === k || !contradict(hard, soft)) return []
      return [
        {
          id: 'aim-out-of-reach',
          severity: 'stop',
          where: { zone: hard.zone.name, xM: Math.max(hard.zone.fromM, soft.zone.fromM) },
          says: `The ${hard.zone.name} and the ${soft.zone.name} ask for two hardnesses in one place.`,
          because: `From ${say.length(Math.max(hard.zone.fromM, soft.zone.fromM))} to ${say.length(Math.min(hard.zone.toM, soft.zone.toM))} one wants at least ${say.hardness(hard.zone.aim.lowHrc ?? 0)}, the other at most ${say.hardness(soft.zone.aim.highHrc ?? 0)}.`,
          remedy: 'Move one of them; leave a thickness of the piece between hard and soft.',
          figures: { cause: 'two-aims' },
        },
      ]
    }),
  )
}

function contradict({ zone: hard }: ZoneOutlook, { zone: soft }: ZoneOutlook): boolean {
  const overlapM = Math.min(hard.toM, soft.toM) - Math.max(hard.fromM, soft.fromM)
  return overlapM > 1e-6 && (hard.aim.lowHrc ?? 0) > (soft.aim.highHrc ?? 100)
}

function worstOf<Each extends { readonly quenchedHrc: { readonly value: number } }>(spots: readonly Each[]): Each | undefined {
  return [...spots].sort((a, b) => a.quenchedHrc.value - b.quenchedHrc.value)[0]
}
