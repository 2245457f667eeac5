import { pow } from '#engine/arithmetic/elementary.ts'
import { freeGrainNumber, grainAfterHeat, refined } from '#engine/metallurgy/grain-growth.ts'
import { type Account, hardenings, hardZones, isOil, isWater, lastHardening, skinOf } from './account.ts'
import type { EngineFinding } from './finding.ts'
import { isNormalisedBefore, leastHeatK, soakHadS, soakWanted, timeToGapS } from './hardening-heat.ts'
import { skinFindings } from './skin-findings.ts'
import { MILD_HRC } from './steel-facts.ts'
import type { Wording } from './wording.ts'
import { place, sentence } from './words.ts'

/** What the fire did to the steel, heat by heat. Only heats that end in a quench are judged: a normalise has room to spare. */
export function heatFindings(account: Account, say: Wording): EngineFinding[] {
  return [
    ...underheated(account, say),
    ...coldAtTheBath(account, say),
    ...beyondTheHeat(account, say),
    ...overheated(account, say),
    ...soakTooShort(account, say),
    ...unevenHeat(account, say),
    ...coarseGrain(account, say),
    ...skinFindings(account, say),
  ]
}

/** Under the sheets by little and well over Ac1, a steel with carbide to spare may harden all the same [K]: common practice, no source. */
const WELL_OVER_AC1_K = 20
const LITTLE_UNDER_K = 25

/** The fire itself was too cool, or never got the piece there. */
function underheated(account: Account, say: Wording): EngineFinding[] {
  const { steel } = account
  // Mild steel hardens from no heat, and hears so.
  if (steel.fullHrc.value < MILD_HRC) return []
  const last = lastHardening(account)?.heat
  return hardenings(account).flatMap(({ heat, quench }): EngineFinding[] => {
    const intoWater = isWater(quench.bath)
    const leastK = leastHeatK(steel, intoWater)
    const reachedK = heat.outsideUpS === null ? Math.min(heat.hottestK, heat.toK) : heat.toK
    if (reachedK >= leastK) return []
    const never = heat.outsideUpS === null && heat.toK >= leastK
    const little = reachedK >= Math.max(leastK - LITTLE_UNDER_K, steel.critical.ac1K + WELL_OVER_AC1_K)
    const hardens = heat === last && little && zonesHarden(account)
    return [
      {
        id: 'underheated',
        severity: reachedK < steel.critical.ac1K + 10 ? 'stop' : hardens ? 'note' : 'warn',
        where: { step: heat.step },
        says: never
          ? `The ${heat.fire.name} never gets it to heat: it stops at ${say.temperature(reachedK)}.`
          : hardens
            ? `${say.temperature(reachedK)} is cooler than the sheets of ${steel.name} have it.`
            : `${say.temperature(reachedK)} is too cool to harden ${steel.name}.`,
        because: `It hardens from ${rangeInWords(account, say, intoWater)}; it begins to change at ${say.temperature(steel.critical.ac1K)}${steel.composition.C < 0.75 ? ` and is through at ${say.temperature(steel.critical.ac3K)}` : ''}.${hardens ? ' By its carbon in solution it comes hard all the same, and less deep.' : ''}`,
        remedy: never
          ? 'Use a hotter fire, or heat a shorter length of it.'
          : `Bring it to ${say.temperature(middleK(account))}, and hold it until the middle is there too.`,
        figures: never ? { cause: 'fire-too-cool', heatToK: heat.toK } : { heatToK: middleK(account) },
      },
    ]
  })
}

/** Transformation starts under way some way below Ac1; plain steel is lost in a second or two there (common practice, no source). */
const ENTRY_UNDER_AC1_K = 50

function coldAtTheBath(account: Account, say: Wording): EngineFinding[] {
  const { steel } = account
  return hardenings(account).flatMap(({ heat, carry, quench }): EngineFinding[] => {
    const liquid = isOil(quench.bath) || isWater(quench.bath)
    // Steel that hardens over minutes loses nothing on the way.
    if (!liquid || steel.fullCoolingS > 120) return []
    if (
      !(quench.coldestEntryK < steel.critical.ac1K - ENTRY_UNDER_AC1_K) ||
      heat.coldestK < leastHeatK(steel, isWater(quench.bath))
    )
      return []
    const walk = carry === undefined ? '' : ` after ${say.time(carry.endS - carry.startS)} in the air`
    return [
      {
        id: 'underheated',
        severity: 'warn',
        where: { step: quench.step },
        says: `It is too cold when it goes into the ${quench.bath.name}.`,
        because: `The thinnest skin that must harden is at ${say.temperature(quench.coldestEntryK)}${walk}; below about ${say.temperature(steel.critical.ac1K - ENTRY_UNDER_AC1_K)} it turns soft before the bath has it.`,
        remedy: 'Bring the bath to the fire, and leave the thin part for last in the heat.',
        figures: { cause: 'cold-entry', entryK: steel.critical.ac1K - ENTRY_UNDER_AC1_K },
      },
    ]
  })
}

/** Only part of the length was heated, and the cold rest keeps a hard zone from its heat. Skin that stays cold is no matter of soak. */
function beyondTheHeat(account: Account, say: Wording): EngineFinding[] {
  const last = lastHardening(account)
  if (last?.heat.part === undefined) return []
  const { heat } = last
  const { toM } = last.heat.part
  const leastK = leastHeatK(account.steel, isWater(last.quench.bath))
  if (heat.toK < leastK) return []
  return hardZones(account).flatMap((zone): EngineFinding[] => {
    const [coldest] = skinOf(zone)
      // A fringe that hardens as asked all the same is no fault.
      .filter(
        ({ peakK, quenchedHrc }) => peakK < leastK && (peakK < leastK - 15 || quenchedHrc.value < (zone.zone.aim.lowHrc ?? 0)),
      )
      .sort((a, b) => a.peakK - b.peakK)
    if (coldest === undefined) return []
    const furtherM = Math.max(zone.zone.toM + 0.015, coldest.spot.xM > toM ? 0 : toM + 0.02)
    return [
      {
        id: 'underheated',
        severity: coldest.peakK < account.steel.critical.ac1K + 10 ? 'stop' : 'warn',
        where: { step: heat.step, zone: zone.zone.name, xM: coldest.spot.xM },
        says: `The heat does not reach all of the ${zone.zone.name}: the cold rest draws it off.`,
        because: `${sentence(place(coldest.spot.xM, account.lengthM, say))} the skin comes to ${say.temperature(coldest.peakK)}; it needs ${say.temperature(leastK)}.`,
        remedy: `Heat it to ${say.length(Math.min(account.lengthM, furtherM))} from the working end or further.`,
        figures: { cause: 'short-heat', heatedM: furtherM },
      },
    ]
  })
}

/** Over the published range by more than a fire is held to; a thin edge counts as much as the body. */
const OVER_MARGIN_K = 28
/** Grain runs away from about here above the range: common practice, no source. */
const FAR_OVER_K = 90

function overheated(account: Account, say: Wording): EngineFinding[] {
  const { steel } = account
  return hardenings(account).flatMap(({ heat }): EngineFinding[] => {
    const overK = heat.hottestK - steel.hardening.toK
    if (overK <= OVER_MARGIN_K) return []
    const xM = heat === lastHardening(account)?.heat ? hottestAt(account) : undefined
    const edge = heat.hottestK > heat.toK + 15
    return [
      {
        id: 'overheated',
        severity: overK > FAR_OVER_K ? 'stop' : 'warn',
        where: { step: heat.step, ...(xM === undefined ? {} : { xM }) },
        says: edge
          ? `The thin part runs ahead to ${say.temperature(heat.hottestK)}: too hot for ${steel.name}.`
          : `${say.temperature(heat.hottestK)} is too hot for ${steel.name}.`,
        because: `It hardens from ${rangeInWords(account, say)}; above that the grain grows, more austenite stays, and it cracks the sooner.`,
        remedy: edge
          ? 'Heat slowly from the thick part, or shield the thin part with a bit of pipe.'
          : `Take it to ${say.temperature(middleK(account))} and no more. If it has been that hot, normalise before you harden.`,
        figures: { ...(edge ? { cause: 'edge-ahead' } : {}), heatToK: middleK(account) },
      },
    ]
  })
}

function soakTooShort(account: Account, say: Wording): EngineFinding[] {
  const { steel, records } = account
  const drained = beyondTheHeat(account, say).length > 0 ? lastHardening(account)?.heat : undefined
  return hardenings(account).flatMap(({ heat, quench }): EngineFinding[] => {
    const leastK = leastHeatK(steel, isWater(quench.bath))
    if (heat.toK < leastK || heat.outsideUpS === null || heat === drained || endsInTheCold(account, heat.part)) return []
    // Beside a cold end waiting does not help: what stood there is what counts.
    const besideCold = heat.part !== undefined && heat === lastHardening(account)?.heat
    const short = heat.middleUpS === null && heat.coldestK < leastK
    const wanted = soakWanted(steel, isNormalisedBefore(records, heat.step))
    if (short && !(besideCold && hardensAllTheSame(account, leastK - heat.coldestK))) {
      const moreS = timeToGapS(heat, 15) - heat.holdS
      const longer = Number.isFinite(moreS) && moreS > 5 ? `about ${say.time(moreS)} longer` : 'until the middle is up'
      return [
        {
          id: 'soak-too-short',
          severity: 'warn',
          where: { step: heat.step },
          says: `Hold it ${longer}: the middle is at ${say.temperature(heat.coldestK)} when the hold ends.`,
          because: `The outside has had ${say.time(heat.holdS)} at ${say.temperature(heat.toK)}; the slowest place that must harden needs ${say.temperature(leastK)}.`,
          remedy: 'Turn it in the fire, and wait until no shadow is left inside.',
          figures: {
            holdS: (Number.isFinite(moreS) ? heat.holdS + moreS : 2 * heat.holdS) + wanted.goodS,
            soakS: wanted.goodS,
          },
        },
      ]
    }
    const hadS = soakHadS(heat, steel, besideCold ? stoodS(account) : undefined)
    if (hadS >= wanted.s) return []
    const restS = wanted.goodS - hadS
    return [
      {
        id: 'soak-too-short',
        severity: 'warn',
        where: { step: heat.step },
        says: `Hold it ${say.time(Math.max(60, restS))} longer: the carbide has no time to dissolve.`,
        because: `The middle is at heat for ${say.time(hadS)}; ${steel.name} wants ${say.time(wanted.goodS)} or more (${wanted.source}).`,
        remedy: `Count the soak from when the middle is up, ${say.time(heat.middleUpS ?? timeToGapS(heat, 15))} after the outside.`,
        figures: { holdS: heat.holdS + Math.max(60, restS), soakS: wanted.goodS },
      },
    ]
  })
}

/** A place this far under the least heat that still hardens as asked is no fault [K]: a fire is held no better. */
const FRINGE_K = 15

function hardensAllTheSame(account: Account, underK: number): boolean {
  return underK <= FRINGE_K && zonesHarden(account)
}

/** Every hard zone turns to austenite at its skin and comes out of the bath as hard as it must become. */
function zonesHarden(account: Account): boolean {
  const zones = hardZones(account)
  if (zones.length === 0) return false
  return zones.every(({ zone, spots }) =>
    skinOf({ spots }).every(
      ({ austeniteFraction, quenchedHrc }) => austeniteFraction >= 0.95 && quenchedHrc.value >= (zone.aim.lowHrc ?? 0),
    ),
  )
}

/** The shortest time that a place of a hard zone stood near its own peak in the last heat [s]. */
function stoodS(account: Account): number | undefined {
  const times = hardZones(account).flatMap(({ spots }) => spots.map(({ soakS }) => soakS))
  return times.length === 0 ? undefined : Math.min(...times)
}

/** With no hard zone named, the heated part ends in cold metal, and its coldest place says nothing of the soak. */
function endsInTheCold(account: Account, part: unknown): boolean {
  return part !== undefined && hardZones(account).length === 0
}

/** Hot and cold places further apart than this harden unlike and warp [K]: common practice, no source. */
const UNEVEN_K = 40

function unevenHeat(account: Account, say: Wording): EngineFinding[] {
  return hardenings(account).flatMap(({ heat }): EngineFinding[] => {
    const gapK = heat.hottestK - heat.coldestK
    const gap = heat.middleUpS !== null && gapK > UNEVEN_K && !endsInTheCold(account, heat.part)
    if (heat.even && !gap) return []
    return [
      {
        id: 'uneven-heat',
        severity: 'warn',
        where: { step: heat.step },
        says: heat.even
          ? 'The heat is uneven: one place runs ahead of the other.'
          : 'The heat is not even: one side will harden unlike the other, and it will warp.',
        because: heat.even
          ? `At the end of the hold the hottest place is at ${say.temperature(heat.hottestK)}, the coldest that must harden at ${say.temperature(heat.coldestK)}.`
          : `The step says so; skin and middle stood as far apart as ${say.temperature(heat.toK)} and ${say.temperature(heat.toK - heat.widestGapK)} on the way up.`,
        remedy: 'Turn it, slow the blast, or put it in a pipe in the fire so that it heats from all sides.',
        figures: heat.even ? { cause: 'edge-ahead', heatToK: heat.toK } : { cause: 'said-so' },
      },
    ]
  })
}

/** Grain finer than this is sound; coarser than `COARSE` it is a fault of the bar [ASTM number]: common practice, no source. */
const SOUND = 7
const COARSE = 5
/** Deeper hardening for each number of coarser grain: the ideal diameter of ASTM A255. */
const DEEPER_PER_NUMBER = 1.083

function coarseGrain(account: Account, say: Wording): EngineFinding[] {
  const { steel } = account
  const { composition } = steel
  const found = hardenings(account).flatMap(({ heat }): EngineFinding[] => {
    const over = heat.hottestK > steel.hardening.toK + OVER_MARGIN_K
    // Inside its range a rich steel is held fine by carbide that the law does not know of.
    if (!over && (composition.Cr > 2 || composition.V > 0.3 || composition.W > 0.5)) return []
    const heldS = heat.holdS + (heat.outsideUpS ?? 0) / 6
    const atK = over ? heat.hottestK : heat.toK
    const startNumber = heat.from?.grainNumber ?? steel.grainSize
    const free = freeGrainNumber(composition, atK, heldS)
    if (free > (over ? SOUND : SOUND - 1)) return []
    const { number, coarsest } = grainAfterHeat(composition, startNumber, atK, heldS)
    const pinned = number > coarsest + 0.5 ? `, or as fine as ${number.toFixed(1)} while aluminium pins it` : ''
    const deeper = Math.round(100 * (pow(DEEPER_PER_NUMBER, startNumber - coarsest) - 1))
    return [
      {
        id: 'coarse-grain',
        severity: free < COARSE ? 'warn' : 'note',
        where: { step: heat.step },
        says: 'The grain grows coarse: it will break like sugar.',
        because: `${say.time(heldS)} at ${say.temperature(atK)} leaves grain of about ASTM ${coarsest.toFixed(1)}${pinned} (Lee & Lee 2008); ${SOUND} or finer is sound.${deeper >= 5 ? ` It hardens ${deeper} % deeper for it, and cracks the sooner.` : ''}`,
        remedy: 'Cooler or shorter. Coarse already: normalise three times at falling heats, then harden.',
        figures: {
          ...(over ? { heatToK: middleK(account) } : {}),
          holdS: timeToGapS(heat, 15) + soakWanted(steel, isNormalisedBefore(account.records, heat.step)).goodS,
        },
      },
    ]
  })
  const last = lastHardening(account)?.heat
  const brought = last?.from?.grainNumber ?? steel.grainSize
  if (steel.grainSize >= COARSE || found.length > 0 || last === undefined || brought >= COARSE) return found
  const trips = refined(composition, steel.grainSize, steel.critical.ac3K + NORMALISE_OVER_K, NORMALISE_HOLD_S, 4)
  const buys = trips.map((number) => number.toFixed(1)).join(', ')
  const times = Math.min(3, 1 + trips.findIndex((number) => number >= SOUND)) || 3
  return [
    {
      id: 'coarse-grain',
      severity: 'warn',
      says: 'This bar is coarse, and nothing before the hardening makes it fine.',
      because: `Its grain is given as ASTM ${steel.grainSize}${brought > steel.grainSize ? `, ${brought.toFixed(1)} when it comes to the hardening` : ''}; ${SOUND} or finer is sound. One normalising after the other would bring it to about ${buys}.`,
      remedy: 'Normalise it first, two or three times at falling heats.',
      figures: { cause: 'coarse-bar', times },
    },
  ]
}

/** The usual normalising: so far over Ac3 [K], held so long [s]; common practice, no source. */
const NORMALISE_OVER_K = 60
const NORMALISE_HOLD_S = 300

function hottestAt({ outlook }: Account): number | undefined {
  const skins = outlook.along.map(({ skin }) => skin)
  return [...skins].sort((a, b) => b.peakK - a.peakK)[0]?.spot.xM
}

function middleK({ steel }: Account): number {
  return 0.5 * (steel.hardening.fromK + steel.hardening.toK)
}

function rangeInWords({ steel: { hardening } }: Account, say: Wording, intoWater = true): string {
  const basis = hardening.published ? hardening.source : `worked out: ${hardening.source}`
  const fromK = intoWater ? hardening.fromK : (hardening.inOilFromK ?? hardening.fromK)
  return `${say.temperature(fromK)} to ${say.temperature(hardening.toK)} (${basis})`
}
