import { asQuenchedRounds, criticalDiameters, hardnessAcross, roundsOnTheBar } from './as-quenched-rounds.ts'
import type { Comparison } from './comparison.ts'
import { ac1, ac3, bsMeasured, msMeasured, msOfGrades } from './critical-temperatures.ts'
import { idealDiameter, jominyBands, jominyEdges, martensiteHardness } from './hardenability.ts'
import { hardeningHeat } from './hardening-heat.ts'
import { hardnessConversion } from './hardness-conversion.ts'
import {
  curvesFromComposition,
  curvesFromOthers,
  roundsFromComposition,
  roundsFromOthers,
  temperedHeats,
  temperTimeSeries,
} from './tempering.ts'

/** Every comparison, in the order of the page. */
export const COMPARISONS: readonly Comparison[] = [
  ac1,
  ac3,
  msOfGrades,
  hardnessConversion,
  martensiteHardness,
  hardeningHeat,
  idealDiameter,
  jominyBands,
  jominyEdges,
  asQuenchedRounds,
  criticalDiameters,
  hardnessAcross,
  roundsOnTheBar,
  curvesFromOthers,
  curvesFromComposition,
  roundsFromOthers,
  roundsFromComposition,
  msMeasured,
  bsMeasured,
  temperTimeSeries,
  temperedHeats,
]
