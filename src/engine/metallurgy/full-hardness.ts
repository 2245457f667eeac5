import { gradeById } from '#engine/materials/catalogue.ts'
import { steelOf } from '#engine/materials/grade-heats.ts'
import type { Composition, Steel } from '#engine/materials/steel.ts'
import { treatmentOf } from '#engine/materials/treatment.ts'
import type { Basis } from '#engine/provenance/estimate.ts'
import { dissolvedComposition, usualHardeningK } from './dissolved-composition.ts'
import { hardenedHv } from './hardened-hardness.ts'
import { hrcFromHv, hvFromHrc } from './hardness-scales.ts'

/** Hardness with all the martensite that an austenite can give. */
export interface FullHardness {
  readonly hv: number
  readonly basis: Basis
  readonly source: string
}

/** Steel richer than this, or with more alloy, is beyond ASTM A255, and published figures of the grade go first. */
const A255_CARBON_WT_PCT = 0.7
/** A published figure that is further off belongs to another condition [HRC]. */
const MOST_OFFSET_HRC = 4

const MODEL_SOURCE =
  'hardness of martensite by carbon in solution (ASTM A255; Burns, Moore & Archer 1938; Jatczak 1973), retained austenite and carbides'

interface Offset {
  readonly hrc: number
  readonly basis: Basis
  readonly source: string
}

const offsets = new Map<string, Offset | undefined>()

/**
 * Full hardness of `steel` from an austenite of this composition. Where sheets print the grade's as-quenched hardness, the model is moved
 * to agree with them at the grade's usual hardening heat and only carries the difference to other heats and other bars.
 */
export function fullHardness(steel: Steel, austenite: Composition): FullHardness {
  const modelHv = hardenedHv(austenite, { bulk: steel.composition })
  const offset = offsetOf(steel)
  if (offset === undefined) return { hv: modelHv, basis: 'model', source: MODEL_SOURCE }
  return { hv: hvFromHrc(Math.min(68, hrcFromHv(modelHv) + offset.hrc)), basis: offset.basis, source: offset.source }
}

function offsetOf({ gradeId }: Steel): Offset | undefined {
  if (gradeId === undefined) return undefined
  if (!offsets.has(gradeId)) offsets.set(gradeId, publishedOffset(gradeId))
  return offsets.get(gradeId)
}

/** Mean published as-quenched hardness of the grade less the model at the same heat; a constant of the catalogue, so it is kept. */
function publishedOffset(gradeId: string): Offset | undefined {
  const grade = gradeById(gradeId)
  if (grade === undefined) return undefined
  const { composition } = steelOf(grade)
  if (composition.C <= A255_CARBON_WT_PCT && !isHighAlloy(composition)) return undefined
  const { asQuenched } = treatmentOf(grade)
  const first = asQuenched.filter(({ hardness }) => hardness.basis !== 'memory')
  const use = first.length > 0 ? first : asQuenched
  if (use.length === 0) return undefined
  let sum = 0
  for (const { hardness, austenitiseK } of use) {
    const atK = austenitiseK ?? usualHardeningK(composition)
    sum += hardness.value - hrcFromHv(hardenedHv(dissolvedComposition(composition, atK), { bulk: composition }))
  }
  const hrc = Math.max(-MOST_OFFSET_HRC, Math.min(MOST_OFFSET_HRC, sum / use.length))
  return { hrc, basis: use[0]!.hardness.basis, source: use[0]!.hardness.source }
}

/** Alloy beyond what ASTM A255 speaks of by so much that its factors are a mere extrapolation. */
export function isHighAlloy({ Cr, Mo, W, V, Si, Ni }: Composition): boolean {
  return Cr > 2.2 || Mo > 0.7 || W > 0.8 || V > 0.35 || Si > 2.3 || Ni > 4
}
