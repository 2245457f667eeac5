import { asQuenchedRounds, criticalDiameters, hardnessAcross, roundsOnTheBar } from './as-quenched-rounds.ts'
import type { Comparison } from './comparison.ts'
import {
  ac1,
  ac3,
  bsMeasured,
  msMeasured,
  msMeasuredOfTools,
  msOfLowAlloyGrades,
  msOfToolGrades,
} from './critical-temperatures.ts'
import { idealDiameter, jominyBands, jominyEdges, martensiteHardness } from './hardenability.ts'
import { grainByHeat, hardeningHeat } from './hardening-heat.ts'
import { hardnessConversion } from './hardness-conversion.ts'
import { probeCooling } from './probe-cooling.ts'
import { temperedHeats, temperTimeSeries } from './tempered-heats.ts'
import { roundsFromComposition, roundsFromOthers } from './tempered-rounds.ts'
import { curvesFromComposition, curvesFromOthers } from './tempering-tables.ts'

/** Every comparison, in the order of the page. */
export const COMPARISONS: readonly Comparison[] = [
  asQuenchedRounds,
  hardnessAcross,
  hardeningHeat,
  grainByHeat,
  criticalDiameters,
  jominyBands,
  jominyEdges,
  curvesFromOthers,
  curvesFromComposition,
  roundsFromOthers,
  roundsFromComposition,
  msOfLowAlloyGrades,
  msOfToolGrades,
  ac1,
  ac3,
  probeCooling,
  roundsOnTheBar,
  hardnessConversion,
  martensiteHardness,
  idealDiameter,
  msMeasured,
  msMeasuredOfTools,
  bsMeasured,
  temperTimeSeries,
  temperedHeats,
]
