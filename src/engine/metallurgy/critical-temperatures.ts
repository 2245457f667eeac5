import { exp } from '#engine/arithmetic/elementary.ts'
import type { Composition } from '#engine/materials/steel.ts'
import type { Estimate } from '#engine/provenance/estimate.ts'
import { acmTemperatureK, eutectoidCarbon } from './boundary-lines.ts'
import { andrewsAc1, andrewsAc3, barbierMs, kasatkinAc1, kasatkinAc3, vanBohemenBs } from './critical-correlations.ts'
import { ac1ByFormulaK, ac3ByFormulaK, dissolvedComposition, usualHardeningK } from './dissolved-composition.ts'
import { publishedCriticals } from './published-criticals.ts'

/** The temperatures at which a steel changes on heating and cooling [K]; acmK only above the eutectoid carbon. */
export interface CriticalTemperatures {
  readonly ac1K: Estimate
  readonly ac3K: Estimate
  readonly acmK?: Estimate
  readonly bsK: Estimate
  readonly msK: Estimate
  readonly mfK: Estimate
}

export interface CriticalOptions {
  /** Grade of the catalogue: published figures of that grade go before the formulas. */
  readonly gradeId?: string
  /** What is dissolved in the austenite, when it is known; else that of the usual hardening heat is taken. */
  readonly austenite?: Composition
}

/** Least width of the range in which austenite forms [K]. */
const LEAST_RANGE_K = 8
/** 99 % martensite after Steven & Haynes; steel over 0.7 % C then still holds austenite, see `retainedAusteniteFraction`. */
const MF_BELOW_MS_K = 215

/**
 * Half bands that hold nine in ten published or measured values [K]. Each is the ninth tenth of the errors of its kind of steel; with each
 * row left out in turn the rest give a band that holds it in 88 to 90 of 100 (Ms: 107 plain, 452 low-alloy, 60 silicon, 100 high-carbon and
 * 65 rich steels; Ac1: 26). Ac3 and rich steel have too few rows to be told by; there the band is the widest error and a little.
 */
const BAND = {
  ac1: 25,
  ac1Alloyed: 35,
  ac3: 20,
  ac3Alloyed: 45,
  acm: 35,
  ms: 38,
  msSilicon: 24,
  msHighCarbon: 62,
  msAlloyed: 75,
  bs: 65,
  mf: 60,
  published: 20,
} as const

/** Total of the elements that take a steel out of the range of the low-alloy formulas. */
function isHighAlloy(c: Composition): boolean {
  return c.Cr > 2.5 || c.W > 1.5 || c.Mo > 1.2 || c.V > 0.5 || c.Ni > 4
}

/** Richer in carbon than this the heat leaves carbide, and Ms hangs on how much [wt%]. */
const HIGH_CARBON_WT_PCT = 0.7

function msBandK(c: Composition): number {
  if (isHighAlloy(c)) return BAND.msAlloyed
  if (c.C > HIGH_CARBON_WT_PCT) return BAND.msHighCarbon
  return c.Si > 1.2 ? BAND.msSilicon : BAND.ms
}

/** `figure` moved up so that its value is no less than `leastK`. */
function atLeast(figure: Estimate, leastK: number): Estimate {
  const up = Math.max(0, leastK - figure.value)
  return up === 0 ? figure : { ...figure, value: figure.value + up, low: figure.low + up, high: figure.high + up }
}

function estimate(value: number, half: number, source: string): Estimate {
  return { value, low: value - half, high: value + half, basis: 'model', source }
}

/** What Barbier's form weighs silicon by, and what Kung & Rayment add to the linear forms for it [K per wt%]. */
const SILICON = { barbier: 13.7, kungRayment: 7.5 } as const

/**
 * Martensite start of an austenite of this composition [K]: Barbier's form with chromium weighed up to 2 % as by Steven & Haynes
 * (-17 K per wt%) and silicon as by Kung & Rayment (-7.5), which measured low-alloy and spring steels ask for. Fast enough for an ensemble.
 */
export function martensiteStartK(austenite: Composition): number {
  return (
    barbierMs.evaluate(austenite) + 4 - 8 * Math.min(2, austenite.Cr) + (SILICON.barbier - SILICON.kungRayment) * austenite.Si
  )
}

/**
 * Critical temperatures of a steel for slow heating (about 0.01 K/s) and for what its usual hardening heat dissolves.
 *
 * - Ac1: mean of Andrews and Kasatkin; above 5 % chromium adds no more, since carbides hold it
 * - Ac3: mean of Andrews (short form) and Kasatkin below the eutectoid; above it the end of the Ac1 range, with Acm apart
 * - Bs: van Bohemen; Ms: `martensiteStartK` of the dissolved composition; Mf: 215 K under Ms
 * - published figures of the grade named in `options` go first
 *
 * Bands hold nine in ten published values; they widen for tool steels, where the formulas extrapolate.
 */
export function criticalTemperatures(composition: Composition, options: CriticalOptions = {}): CriticalTemperatures {
  const c = composition
  const alloyed = isHighAlloy(c)
  const eutectoid = eutectoidCarbon(c)
  const ac1 = ac1ByFormulaK(c)
  const ac3 = ac3ByFormulaK(c)
  const model = {
    ac1K: estimate(ac1, alloyed ? BAND.ac1Alloyed : BAND.ac1, `${andrewsAc1.source}; ${kasatkinAc1.source} (mean)`),
    ac3K: estimate(
      ac3,
      alloyed || c.C > HIGH_CARBON_WT_PCT ? BAND.ac3Alloyed : BAND.ac3,
      `${andrewsAc3.source}; ${kasatkinAc3.source} (mean)`,
    ),
  }
  const austenite = options.austenite ?? dissolvedComposition(c, usualHardeningK(c))
  const ms = martensiteStartK(austenite)
  const published = options.gradeId === undefined ? {} : publishedCriticals(options.gradeId)
  const ac1K = published.ac1K ?? model.ac1K
  const ac3K = published.ac3K ?? atLeast(model.ac3K, ac1K.value + LEAST_RANGE_K)
  return {
    ac1K,
    ac3K,
    ...(c.C > eutectoid
      ? {
          acmK: estimate(
            Math.max(ac3K.value, acmTemperatureK(c)),
            BAND.acm,
            'Fe-C boundary (ASM Alloy Phase Diagrams, memory), shifted by alloy after Bain & Paxton 1961',
          ),
        }
      : {}),
    bsK: estimate(Math.min(ac1K.value - 20, vanBohemenBs.evaluate(austenite)), BAND.bs, vanBohemenBs.source),
    msK: estimate(
      ms,
      msBandK(c),
      `${barbierMs.source}; chromium up to 2 % after W. Steven & A.G. Haynes 1956, silicon after C.Y. Kung & J.J. Rayment 1982`,
    ),
    mfK: estimate(ms - MF_BELOW_MS_K, BAND.mf, 'W. Steven & A.G. Haynes, J. Iron Steel Inst. 183 (1956) 349: 215 K under Ms'),
  }
}

/**
 * Rate of the martensite fraction with undercooling [1/K]: Koistinen & Marburger's 0.011 above 0.7 C, van Bohemen's composition
 * form below 0.5 C (a constant 0.011 overstates retained austenite in poorer steel), passing from one to the other between.
 */
export function martensiteRate(austenite: Composition): number {
  const c = austenite
  const formed =
    (27.2 - (0.14 * c.Mn + 0.21 * c.Si + 0.11 * c.Cr + 0.08 * c.Ni + 0.05 * c.Mo) - 19.8 * (1 - exp(-1.56 * c.C))) / 1000
  const share = Math.min(1, Math.max(0, (c.C - 0.5) / 0.2))
  return formed + share * (Math.min(formed, 0.011) - formed)
}
