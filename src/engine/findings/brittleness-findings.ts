import type { TemperRecord } from '#engine/simulation/records.ts'
import { type Account, BRITTLE_HRC, drawings, hardZones, lastHardening, skinOf } from './account.ts'
import { coloursUnreliable } from './colour-findings.ts'
import type { EngineFinding } from './finding.ts'
import type { Wording } from './wording.ts'

/** Tempers that leave the steel brittle or unsettled: the wrong range, too few of them, colours that mislead, austenite left over. */
export function brittlenessFindings(account: Account, say: Wording): EngineFinding[] {
  return [
    ...embrittlingRange(account, say),
    ...moreThanOneTemper(account, say),
    ...coloursUnreliable(account, say),
    ...retainedAustenite(account, say),
  ]
}

/** The ends of a range are round figures (230 degC and 450 degF are one and the same): so near to an end is outside [K]. */
const RANGE_END_K = 3

function embrittlingRange(account: Account, say: Wording): EngineFinding[] {
  const { steel, outlook, job } = account
  if (!outlook.along.some(({ skin }) => skin.quenchedHrc.value >= BRITTLE_HRC && skin.martensiteFraction >= 0.5)) return []
  return drawings(account).tempers.flatMap((temper): EngineFinding[] => {
    const range = steel.embrittling.find(
      ({ fromK, toK }) => temper.trueK > fromK + RANGE_END_K && temper.trueK < toK - RANGE_END_K,
    )
    if (range === undefined) return []
    return [
      {
        id: 'embrittling-range',
        severity: job.struck ? 'warn' : 'note',
        where: { step: temper.step },
        says: `${say.temperature(temper.trueK)} is a brittle temper for ${steel.name}.`,
        because: `${range.says}, ${say.temperature(range.fromK)} to ${say.temperature(range.toK)} (${range.source}): softer than a cooler temper, and no tougher.`,
        remedy: `Stay under ${say.temperature(range.fromK)} or go over ${say.temperature(range.toK)}, whichever the aim allows.`,
        figures: { brittleK: [range.fromK, range.toK] },
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
      because: `${freshSays(account, first, given, say)} (${steel.cycles.source}).`,
      remedy: `Cool it to the hand, then ${say.time(first.holdS)} again at the same heat${steel.cycles.least - given > 1 ? ', and once more' : ''}.`,
      figures: { times: steel.cycles.least - given + first.times },
    },
  ]
}

/** What one temper leaves undone at the place with most of it, and what another would do, in figures. */
function freshSays({ steel, outlook }: Account, first: TemperRecord, given: number, say: Wording): string {
  const worst = outlook.along
    .map(({ skin }) => skin)
    .reduce((most, skin) => (skin.retainedAusteniteFraction > most.retainedAusteniteFraction ? skin : most))
  const { retainedAusteniteFraction: retained, austeniteLeftFraction: left, freshMartensiteFraction: fresh } = worst
  const after = (times: number) => steel.afterTempers(worst.quenchedHrc.value, retained, { ...first, atK: first.trueK, times })
  const hrc = (times: number): number =>
    steel.temperedHrc(worst.quenchedHrc.value, { ...first, atK: first.trueK, times }) + after(times).overHrc
  const now = worst.temperedHrc.value
  const then = now + hrc(given + 1) - hrc(given)
  const percent = (share: number): string => `${Math.round(100 * share)} %`
  if (fresh >= TELLS)
    return `About ${percent(fresh)} of the metal turns to fresh, untempered martensite as the temper cools, of the ${percent(retained)} that the quench left austenite: it stands at ${say.hardness(now)} and is brittle; one more temper makes it ${say.hardness(then)}, with ${percent(after(given + 1).fresh)} fresh`
  if (left >= TELLS)
    return `About ${percent(left)} of it is still soft austenite, which this temper is too cool to turn (that takes ${say.temperature(TURNS_RICH_K)} in rich steel, ${say.temperature(TURNS_LEAN_K)} in lean); what turns of it as it cools is fresh martensite`
  return 'What austenite the quench left turns to fresh, untempered martensite as the first temper cools'
}

/** A share that is worth a word. */
const TELLS = 0.01
/** Where half of the austenite turns in an hour [K]: from memory, as the tempers are worked out. */
const TURNS_RICH_K = 763
const TURNS_LEAN_K = 513

function inWords(count: number): string {
  return ['no', 'one', 'two', 'three', 'four'][count] ?? String(count)
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
  const worst = spots
    // A hot enough temper has turned most of it.
    .filter(({ austeniteLeftFraction, retainedAusteniteFraction }) => austeniteLeftFraction > 0.5 * retainedAusteniteFraction)
    .sort((a, b) => b.retainedAusteniteFraction - a.retainedAusteniteFraction)[0]
  const usual = account.steel.usualRetained
  if (worst === undefined || worst.retainedAusteniteFraction <= Math.max(RETAINED, usual + OVER_USUAL)) return []
  return [
    {
      id: 'retained-austenite',
      severity: worst.retainedAusteniteFraction > MUCH_RETAINED ? 'warn' : 'note',
      where: { step: last.heat.step, xM: worst.spot.xM },
      says: `About ${Math.round(100 * worst.retainedAusteniteFraction)} % of it stays soft austenite after the quench, ${Math.round(100 * worst.austeniteLeftFraction)} % after all tempers.`,
      because: `It was at ${say.temperature(worst.peakK)}; from the top of its range about ${Math.round(100 * usual)} % would stay. The more carbon and alloy goes into solution, and the warmer the quench ends, the more stays.`,
      remedy: 'Harden from the low end of the range, quench down to the warmth of the room, and temper twice.',
      figures: { heatToK: account.steel.hardening.fromK },
    },
  ]
}
