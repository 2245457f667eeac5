import type { Correlation } from '#engine/provenance/correlation.ts'
import { additiveTempering } from './additive-tempering.ts'
import { andrewsAc1, andrewsAc3, barbierMs, kasatkinAc1, kasatkinAc3, vanBohemenBs } from './critical-correlations.ts'
import { a255IdealDiameter } from './ideal-diameter.ts'
import { justJominy } from './just-jominy.ts'
import { a255HalfMartensite, a255InitialHardness } from './martensite-hardness.ts'
import { hollomonJaffe } from './tempering-parameter.ts'

/** Every published relation of this folder, for the tests that hold each to its checks. */
export const allCorrelations = [
  andrewsAc1,
  kasatkinAc1,
  andrewsAc3,
  kasatkinAc3,
  barbierMs,
  vanBohemenBs,
  a255IdealDiameter,
  justJominy,
  a255InitialHardness,
  a255HalfMartensite,
  additiveTempering,
  hollomonJaffe,
] as unknown as readonly Correlation<Record<string, number>>[]
