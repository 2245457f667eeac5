import { exp, ln, pow } from '#engine/arithmetic/elementary.ts'
import type { Composition, Steel } from '#engine/materials/steel.ts'
import { END_QUENCH_DWELL } from './end-quench-dwell.ts'
import { formationHardnessHv } from './formation-hardness.ts'
import { type PublishedNoses, publishedNoses, startLimits, startRates } from './start-curves.ts'
import { CLASS_MIDDLES_K, CLASSES } from './temperature-classes.ts'

/** What one cooling comes to, in terms of the end-quench bar, and of what its soft part is made. */
export interface Transformed {
  /** Time from 800 to 500 degC of the place on the end-quench bar where as much has turned [s]. */
  readonly coolingS: number
  /** Hardness of what is not martensite, against that of the same place of the bar: it formed hotter (under 1) or colder (over 1). */
  readonly productFactor: number
  /** Shares of what is not martensite, together 1; all 0 where nothing had time to form. */
  readonly ferrite: number
  readonly pearlite: number
  readonly bainite: number
}

/** How austenite of one composition turns, held to the end-quench bar. */
export interface Transformation {
  /** `dwellS` as `DwellClock` counts it: class after class, `stride` places in each; `place` is asked about. */
  after(dwellS: Float64Array, stride: number, place: number): Transformed
  readonly source: string
}

/**
 * Ferrite and pearlite together: how much a second at each temperature of a quench counts toward the loss of martensite, 1 at the nose. Place and
 * width were fitted on the rounds of Bethlehem Steel, oil and water, all steels alike (2.9 HRC mean error against 3.05 by the plain time from 800 to 500
 * degC). Tried: the same held to the undercooling under Ae1 and Ae3, as start curves have it: 3.3 HRC; the nose at 600..640 degC: 2.95. So it counts
 * time above Ae1 too, where nothing forms: there it tells how fast the place is falling. A walk through the air must not be counted up there.
 */
const NOSE_K = 973
const NOSE_WIDTH_K = 140
/** Bainite beside pearlite by the noses of the source, drawn toward 1: as they stand they make 4340 all bainite and forbid it to 1095. */
const BAINITE_SHARE = 0.3
const BAINITE_POWER = 0.7
const PUBLISHED_BAINITE_WIDTH_K = 70
const SOFTEST_FACTOR = 0.6
const HARDEST_FACTOR = 2

const NOSE = CLASS_MIDDLES_K.map((kelvin) => exp(-(((kelvin - NOSE_K) / NOSE_WIDTH_K) * ((kelvin - NOSE_K) / NOSE_WIDTH_K))))
const HARDNESS = CLASS_MIDDLES_K.map(formationHardnessHv)
const KNOTS = END_QUENCH_DWELL.length
const LN_TIMES = END_QUENCH_DWELL.map(({ timeS }) => ln(timeS))

/** Progress by product in one second of each class. */
interface Rates {
  readonly ferrite: Float64Array
  readonly pearlite: Float64Array
  readonly bainite: Float64Array
}

/**
 * Additive kinetics of the austenite (Scheil, Arch. Eisenhuettenwes. 8 (1935) 565): every second at a temperature counts by the rate there, in
 * whatever order, and places where the sums are equal have turned equally far. How far that is, is told by the end-quench bar: the sum of each of its
 * places is known, and so is its hardness by the standard's hardenability. A cooling like the bar's therefore gives the standard's answer exactly, for
 * every composition; an interrupted, held or uneven one is carried over by the rates.
 */
export function transformation(steel: Pick<Steel, 'gradeId' | 'grainSize'>, austenite: Composition): Transformation {
  const noses = publishedNoses(steel.gradeId)
  const rates = ratesOf(austenite, steel.grainSize, noses)
  const total = rates.ferrite.map((ferrite, k) => ferrite + rates.pearlite[k]! + rates.bainite[k]!)
  const barProgress = new Float64Array(KNOTS)
  const barHardness = new Float64Array(KNOTS)
  END_QUENCH_DWELL.forEach(({ share }, j) => {
    let progress = 0
    let hardness = 0
    for (let k = 0; k < CLASSES; k++) {
      progress += 0.001 * share[k]! * total[k]!
      hardness += 0.001 * share[k]! * total[k]! * HARDNESS[k]!
    }
    barProgress[j] = progress
    barHardness[j] = hardness / progress
  })
  const mostFerrite = Math.max(0, 1 - austenite.C / 0.77)
  const source =
    noses === undefined
      ? 'additive start curves after Li et al. 1998, held to the end-quench bar of ASTM A255'
      : `additive, bainite by the noses of the ${noses.source}, held to the end-quench bar`
  return {
    source,
    after: (dwellS, stride, place) => {
      let progress = 0
      let hardness = 0
      let ferrite = 0
      let bainite = 0
      for (let k = 0; k < CLASSES; k++) {
        const s = dwellS[k * stride + place]!
        if (s === 0) continue
        const counts = s * total[k]!
        progress += counts
        hardness += counts * HARDNESS[k]!
        ferrite += s * rates.ferrite[k]!
        bainite += s * rates.bainite[k]!
      }
      if (!(progress > 0)) return NOTHING
      const coolingS = barTime(progress, barProgress)
      const barHv = atKnots(barHardness, ln(coolingS))
      const ferriteShare = Math.min(mostFerrite, ferrite / progress)
      const bainiteShare = Math.min(1 - ferriteShare, bainite / progress)
      return {
        coolingS,
        productFactor: Math.min(HARDEST_FACTOR, Math.max(SOFTEST_FACTOR, hardness / progress / barHv)),
        ferrite: ferriteShare,
        bainite: bainiteShare,
        pearlite: 1 - ferriteShare - bainiteShare,
      }
    },
  }
}

/** It was never under the heat: as soft as it comes. */
const NOTHING: Transformed = { coolingS: Number.POSITIVE_INFINITY, productFactor: 1, ferrite: 0, pearlite: 0, bainite: 0 }

function ratesOf(austenite: Composition, grainSize: number, noses: PublishedNoses | undefined): Rates {
  const at = CLASS_MIDDLES_K.map(startRates(austenite, grainSize))
  const { bainiteK, martensiteK } = startLimits(austenite)
  const fastest = Math.max(...at.map(({ ferrite, pearlite }) => ferrite + pearlite), 1e-30)
  const fastestBainite = Math.max(...at.map(({ bainite }) => bainite), 1e-30)
  const ratio = pow(fastestBainite / fastest, BAINITE_POWER)
  const bainiteAt = (k: number): number => {
    const kelvin = CLASS_MIDDLES_K[k]!
    if (kelvin <= martensiteK) return 0
    if (noses === undefined) return BAINITE_SHARE * ratio * (at[k]!.bainite / fastestBainite)
    const off = (kelvin - noses.bainite.atK) / PUBLISHED_BAINITE_WIDTH_K
    return (noses.pearliteS / noses.bainite.s) * exp(-off * off)
  }
  const ferrite = new Float64Array(CLASSES)
  const pearlite = new Float64Array(CLASSES)
  const bainite = new Float64Array(CLASSES)
  for (let k = 0; k < CLASSES; k++) {
    const { ferrite: f, pearlite: p, bainite: b } = at[k]!
    // Under the start of bainite the nose's own tail is shared out by the source's rates; plain steel goes on making fine pearlite there.
    const all = f + p + b
    const bainitic = CLASS_MIDDLES_K[k]! < bainiteK && all > 0 ? b / all : 0
    const ferritic = f + p > 0 ? f / (f + p) : 0
    ferrite[k] = NOSE[k]! * (1 - bainitic) * ferritic
    pearlite[k] = NOSE[k]! * (1 - bainitic) * (1 - ferritic)
    bainite[k] = NOSE[k]! * bainitic + bainiteAt(k)
  }
  return { ferrite, pearlite, bainite }
}

/** Place of the bar [s] with this progress; its shape changes so slowly with time that four passes settle it to a thousandth. */
function barTime(progress: number, barProgress: Float64Array): number {
  let s = progress / barProgress[1]!
  for (let pass = 0; pass < 4; pass++) s = progress / atKnots(barProgress, ln(s))
  return s
}

/** Linear in the logarithm of time between the places of the bar, held beyond. */
function atKnots(values: Float64Array, lnS: number): number {
  if (lnS <= LN_TIMES[0]!) return values[0]!
  let j = 1
  while (j < KNOTS - 1 && LN_TIMES[j]! < lnS) j++
  if (lnS >= LN_TIMES[j]!) return values[j]!
  const u = (lnS - LN_TIMES[j - 1]!) / (LN_TIMES[j]! - LN_TIMES[j - 1]!)
  return values[j - 1]! + u * (values[j]! - values[j - 1]!)
}
