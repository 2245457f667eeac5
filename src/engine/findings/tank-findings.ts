import type { QuenchRecord } from '#engine/simulation/records.ts'
import { type Account, hardenings, isOil, isWater } from './account.ts'
import { BATH_LIMITS, FLASH_MARGIN_K, flashK } from './bath-limits.ts'
import type { EngineFinding } from './finding.ts'
import type { Wording } from './wording.ts'
import { sentence } from './words.ts'

/** The tank itself: how warm, how much in it, how deep. */
export function tankFindings(account: Account, say: Wording): EngineFinding[] {
  return hardenings(account).flatMap(({ quench }) => [
    ...bathTemperature(quench, say),
    ...bathTooSmall(quench, say),
    ...bathTooShallow(account, quench, say),
  ])
}

/** How much warmer than its limit a bath may end that started inside it [K]: a rise within its own limit is expected. */
const END_GRACE_K = 20

function bathTemperature({ bath, bathStartK, bathEndK, step }: QuenchRecord, say: Wording): EngineFinding[] {
  const limits = BATH_LIMITS[bath.kind]
  if (limits === undefined) return []
  const range = `${say.temperature(limits.bestK[0])} to ${say.temperature(limits.bestK[1])}`
  if (bathStartK < limits.coldK - 0.5)
    return [
      {
        id: 'bath-too-cold',
        severity: 'warn',
        where: { step },
        says: `The ${bath.name} is too cold at ${say.temperature(bathStartK)}.`,
        because: `${sentence(bath.kind)} works best from ${range}: ${limits.why.cold}.`,
        remedy: isOil(bath)
          ? `Warm it to ${say.temperature(323.15)} with a hot bar, and stir.`
          : `Let it come to the warmth of the room, about ${say.temperature(293.15)}.`,
        figures: { bathK: isOil(bath) ? 323.15 : 293.15 },
        ...(isOil(bath)
          ? { caution: 'Push the bar under quickly and wholly, lid at hand; never heat an oil tank over a flame.' }
          : {}),
      },
    ]
  const startsHot = bathStartK > limits.hotK + 0.5
  const endsHot = bathEndK > limits.hotK + END_GRACE_K && bathEndK - bathStartK <= limits.riseK
  if (!startsHot && !endsHot) return []
  const flash = isOil(bath) ? flashK(bath) : undefined
  const close = flash !== undefined && bathEndK > flash - FLASH_MARGIN_K
  return [
    {
      id: 'bath-too-hot',
      severity: close ? 'stop' : 'warn',
      where: { step },
      says: startsHot
        ? `The ${bath.name} is too hot at ${say.temperature(bathStartK)}.`
        : `The ${bath.name} ends too hot, at ${say.temperature(bathEndK)}.`,
      because: `${sentence(bath.kind)} works best from ${range}: ${limits.why.hot}.`,
      remedy: 'Let it cool before this piece goes in.',
      figures: { bathK: Math.min(limits.bestK[1], limits.hotK - (startsHot ? 0 : bathEndK - bathStartK)) },
      ...(flash === undefined
        ? {}
        : {
            caution: `Oil this hot is near its flash point (about ${say.temperature(flash)}): lid and class B extinguisher at hand, your fire code rules.`,
          }),
    },
  ]
}

/** One US gallon to the pound [m3/kg]. */
const RULE_M3_PER_KG = 0.0083
/** What the simulation takes where the smith names no volume [m3]. */
const BUCKET_M3 = 0.02

function bathTooSmall({ bath, bathStartK, bathEndK, massUnderKg, step }: QuenchRecord, say: Wording): EngineFinding[] {
  const limits = BATH_LIMITS[bath.kind]
  if (limits === undefined) return []
  const riseK = bathEndK - bathStartK
  const flash = isOil(bath) ? flashK(bath) : undefined
  const nearFlash = flash !== undefined && bathEndK > flash - FLASH_MARGIN_K && riseK > 5
  if (riseK <= limits.riseK && !nearFlash) return []
  const volumeM3 = bath.volumeM3 ?? BUCKET_M3
  const holds = `${say.volume(volumeM3)}${bath.volumeM3 === undefined ? ' (taken as a bucket: nobody said)' : ''} for ${say.mass(massUnderKg)} of steel`
  const rule = `the rule is one US gallon of oil to the pound, ${say.volume(RULE_M3_PER_KG * massUnderKg)} here (MacKenzie, Thermal Processing)`
  const near = nearFlash
    ? `; it flashes at about ${say.temperature(flash)}, and WAC 296-835 wants to stay 28 K (50 °F) under that`
    : ''
  return [
    {
      id: 'bath-too-small',
      severity: nearFlash ? 'stop' : bath.volumeM3 === undefined ? 'note' : 'warn',
      where: { step },
      says: `The ${bath.name} is too small: this piece warms it from ${say.temperature(bathStartK)} to ${say.temperature(bathEndK)}.`,
      because: isOil(bath) ? `It has ${holds}; ${rule}${near}.` : `It has ${holds}, and warm water keeps its blanket of steam.`,
      remedy: `A bath of ${say.volume((volumeM3 * riseK) / limits.riseK)} or more, or cool it between pieces.`,
      figures: { volumeM3: (volumeM3 * riseK) / limits.riseK },
      ...(isOil(bath)
        ? { caution: 'A small oil bath can boil over or flash. Lid and class B extinguisher at hand; your fire code rules.' }
        : {}),
    },
  ]
}

/** Liquid over the top end and a gap under the bottom one, together [m]: common practice, no source. */
const COVER_AND_GAP_M = 0.05
/** A part-dipped piece only needs the gap. */
const GAP_M = 0.025

function bathTooShallow(account: Account, { bath, depthM, lengthUnderM, step }: QuenchRecord, say: Wording): EngineFinding[] {
  if (bath.depthM === undefined || !(isOil(bath) || isWater(bath))) return []
  const whole = depthM === null || lengthUnderM >= account.lengthM - 1e-6
  const wantedM = lengthUnderM + (whole ? COVER_AND_GAP_M : GAP_M)
  if (bath.depthM >= wantedM - 1e-6) return []
  return [
    {
      id: 'bath-too-shallow',
      severity: bath.depthM < lengthUnderM ? 'stop' : 'warn',
      where: { step },
      says: `The ${bath.name} is too shallow: ${say.length(lengthUnderM)} must go under, and it is ${say.length(bath.depthM)} deep.`,
      because: whole
        ? `Hung upright it wants ${say.length(COVER_AND_GAP_M)} more, for cover above and room below.`
        : `It wants ${say.length(GAP_M)} of room below the end.`,
      remedy: `A bath at least ${say.length(wantedM)} deep.`,
      figures: { depthM: wantedM, dipsM: [bath.depthM - GAP_M] },
      ...(isOil(bath) && whole
        ? { caution: 'Red metal that stands out of oil lights it. Lid and class B extinguisher at hand; your fire code rules.' }
        : {}),
    },
  ]
}
