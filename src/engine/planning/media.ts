import { BATH_LIMITS } from '#engine/findings/bath-limits.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { ProcessStep } from '#engine/simulation/process.ts'
import { scrapBarToWarm } from '#engine/surface-heat/bath.ts'
import type { Agitation, Bath, BathKind } from '#engine/surface-heat/gear.ts'
import type { Rounding } from './rounding.ts'
import type { SteelPractice } from './steel-practice.ts'

/** Kind of medium in the words of treatment sheets. */
export type Medium = 'air' | 'oil' | 'water' | 'brine'

/** Something that was left out on purpose, with the reason. */
export interface Refusal {
  readonly says: string
  readonly because: string
}

/** A bath and how the piece is moved in it. */
export interface QuenchMeans {
  readonly bath: Bath
  readonly medium: Medium
  readonly agitation: Agitation
  /** Gentler first. */
  readonly fierceness: number
  /** Oil that stands too cool is warmed first. */
  readonly warming?: ProcessStep
  readonly says: string
}

const MEDIUM_OF: { readonly [Kind in BathKind]: Medium } = {
  'still air': 'air',
  'moving air': 'air',
  'fast oil': 'oil',
  'medium oil': 'oil',
  'slow oil': 'oil',
  'vegetable oil': 'oil',
  water: 'water',
  brine: 'brine',
}
const FIERCENESS: { readonly [Each in Medium]: number } = { air: 0, oil: 1, water: 2, brine: 3 }
/** High carbon, thinner than this, cracks in water and hardens in oil [m]: what `bath-too-fast` warns of. */
const THIN_M = 0.005

/** What this shop has to quench this steel in, gentlest first, and the baths left alone with their reason. */
export function quenchMeans(
  job: Job,
  practice: SteelPractice,
  piece: { readonly thickestM: number },
  rounding: Rounding,
): { readonly means: readonly QuenchMeans[]; readonly refused: readonly Refusal[] } {
  const refused: Refusal[] = []
  const air: Bath = { name: 'still air', kind: 'still air', temperatureK: 293.15 }
  const listed = [...(practice.media.includes('air') ? [air] : []), ...job.shop.baths]
  const means = listed.flatMap((bath): QuenchMeans[] => {
    const medium = MEDIUM_OF[bath.kind]
    const why = refusal(medium, practice, piece.thickestM)
    if (why !== undefined) {
      if (medium !== 'air') refused.push({ says: bath.name, because: why })
      return []
    }
    const warming = warmingOf(bath, medium, rounding)
    const common = { bath, medium, fierceness: FIERCENESS[medium], ...(warming === undefined ? {} : { warming }) }
    if (medium === 'air') return [{ ...common, agitation: 'still', says: bath.name }]
    const brisk: QuenchMeans = { ...common, agitation: 'strong', says: `${bath.name}, moved hard` }
    // Water must be moved hard, or its blanket of steam stays; oil need not, where it does without.
    return medium === 'oil'
      ? [
          { ...common, agitation: 'moderate', says: bath.name },
          { ...brisk, fierceness: 1.2 },
        ]
      : [brisk]
  })
  return { means: means.sort((a, b) => a.fierceness - b.fierceness), refused }
}

function refusal(medium: Medium, practice: SteelPractice, thickestM: number): string | undefined {
  const { media, mediaSource, facts } = practice
  const wet = medium === 'water' || medium === 'brine'
  const waterToo = media.includes('water') || media.includes('brine')
  if (wet && waterToo) {
    const limitM = Math.max(practice.waterFromM ?? 0, facts.composition.C >= 0.6 ? THIN_M : 0)
    return thickestM < limitM ? `${facts.name} this thin hardens in oil, and water cracks it (${mediaSource})` : undefined
  }
  if (media.includes(medium) || (medium === 'oil' && waterToo)) return undefined
  const harm =
    medium === 'air'
      ? 'air is too slow for it'
      : facts.composition.C < 0.3
        ? `${medium} is fiercer than it needs`
        : `${medium} is fiercer than it needs and may crack it`
  return `${mediaSource} gives ${media.join(' or ')} for ${facts.name}; ${harm}`
}

/** Oil this much under its best is warmed first [K], with a scrap bar at a bright red, 40 or 60 mm across (common practice, no source). */
const COOL_BY_K = 8
const BAR_AT_K = 1073.15
const BAR_ACROSS_M = [0.04, 0.06]
const LONGEST_BAR_M = 0.4
const STEEL_KG_PER_M3 = 7850

function warmingOf(bath: Bath, medium: Medium, rounding: Rounding): ProcessStep | undefined {
  const limits = BATH_LIMITS[bath.kind]
  if (medium !== 'oil' || limits === undefined || bath.temperatureK >= limits.bestK[0] - COOL_BY_K) return undefined
  const massKg = scrapBarToWarm(bath, 0.5 * (limits.bestK[0] + Math.min(limits.bestK[1], limits.bestK[0] + 20)), BAR_AT_K)
  for (const across of BAR_ACROSS_M) {
    const acrossM = rounding.lengthM(across)
    const lengthM = rounding.lengthM((4 * massKg) / (STEEL_KG_PER_M3 * Math.PI * acrossM * acrossM))
    if (lengthM <= LONGEST_BAR_M)
      return {
        do: 'warm-bath',
        in: bath.name,
        with: { acrossM, lengthM: Math.max(lengthM, rounding.lengthStepM * 4), atK: rounding.temperatureK(BAR_AT_K) },
      }
  }
  return undefined
}
