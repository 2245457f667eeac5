import { soakWanted } from '#engine/findings/hardening-heat.ts'
import type { SteelFacts } from '#engine/findings/steel-facts.ts'
import { steelFacts } from '#engine/findings/steel-sheet.ts'
import type { Steel } from '#engine/materials/steel.ts'
import { type GradeTreatment, treatmentById } from '#engine/materials/treatment.ts'
import type { Medium } from './media.ts'

/** How this steel wants to be treated: the sheets where they speak, its analysis where they are silent. */
export interface SteelPractice {
  readonly facts: SteelFacts
  readonly hardensInAir: boolean
  /** Hardening heat to aim at [K]. */
  readonly austeniteK: number
  /** Once the middle is at heat [s]. */
  readonly soakS: number
  /** Normalising heat [K]; absent where the steel must not or need not be normalised. */
  readonly normaliseK?: number
  /** Annealing heat [K]; absent where no sheet gives one. */
  readonly annealK?: number
  /** What it may be quenched in. */
  readonly media: readonly Medium[]
  readonly mediaSource: string
  /** Thinner pieces are through hard in oil, and crack in water [m]. */
  readonly waterFromM?: number
  readonly cycles: number
  /** Tempers to stay out of [K]. */
  readonly brittleK: readonly (readonly [number, number])[]
}

const MEDIUM_OF: { readonly [kind: string]: Medium } = {
  air: 'air',
  oil: 'oil',
  'fast oil': 'oil',
  salt: 'oil',
  water: 'water',
  brine: 'brine',
}
/** Never less than this once the middle is up [s]: common practice, no source. */
const LEAST_SOAK_S = 120
/** Over Ac3 (or Ac1 above the eutectoid carbon) to normalise steel that no sheet names [K]: common practice, no source. */
const NORMALISE_OVER_K = 60

export function steelPractice(steel: Steel): SteelPractice {
  const facts = steelFacts(steel)
  const treatment = steel.gradeId === undefined ? undefined : treatmentById(steel.gradeId)
  const use = treatment?.austenitise?.use
  const hardensInAir = facts.media.fiercest === 'air' || treatment?.airHardening === true
  const normaliseK = normalisingHeat(steel, treatment, facts.critical.ac3K, hardensInAir)
  const anneal = treatment?.anneal?.use
  // A soak by the sheet is for bar as it comes; normalised plain steel wants minutes.
  const sheetSoakS =
    normaliseK === undefined && treatment !== undefined ? Math.max(treatment.soak.fromS, treatment.soak.leastS) : 0
  return {
    facts,
    hardensInAir,
    austeniteK: use === undefined ? 0.5 * (facts.hardening.fromK + facts.hardening.toK) : 0.5 * (use.fromK + use.toK),
    soakS: Math.max(soakWanted(facts, normaliseK !== undefined).goodS, sheetSoakS, LEAST_SOAK_S),
    ...(normaliseK === undefined ? {} : { normaliseK }),
    ...(anneal === undefined ? {} : { annealK: 0.5 * (anneal.fromK + anneal.toK) }),
    media: mediaOf(treatment) ?? [facts.media.fiercest],
    mediaSource: facts.media.source,
    ...(facts.media.waterFromM === undefined ? {} : { waterFromM: facts.media.waterFromM }),
    cycles: Math.max(1, facts.cycles.least),
    brittleK: facts.embrittling.map(({ fromK, toK }) => [fromK, toK] as const),
  }
}

/** Air-hardening steel never; else the sheets, unless a better one forbids it than allows it. */
function normalisingHeat(
  steel: Steel,
  treatment: GradeTreatment | undefined,
  ac3K: number,
  hardensInAir: boolean,
): number | undefined {
  if (hardensInAir || treatment?.normaliseForbidden !== undefined) return undefined
  if (treatment === undefined) return steel.composition.C >= 0.25 ? ac3K + NORMALISE_OVER_K : undefined
  const use = treatment.normalise?.use
  return use === undefined ? undefined : 0.5 * (use.fromK + use.toK)
}

function mediaOf(treatment: GradeTreatment | undefined): Medium[] | undefined {
  if (treatment === undefined || treatment.quenchants.length === 0) return undefined
  const never = new Set(treatment.neverQuenchIn.map(({ kind }) => kind))
  const media = treatment.quenchants.filter(({ kind }) => !never.has(kind)).flatMap(({ kind }) => MEDIUM_OF[kind] ?? [])
  return [...new Set(media)]
}
