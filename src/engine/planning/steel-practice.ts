import { steelFacts } from '#engine/findings/steel-sheet.ts'
import type { Steel } from '#engine/materials/steel.ts'
import { type GradeTreatment, treatmentById } from '#engine/materials/treatment.ts'
import type { Medium } from './candidates.ts'

/** How this steel wants to be treated: the sheets where they speak, its analysis where they are silent. */
export interface SteelPractice {
  /** Hardening heat to aim at [K]. */
  readonly austeniteK: number
  /** Once the middle is at heat [s]. */
  readonly soakS: number
  /** Normalising heat [K]; absent where the steel must not or need not be normalised. */
  readonly normaliseK?: number
  /** What it may be quenched in. */
  readonly media: readonly Medium[]
  readonly mediaSource: string
  readonly cycles: number
  /** Tempers to stay out of [K]. */
  readonly embrittlingK?: readonly [number, number]
}

const MEDIUM_OF: { readonly [kind: string]: Medium } = {
  air: 'air',
  oil: 'oil',
  'fast oil': 'oil',
  salt: 'oil',
  water: 'water',
  brine: 'brine',
}
/** Where no sheet gives a soak: plain and low-alloy steel that has been normalised (common practice, no source). */
const USUAL_SOAK_S = 300
/** Over Ac3 (or Ac1 above the eutectoid carbon) to normalise steel that no sheet names [K]: common practice, no source. */
const NORMALISE_OVER_K = 60

export function steelPractice(steel: Steel): SteelPractice {
  const facts = steelFacts(steel)
  const treatment = steel.gradeId === undefined ? undefined : treatmentById(steel.gradeId)
  const use = treatment?.austenitise?.use
  const normaliseK = normalisingHeat(steel, treatment, facts.critical.ac3K, facts.media.fiercest === 'air')
  const [first] = facts.embrittling
  return {
    austeniteK: use === undefined ? 0.5 * (facts.hardening.fromK + facts.hardening.toK) : 0.5 * (use.fromK + use.toK),
    soakS: treatment === undefined ? USUAL_SOAK_S : Math.max(treatment.soak.fromS, treatment.soak.leastS, 120),
    ...(normaliseK === undefined ? {} : { normaliseK }),
    media: mediaOf(treatment) ?? [facts.media.fiercest],
    mediaSource: facts.media.source,
    cycles: Math.max(1, facts.cycles.least),
    ...(first === undefined ? {} : { embrittlingK: [first.fromK, first.toK] as const }),
  }
}

/** Air-hardening steel never; else the sheets, unless a better one forbids it than allows it. */
function normalisingHeat(
  steel: Steel,
  treatment: GradeTreatment | undefined,
  ac3K: number,
  hardensInAir: boolean,
): number | undefined {
  if (hardensInAir || treatment?.airHardening === true || treatment?.normaliseForbidden !== undefined) return undefined
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
