import type { QuenchKind } from '#engine/materials/quenchants.ts'
import type { Steel } from '#engine/materials/steel.ts'
import type { Basis } from '#engine/provenance/estimate.ts'
import { criticalTemperatures } from './critical-temperatures.ts'
import { usualHardeningK } from './dissolved-composition.ts'
import { idealDiameterEstimate } from './jominy-estimate.ts'

/** A range of temperature that follows from the steel's own critical temperatures. */
export interface DerivedRange {
  readonly fromK: number
  readonly toK: number
  readonly basis: Basis
  readonly source: string
}

/** What to do with a steel of which no sheet is known. */
export interface DerivedTreatment {
  readonly forge: DerivedRange
  /** Absent for steel that hardens in air. */
  readonly normalise?: DerivedRange
  readonly anneal: DerivedRange
  readonly austenitise: DerivedRange
  readonly temper: DerivedRange
  readonly quench: QuenchKind
  readonly quenchBecause: string
  readonly airHardening: boolean
}

/** Ideal diameters [m] from which a bar of about an inch wants no more than oil, or air. Memory of handbook practice, no source. */
const OIL_FROM_M = 0.045
const AIR_FROM_M = 0.3
/** Alloy that hardens in air whatever the multiplying factors say, which end below it. */
const AIR_CHROMIUM_WT_PCT = 3

/** Carbon from which the steel is treated as one with free carbide; alloy moves the point, but the rules below are those of plain and low-alloy steel. */
const EUTECTOID_WT_PCT = 0.75

const celsius = (kelvin: number): number => Math.round(kelvin - 273.15)

/**
 * Heats for a steel by its critical temperatures, where no published treatment is known.
 *
 * - hardening: Ac3 + 30..60 K below the eutectoid carbon; above it, and in steel rich in carbide formers, the customary heat of
 *   `usualHardeningK` less and more 15 K
 * - normalising: Ac3 (or Acm) + 50..80 K; annealing: Ac3 + 20..50 K, or Ac1 + 15..45 K above the eutectoid carbon
 * - forging: from 870 C (815 C in rich steel) to 1290 C less 170 K per per cent of carbon (ASM practice, memory +/-30 K)
 * - quench: by ideal diameter and chromium; handbook practice for a bar of about an inch
 */
export function derivedTreatment(steel: Steel): DerivedTreatment {
  const { composition, gradeId } = steel
  const critical = criticalTemperatures(composition, gradeId === undefined ? {} : { gradeId })
  const ac1K = critical.ac1K.value
  const ac3K = Math.max(critical.ac3K.value, ac1K)
  const rich = composition.C >= EUTECTOID_WT_PCT
  const alloyed = composition.Cr >= AIR_CHROMIUM_WT_PCT || composition.W >= 3
  const model = (fromK: number, toK: number, rule: string): DerivedRange => {
    return { fromK, toK, basis: 'model', source: `${rule}; Ac1 ${celsius(ac1K)} °C, Ac3 ${celsius(ac3K)} °C by model` }
  }
  const usualK = usualHardeningK(composition)
  const diameter = idealDiameterEstimate(steel)
  const airHardening = alloyed || diameter.value >= AIR_FROM_M
  const quench = airHardening ? 'air' : diameter.value >= OIL_FROM_M ? 'oil' : 'water'
  const upperK = rich ? (critical.acmK?.value ?? ac3K) : ac3K
  const hottestK = 1290 + 273.15 - 170 * Math.min(1.2, composition.C)
  return {
    forge: {
      fromK: (rich ? 815 : 870) + 273.15,
      toK: hottestK,
      basis: 'memory',
      source: 'ASM forging practice by carbon, from memory +/-30 K',
    },
    ...(airHardening ? {} : { normalise: model(upperK + 50, upperK + 80, `${rich ? 'Acm' : 'Ac3'} + 50..80 K`) }),
    anneal: rich ? model(ac1K + 15, ac1K + 45, 'Ac1 + 15..45 K') : model(ac3K + 20, ac3K + 50, 'Ac3 + 20..50 K'),
    austenitise:
      rich || alloyed
        ? model(usualK - 15, usualK + 15, 'customary heat of steels like it, by composition')
        : model(ac3K + 30, ac3K + 60, 'Ac3 + 30..60 K'),
    temper: {
      fromK: 150 + 273.15,
      toK: Math.min(650 + 273.15, ac1K - 50),
      basis: 'memory',
      source: 'common practice, no source',
    },
    quench,
    quenchBecause: alloyed
      ? `${Math.round(10 * composition.Cr) / 10} % chromium hardens in air`
      : `ideal diameter about ${Math.round(diameter.value * 1000)} mm (ASTM A255)`,
    airHardening,
  }
}
