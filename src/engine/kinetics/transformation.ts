import { exp, ln } from '#engine/arithmetic/elementary.ts'
import type { Composition, Steel } from '#engine/materials/steel.ts'
import { END_QUENCH_DWELL } from './end-quench-dwell.ts'
import { formationHardnessHv } from './formation-hardness.ts'
import { mobilityAt, type PublishedNoses, publishedNoses, startLimits, startRates } from './start-curves.ts'
import { CLASS_MIDDLES_K, CLASSES } from './temperature-classes.ts'

/** Of what the soft part of a place is made. */
export interface Products {
  /** Hardness of what is not martensite, against that of the same place of the bar: it formed hotter (under 1) or colder (over 1). */
  readonly factor: number
  /** Shares of what is not martensite, together 1; all 0 where nothing had time to form. */
  readonly ferrite: number
  readonly pearlite: number
  readonly bainite: number
}

/**
 * How austenite of one composition turns, held to the end-quench bar. `dwellS` as `DwellClock` counts it: class after class, `stride` places in
 * each; `place` is asked about.
 */
export interface Transformation {
  /** Where on the end-quench bar as much has turned: logarithm of the time from 800 to 500 degC there [ln s]; Infinity for what never cooled. */
  lnCooling(dwellS: Float64Array, stride: number, place: number): number
  products(dwellS: Float64Array, stride: number, place: number): Products
  readonly source: string
}

/**
 * Ferrite and pearlite together: how much a second at each temperature counts toward the loss of martensite, 1 at the nose. Place and width were fitted
 * on three published sets together, all steels alike: rounds of Bethlehem Steel, bar places of the SAE charts, critical diameters in brine; 2.88 HRC, 1.2
 * sixteenths and 2.5 mm mean error against 3.05, 1.7 and 2.7 by the plain time from 800 to 500 degC. The noses of isothermal diagrams (560..610 degC, wide
 * below) do worse on all three. It counts a little time above Ae1, where nothing forms, as a sign of how fast the place falls: a walk through the
 * air must not be counted up there.
 */
const NOSE_K = 933
const NOSE_WIDTH_K = 80
/**
 * Bainite by the source's own times, at half its rate: its starts lie two to four times too early in plain carbon steel against published critical
 * rates, and the rounds agree (2.81 HRC with 0.3 of it, 2.83 with half, 2.87 with all, 2.88 without). Its speed hardly changes over the middle of
 * the bainite range in isothermal diagrams, where the source's falls a hundredfold in rich steel: so only its fastest is taken.
 */
const BAINITE_SHARE = 0.5
/** From the first per cent to the half in the sigmoid of the source: 1.0242 over 0.1042. */
const HALF_OVER_START = 9.83
/** Lower bainite is done within a few hours in every steel of the catalogue that forms it (isothermal diagrams, memory) [s]. */
const SLOWEST_BAINITE_S = 3600
const NARROWEST_BAINITE_K = 40
const SOFTEST_FACTOR = 0.6
const HARDEST_FACTOR = 2

const NOSE = CLASS_MIDDLES_K.map((kelvin) => exp(-(((kelvin - NOSE_K) / NOSE_WIDTH_K) * ((kelvin - NOSE_K) / NOSE_WIDTH_K))))
const HARDNESS = CLASS_MIDDLES_K.map(formationHardnessHv)
const NOSE_SHARE = END_QUENCH_DWELL[1]!.share.reduce((sum, share, k) => sum + 0.001 * share * NOSE[k]!, 0)
const MOBILITY = CLASS_MIDDLES_K.map(mobilityAt)
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
 * every composition; an interrupted, held or uneven one is carried over by the rates. `halfMartensiteS` is the time from 800 to 500 degC that gives half
 * martensite there (`HardeningResponse`): what bainite's own times are measured against.
 */
export function transformation(
  steel: Pick<Steel, 'gradeId' | 'grainSize'>,
  austenite: Composition,
  halfMartensiteS: number,
): Transformation {
  const noses = publishedNoses(steel.gradeId)
  const rates = ratesOf(austenite, steel.grainSize, noses, halfMartensiteS * NOSE_SHARE)
  const total = rates.ferrite.map((ferrite, k) => ferrite + rates.pearlite[k]! + rates.bainite[k]!)
  // Logarithms, so that a place is found without working any out.
  const lnBarProgress = new Float64Array(KNOTS)
  const barHardness = new Float64Array(KNOTS)
  END_QUENCH_DWELL.forEach(({ share }, j) => {
    let progress = 0
    let hardness = 0
    for (let k = 0; k < CLASSES; k++) {
      progress += 0.001 * share[k]! * total[k]!
      hardness += 0.001 * share[k]! * total[k]! * HARDNESS[k]!
    }
    lnBarProgress[j] = ln(progress)
    barHardness[j] = hardness / progress
  })
  const mostFerrite = Math.max(0, 1 - austenite.C / 0.77)
  const source =
    noses === undefined
      ? 'additive start curves after Li et al. 1998, held to the end-quench bar of ASTM A255'
      : `additive start curves after Li et al. 1998, bainite by the noses of the ${noses.source}, held to the end-quench bar`
  const progressOf = (dwellS: Float64Array, stride: number, place: number): number => {
    let progress = 0
    for (let k = 0, at = place; k < CLASSES; k++, at += stride) progress += dwellS[at]! * total[k]!
    return progress
  }
  const barPlace = (progress: number): number => (progress > 0 ? lnTime(ln(progress), lnBarProgress) : Number.POSITIVE_INFINITY)
  return {
    source,
    lnCooling: (dwellS, stride, place) => barPlace(progressOf(dwellS, stride, place)),
    products: (dwellS, stride, place) => {
      const progress = progressOf(dwellS, stride, place)
      if (!(progress > 0)) return NOTHING
      let hardness = 0
      let ferrite = 0
      let bainite = 0
      for (let k = 0, at = place; k < CLASSES; k++, at += stride) {
        const s = dwellS[at]!
        hardness += s * total[k]! * HARDNESS[k]!
        ferrite += s * rates.ferrite[k]!
        bainite += s * rates.bainite[k]!
      }
      const barHv = atKnots(barHardness, barPlace(progress))
      const ferriteShare = Math.min(mostFerrite, ferrite / progress)
      const bainiteShare = Math.min(1 - ferriteShare, bainite / progress)
      return {
        factor: Math.min(HARDEST_FACTOR, Math.max(SOFTEST_FACTOR, hardness / progress / barHv)),
        ferrite: ferriteShare,
        bainite: bainiteShare,
        pearlite: 1 - ferriteShare - bainiteShare,
      }
    },
  }
}

const NOTHING: Products = { factor: 1, ferrite: 0, pearlite: 0, bainite: 0 }

function ratesOf(austenite: Composition, grainSize: number, noses: PublishedNoses | undefined, halfProgress: number): Rates {
  const startsAt = startRates(austenite, grainSize)
  const at = CLASS_MIDDLES_K.map((kelvin, k) => startsAt(kelvin, MOBILITY[k]!))
  const { bainiteK, martensiteK } = startLimits(austenite)
  const fastestBainite = Math.max(...at.map(({ bainite }) => bainite), 1e-30)
  const bainiteHalfS =
    noses === undefined ? Math.min(SLOWEST_BAINITE_S, HALF_OVER_START / fastestBainite) : HALF_OVER_START * noses.bainite.startS
  const middleK = noses?.bainite.atK ?? 0.5 * (bainiteK + martensiteK)
  const widthK = Math.max(NARROWEST_BAINITE_K, (bainiteK - martensiteK) / 3)
  const bainiteAt = (k: number): number => {
    const kelvin = CLASS_MIDDLES_K[k]!
    if (kelvin <= martensiteK || kelvin >= bainiteK) return 0
    const off = (kelvin - middleK) / widthK
    return ((BAINITE_SHARE * halfProgress) / bainiteHalfS) * exp(-off * off)
  }
  // Steel that turns to bainite long before it would to pearlite.
  const pearlitic = noses === undefined ? 1 : Math.min(1, halfProgress / (HALF_OVER_START * noses.pearliteS))
  const ferrite = new Float64Array(CLASSES)
  const pearlite = new Float64Array(CLASSES)
  const bainite = new Float64Array(CLASSES)
  for (let k = 0; k < CLASSES; k++) {
    const { ferrite: f, pearlite: p, bainite: b } = at[k]!
    // Under the start of bainite the nose's own tail is shared out by the source's rates; plain steel goes on making fine pearlite there.
    const all = f + p + b
    const bainitic = CLASS_MIDDLES_K[k]! < bainiteK && all > 0 ? b / all : 0
    const ferritic = f + p > 0 ? f / (f + p) : 0
    ferrite[k] = pearlitic * NOSE[k]! * (1 - bainitic) * ferritic
    pearlite[k] = pearlitic * NOSE[k]! * (1 - bainitic) * (1 - ferritic)
    bainite[k] = pearlitic * NOSE[k]! * bainitic + bainiteAt(k)
  }
  return { ferrite, pearlite, bainite }
}

/** Time of the place with this progress [ln s]; the bar's shape changes so slowly along it that three passes settle it to a thousandth. */
function lnTime(lnProgress: number, lnBarProgress: Float64Array): number {
  let x = lnProgress - lnBarProgress[1]!
  for (let pass = 0; pass < 3; pass++) x = lnProgress - atKnots(lnBarProgress, x)
  return x
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
