import type { SpotOutlook, ZoneOutlook } from '#engine/ensemble/outlook.ts'
import type { QuenchRecord } from '#engine/simulation/records.ts'
import type { BathKind } from '#engine/surface-heat/gear.ts'
import { type Account, hardenings, hardZones, isOil, isWater, lastHardening, skinOf } from './account.ts'
import type { EngineFinding } from './finding.ts'
import { tankFindings } from './tank-findings.ts'
import { thinnestUnderM } from './thickness.ts'
import type { Wording } from './wording.ts'
import { place, sentence, theBath } from './words.ts'

/** What the bath did, and whether it was the right one. */
export function bathFindings(account: Account, say: Wording): EngineFinding[] {
  return [...bathTooSlow(account, say), ...bathTooFast(account, say), ...tankFindings(account, say), ...lineTooLow(account, say)]
}

/** More than this lost at the skin for want of cooling is no longer the steel's best [HRC]: common practice, no source. */
const LOST_HRC = 5

/** Places of a zone that were hot enough, went under, and yet cooled too slowly to harden fully. */
export function cooledTooSlowly(account: Account, zone: Pick<ZoneOutlook, 'spots'>, quench: QuenchRecord): SpotOutlook[] {
  const liquid = isOil(quench.bath) || isWater(quench.bath)
  return zone.spots.filter(
    ({ spot, austeniteFraction, cooling800To500S }) =>
      austeniteFraction >= 0.85 &&
      cooling800To500S > account.steel.fullCoolingS &&
      (!liquid || spot.xM <= quench.lengthUnderM - lineReachM(quench)),
  )
}

/** How far under the line of a part dip the heat from above it is felt [m]: common practice, no source. */
function lineReachM({ depthM, acrossM }: QuenchRecord): number {
  return depthM === null ? -0.001 : Math.max(0.003, 0.3 * acrossM)
}

function bathTooSlow(account: Account, say: Wording): EngineFinding[] {
  const last = lastHardening(account)
  if (last === undefined) return []
  const { quench } = last
  const { steel } = account
  return hardZones(account).flatMap((each): EngineFinding[] => {
    const lowHrc = each.zone.aim.lowHrc ?? 0
    if (steel.fullHrc.value < lowHrc) return []
    const slow = cooledTooSlowly(account, each, quench)
    const worst = [...slow].sort((a, b) => a.quenchedHrc.value - b.quenchedHrc.value)[0]
    if (worst === undefined) return []
    const skin = new Set(skinOf(each))
    const lost = slow.some((spot) => skin.has(spot) && steel.fullHrc.value - spot.quenchedHrc.value > LOST_HRC) && lowHrc >= 45
    const misses = worst.quenchedHrc.value < lowHrc
    if (!misses && !lost) return []
    if (skinOf(each).every(({ quenchedHrc }) => quenchedHrc.value >= lowHrc) && isWater(quench.bath))
      return [skinOnly(account, each, worst, quench, say)]
    // Nothing is quicker than brine, and mild steel hardens in nothing: `steel-will-not-harden` says so.
    if (quench.bath.kind === 'brine' || steel.composition.C < 0.28) return []
    return [
      {
        id: 'bath-too-slow',
        severity: misses && each.chanceQuenched < 0.1 ? 'stop' : 'warn',
        where: { step: quench.step, zone: each.zone.name, xM: worst.spot.xM },
        says: `${theBath(quench.bath)} is too slow for ${steel.name} of this thickness: the ${each.zone.name} comes out at ${say.hardness(worst.quenchedHrc.value)}.`,
        because: `${sentence(place(worst.spot.xM, account.lengthM, say))} it takes ${coolingInWords(worst, say)} from ${say.temperature(1073.15)} to ${say.temperature(773.15)}; full hardness, ${say.hardness(steel.fullHrc.value)}, wants ${say.time(steel.fullCoolingS)} or less.`,
        remedy: fasterThan(quench.bath.kind, account),
        figures: { coolingS: worst.cooling800To500S, hardensInS: steel.fullCoolingS },
      },
    ]
  })
}

/** Water-hardening steel over some thickness: a hard skin on a softer middle, which may be just what is wanted. */
function skinOnly(
  { steel, lengthM }: Account,
  each: ZoneOutlook,
  { spot, quenchedHrc, cooling800To500S }: SpotOutlook,
  { bath, step }: QuenchRecord,
  say: Wording,
): EngineFinding {
  const skinM = Math.max(...each.spots.filter((other) => other.spot.xM === spot.xM).map((other) => other.spot.rM))
  return {
    id: 'bath-too-slow',
    severity: 'note',
    where: { step, zone: each.zone.name, xM: spot.xM },
    says: `Only the skin of the ${each.zone.name} hardens: ${say.length(skinM - spot.rM)} down it comes out at ${say.hardness(quenchedHrc.value)}.`,
    because: `There it takes ${say.time(cooling800To500S)} from ${say.temperature(1073.15)} to ${say.temperature(773.15)}, ${place(spot.xM, lengthM, say)}; ${steel.name} hardens fully in ${say.time(steel.fullCoolingS)} or less.`,
    remedy: `A hard skin on a tough middle suits many tools.${bath.kind === 'water' ? ' Deeper: brine and strong motion, or' : ' Deeper:'} a steel that hardens deeper.`,
    figures: { cause: 'skin-only', coolingS: cooling800To500S, hardensInS: steel.fullCoolingS },
  }
}

function coolingInWords(spot: SpotOutlook, say: Wording): string {
  return Number.isFinite(spot.cooling800To500S) ? say.time(spot.cooling800To500S) : 'minutes'
}

function fasterThan(kind: BathKind, { steel }: Account): string {
  const { fiercest } = steel.media
  if (kind === 'still air' || kind === 'moving air') {
    if (fiercest === 'air') return 'Blow air on it, or make it thinner there; a richer steel for a section like this.'
    return fiercest === 'oil' ? 'Quench it in warm oil.' : 'Quench it in water or brine, or in fast oil where it is thin.'
  }
  if (kind === 'water') return 'Brine (8 % salt) and strong motion, or a flood on the face; else a steel that hardens deeper.'
  if (fiercest === 'water')
    return 'Water or brine if the shape is plain and every corner has a radius; else a steel that hardens in oil, such as 4140.'
  return kind === 'fast oil'
    ? 'Strong motion; else a steel that hardens deeper.'
    : 'Fast oil and strong motion; else a steel that hardens deeper.'
}

/** High-carbon steel thinner than this is through hard in oil, and cracks in water [m]: general practice after ASM ("very fast oil under about 5 mm"). */
const THIN_M = 0.005

function bathTooFast(account: Account, say: Wording): EngineFinding[] {
  const { steel } = account
  const { fiercest, says, waterFromM, source } = steel.media
  // Steel with too little carbon to crack may have any bath.
  if (steel.composition.C < 0.3) return []
  return hardenings(account).flatMap(({ quench }): EngineFinding[] => {
    const where = { step: quench.step }
    const severe = steel.composition.C >= 0.5 || fiercest === 'air'
    const caution =
      'Steel cracked in the quench can let go later: eye protection on, and nobody in line with it until it is tempered.'
    if (isWater(quench.bath) && fiercest !== 'water')
      return [
        {
          id: 'bath-too-fast',
          severity: severe ? 'stop' : 'warn',
          where,
          says: `${sentence(quench.bath.kind)} cracks ${steel.name}.`,
          because: `The sheets give ${says} for it (${source}); with ${percent(steel.composition.C)} carbon it hardens right through, and water tears the skin.`,
          remedy: fiercest === 'air' ? 'Let it stand in still air, or blow air on it.' : 'Quench it in warm oil.',
          caution,
          figures: { cause: 'wrong-medium' },
        },
      ]
    const thin = thinnestUnderM(account, quench.lengthUnderM)
    const limitM = Math.max(waterFromM ?? 0, steel.composition.C >= 0.6 ? THIN_M : 0)
    if (isWater(quench.bath) && thin !== undefined && thin.acrossM < limitM)
      return [
        {
          id: 'bath-too-fast',
          severity: thin.acrossM < (waterFromM ?? 0) ? 'warn' : 'note',
          where: { ...where, xM: thin.xM },
          says: `${sentence(quench.bath.kind)} is fiercer than the thin part needs: it may crack there.`,
          because: `It is ${say.length(thin.acrossM)} thin and holds ${percent(steel.composition.C)} carbon; under about ${say.length(limitM)} oil hardens it (${source}).`,
          remedy: 'Fast oil for the whole of it, or leave the edge thicker and grind it after the temper.',
          caution,
          figures: { cause: 'thin-part', leastAcrossM: limitM },
        },
      ]
    if (quench.bath.kind === 'fast oil' && fiercest === 'air')
      return [
        {
          id: 'bath-too-fast',
          severity: 'note',
          where,
          says: `${steel.name} hardens in air; fast oil only adds warp.`,
          because: `The sheets give air (${source}).`,
          remedy: 'Still air; oil down to black heat and then air, if scale is the worry.',
          figures: { cause: 'wrong-medium' },
        },
      ]
    return []
  })
}

/** A hard zone that reaches above the line of a part dip, and stays soft there. */
function lineTooLow(account: Account, say: Wording): EngineFinding[] {
  const last = lastHardening(account)
  const depthM = last?.quench.depthM ?? null
  if (last === undefined || depthM === null) return []
  return hardZones(account).flatMap(({ zone, spots }): EngineFinding[] => {
    const soft = spots.find(
      ({ spot, austeniteFraction, quenchedHrc }) =>
        spot.xM > depthM - lineReachM(last.quench) &&
        zone.toM > depthM &&
        austeniteFraction >= 0.85 &&
        quenchedHrc.value < (zone.aim.lowHrc ?? 0),
    )
    if (soft === undefined) return []
    return [
      {
        id: 'bath-too-shallow',
        severity: 'warn',
        where: { step: last.quench.step, zone: zone.name, xM: soft.spot.xM },
        says: `It is not dipped deep enough: the ${zone.name} reaches to ${say.length(zone.toM)}.`,
        because: `Only ${say.length(depthM)} goes under; at ${say.length(soft.spot.xM)} it comes out at ${say.hardness(soft.quenchedHrc.value)}.`,
        remedy: `Dip it to ${say.length(zone.toM + 0.008)}, moving up and down so that no line stands.`,
        figures: { cause: 'short-dip', dipsM: [zone.toM + 0.008] },
      },
    ]
  })
}

function percent(share: number): string {
  return `${share.toFixed(2)} %`
}
