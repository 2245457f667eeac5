import { type Account, hardenings, isOil, isWater, lastHardening } from './account.ts'
import { FLASH_MARGIN_K, flashK, smokeK } from './bath-limits.ts'
import type { EngineFinding } from './finding.ts'
import { STRUCK_END_STOP_HRC, STRUCK_END_WARN_HRC, struckFromM } from './struck.ts'
import type { Wording } from './wording.ts'

/** What can hurt somebody. */
export function safetyFindings(account: Account, say: Wording): EngineFinding[] {
  return [
    ...struckEndHard(account, say),
    ...oilFire(account, say),
    ...oilSmoke(account, say),
    ...waterInOil(account, say),
    ...fume(account),
    ...redShort(account, say),
  ]
}

function struckEndHard(account: Account, say: Wording): EngineFinding[] {
  const { job, outlook } = account
  if (!job.struck) return []
  const fromM = struckFromM(account)
  const places = [
    ...outlook.along.flatMap(({ skin, centre }) => [skin, centre]),
    ...outlook.zones.flatMap(({ spots }) => spots),
  ].filter(({ spot }) => spot.xM >= fromM - 1e-9)
  const hardest = places.sort((a, b) => b.temperedHrc.value - a.temperedHrc.value)[0]
  if (hardest === undefined || hardest.temperedHrc.value <= STRUCK_END_WARN_HRC) return []
  const zone = outlook.zones.find((each) => each.zone.toM > fromM && each.zone.fromM < account.lengthM)
  return [
    {
      id: 'struck-end-hard',
      severity: hardest.temperedHrc.value > STRUCK_END_STOP_HRC ? 'stop' : 'warn',
      where: { xM: hardest.spot.xM, ...(zone === undefined ? {} : { zone: zone.zone.name }) },
      says: `The struck end is too hard at ${say.hardness(hardest.temperedHrc.value)}: it throws splinters.`,
      because: `It should be softer than the hammer: ${say.hardness(STRUCK_END_WARN_HRC)} at most, many keep it at ${say.hardness(30)} to ${say.hardness(40)} (DGUV 209-001; ASME B107.410 from memory).`,
      remedy:
        'Keep it out of the heat or out of the bath, or draw it to a faint red with the working end in water; an air-hardening steel must then cool slowly.',
      caution:
        'Do not strike it so. Eye protection for you and for all near (OSHA 29 CFR 1926.301), and never two hardened faces together.',
    },
  ]
}

/** Metal this hot at the surface lights the vapour above the oil [K]: first visible red is 400 degC (Machinery's Handbook). */
const LIGHTS_OIL_K = 673.15
/** So far above the flash point a lifted piece may light the film that it carries [K]: common practice, no source. */
const LIFTED_OVER_FLASH_K = 60

const OIL_CAUTION =
  "Lid and class B or dry-powder extinguisher within reach, never water; away from anything that burns, in moving air. Your fire code and the maker's sheet rule."

function oilFire(account: Account, say: Wording): EngineFinding[] {
  const last = lastHardening(account)
  return hardenings(account).flatMap(({ quench }): EngineFinding[] => {
    const { bath, step, depthM, lengthUnderM, bathEndK, hottestOutK } = quench
    if (!isOil(bath)) return []
    const where = { step }
    const found = (severity: 'stop' | 'warn', says: string, because: string, remedy: string): EngineFinding[] => [
      { id: 'oil-fire', severity, where, says, because, remedy, caution: OIL_CAUTION },
    ]
    const flash = flashK(bath)
    if (flash !== undefined && bathEndK > flash - FLASH_MARGIN_K)
      return found(
        'stop',
        `The ${bath.name} ends near its flash point: it can burn by itself.`,
        `It ends at ${say.temperature(bathEndK)} and flashes at about ${say.temperature(flash)}; Washington State WAC 296-835 wants an alarm 28 K (50 °F) below.`,
        'More oil, or oil that starts cooler.',
      )
    const whole = depthM === null || lengthUnderM >= account.lengthM - 1e-6
    if (bath.depthM !== undefined && bath.depthM < lengthUnderM)
      return found(
        'stop',
        `Red metal stands out of the ${bath.name} and lights it.`,
        `${say.length(lengthUnderM)} should go under and the oil is ${say.length(bath.depthM)} deep.`,
        'A deeper bath, or lay it in flat and quickly.',
      )
    if (!whole) {
      const aboveK =
        quench === last?.quench
          ? Math.max(0, ...account.outlook.along.filter(({ xM }) => xM >= lengthUnderM).map(({ skin }) => skin.peakK))
          : quench.hottestInK
      if (aboveK > LIGHTS_OIL_K)
        return found(
          'warn',
          `Hot metal stands over the ${bath.name}: the vapour above it can catch.`,
          `Above the line, at ${say.length(lengthUnderM)}, it has been at ${say.temperature(aboveK)}; from about ${say.temperature(LIGHTS_OIL_K)} on steel lights the vapour.`,
          'Heat only what goes under, or put the whole of it under. Go in quickly, and do not hover.',
        )
    }
    if (flash !== undefined && hottestOutK > flash + LIFTED_OVER_FLASH_K)
      return found(
        'warn',
        `It comes out of the ${bath.name} hot enough to flare.`,
        `It is still at ${say.temperature(hottestOutK)} inside when it is lifted; the oil flashes at about ${say.temperature(flash)}.`,
        'Leave it under until it can be held in the hand.',
      )
    if (/\b(used|waste|old|unknown|drain)\b/i.test(bath.name))
      return found(
        'warn',
        `Nobody knows when the ${bath.name} flashes.`,
        'Used oil may hold petrol and water; its flash point can be far under that of the fresh oil.',
        'Take quench oil with a sheet, or fresh rape-seed (canola) oil.',
      )
    return []
  })
}

function oilSmoke(account: Account, say: Wording): EngineFinding[] {
  const last = lastHardening(account)
  return hardenings(account).flatMap(({ quench }): EngineFinding[] => {
    const { bath, step, depthM, lengthUnderM, bathEndK } = quench
    if (!isOil(bath)) return []
    const smoke = smokeK(bath)
    const found = (says: string, because: string, remedy: string): EngineFinding[] => [
      {
        id: 'oil-smoke',
        severity: 'warn',
        where: { step },
        says,
        because,
        remedy,
        caution: 'Stay out of the smoke: hood or outdoors. OSHA limits oil mist to 5 mg/m3 over a shift (29 CFR 1910.1000).',
      },
    ]
    if (smoke !== undefined && bathEndK > smoke)
      return found(
        `The ${bath.name} ends hot enough to smoke.`,
        `It ends at ${say.temperature(bathEndK)}; it smokes from about ${say.temperature(smoke)}.`,
        'More oil, or oil that starts cooler.',
      )
    const partly = depthM !== null && lengthUnderM < account.lengthM - 1e-6
    const aboveK =
      partly && quench === last?.quench
        ? Math.max(0, ...account.outlook.along.filter(({ xM }) => xM >= lengthUnderM).map(({ skin }) => skin.peakK))
        : 0
    if (aboveK > LIGHTS_OIL_K)
      return found(
        `Oil smokes where the hot metal stands out of the ${bath.name}.`,
        `The metal at the line has been at ${say.temperature(aboveK)}${smoke === undefined ? '' : `; the oil smokes from about ${say.temperature(smoke)}`}.`,
        'Heat only what goes under, or put the whole of it under.',
      )
    if (/\b(used|waste|drain|engine|motor|gear|transmission)\b/i.test(bath.name))
      return found(
        `The smoke of the ${bath.name} is bad for you.`,
        'Engine oil holds additives, and used oil metals and carcinogens besides.',
        'Take quench oil, or fresh rape-seed (canola) oil.',
      )
    return []
  })
}

const STEAM_CAUTION =
  "Water under hot oil turns to steam at once, foams the oil over and spreads fire. Never quench in such a bath; keep people clear, lid at hand. The maker's sheet and your fire code rule."

function waterInOil(account: Account, say: Wording): EngineFinding[] {
  const stated = account.job.shop.baths
    .filter((bath) => isOil(bath) && /\b(water|wet|emulsion|rain|condensation)\b/i.test(bath.name))
    .flatMap((bath): EngineFinding[] => {
      const step = account.records.find((record) => 'bath' in record && record.bath.name === bath.name)?.step
      if (step === undefined) return []
      return [
        {
          id: 'water-in-oil',
          severity: 'stop',
          where: { step },
          says: 'There is water in this oil: do not put hot steel into it.',
          because: `Its name says so ("${bath.name}"); 0.1 % is the usual limit (quench-oil practice, from memory).`,
          remedy: 'Let it settle, draw the water off, and warm the oil slowly over the boiling point of water before it is used.',
          caution: STEAM_CAUTION,
        },
      ]
    })
  if (stated.length > 0) return stated
  // Straight from water into oil: the drops go with it.
  let wet: { readonly name: string; readonly step: number } | undefined
  for (const record of account.records) {
    if (record.kind === 'heat' || record.kind === 'temper') wet = undefined
    if (record.kind !== 'quench' && record.kind !== 'run-colours') continue
    if (isOil(record.bath) && wet !== undefined)
      return [
        {
          id: 'water-in-oil',
          severity: 'warn',
          where: { step: record.step },
          says: `It goes into the ${record.bath.name} wet from the ${wet.name}.`,
          because: `A few drops carried over are enough: the oil is at ${say.temperature(record.bath.temperatureK)}, the steel may be far hotter, and water at the bottom of hot oil boils.`,
          remedy: 'Stay with one bath.',
          caution: STEAM_CAUTION,
        },
      ]
    if (isWater(record.bath)) wet = { name: record.bath.name, step: record.step }
  }
  return []
}

function fume(account: Account): EngineFinding[] {
  const { job, steel } = account
  const hot = account.records.find((record) => record.kind !== 'carry' && record.kind !== 'warm-bath')
  if (hot === undefined) return []
  const words = `${job.piece} ${steel.name} ${steel.gradeId ?? ''}`
  const leaded = /\b(\d{2}L\d{2})\b/i.test(words) || /\bleaded\b/i.test(words)
  const coated = /\b(galvani[sz]ed|zinc|cadmium|chromed?|chrome[- ]plated|plated|painted)\b/i.exec(words)
  if (!leaded && coated === null) return []
  return [
    {
      id: 'galvanised-fume',
      severity: 'stop',
      where: { step: hot.step },
      says: leaded
        ? 'There is lead in this steel: its fume is poison.'
        : `There is a coat on this steel (${coated?.[0] ?? ''}): its fume is poison.`,
      because: leaded
        ? `${steel.name} holds some 0.15 to 0.35 % lead, which comes off at a red heat (general workshop safety, from memory).`
        : 'Zinc melts at 420 °C, boils at 907 °C and burns to a white smoke that gives metal-fume fever (OSHA 29 CFR 1910.1000 allows 5 mg/m3 of it over a shift); cadmium, lead and chrome do worse (general workshop safety, from memory).',
      remedy: leaded
        ? 'Take another bar: leaded steel is for the lathe, not for the fire.'
        : 'Strip it to bright metal first, chemically or by grinding outdoors; cadmium: leave it.',
      caution: 'Do not heat it indoors or without extraction. Feeling feverish after such smoke is a case for a doctor.',
    },
  ]
}

/** Resulphurised from here on (SAE 11xx begin at 0.08 % S). */
const RESULPHURISED_WT_PCT = 0.08
/** Copper comes to the surface as the iron scales, and tears it hot; nickel of half as much prevents it (from memory). */
const COPPER_WT_PCT = 0.4

function redShort(account: Account, say: Wording): EngineFinding[] {
  const { composition, name } = account.steel
  const sulphur = composition.S >= RESULPHURISED_WT_PCT
  const copper = composition.Cu >= COPPER_WT_PCT && composition.Ni < 0.5 * composition.Cu
  if (!sulphur && !copper) return []
  const hot = account.records.find((record) => record.kind === 'heat' || record.kind === 'normalise')
  return [
    {
      id: 'red-short',
      severity: account.job.struck ? 'warn' : 'note',
      ...(hot === undefined ? {} : { where: { step: hot.step } }),
      says: `${name} is short when hot: it tears and splits along the bar under the hammer.`,
      because: sulphur
        ? `It holds ${composition.S.toFixed(2)} % sulphur, from ${RESULPHURISED_WT_PCT} % on a steel is made for the lathe; its strings of sulphide open in the bath as well.`
        : `It holds ${composition.Cu.toFixed(2)} % copper and ${composition.Ni.toFixed(2)} % nickel; copper over ${COPPER_WT_PCT} % tears the skin hot.`,
      remedy: account.job.struck
        ? 'Take another bar for a struck tool.'
        : `Do not forge or upset it; cut it to shape, and never bend it at a heat under about ${say.temperature(1173.15)}.`,
      ...(account.job.struck ? { caution: 'A struck tool of such steel can split: eye protection on.' } : {}),
    },
  ]
}
