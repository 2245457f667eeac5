import { exp, ln, log10 } from '#engine/arithmetic/elementary.ts'
import type { Composition, Steel } from '#engine/materials/steel.ts'
import { limitsBroken } from '#engine/provenance/correlation.ts'
import type { Basis } from '#engine/provenance/estimate.ts'
import { END_QUENCH_COOLING } from './end-quench-cooling.ts'
import { fullHardness, isHighAlloy } from './full-hardness.ts'
import { dividingFactor } from './hardenability.ts'
import { hrcFromHv, hvFromHrc } from './hardness-scales.ts'
import { a255IdealDiameter, idealDiameterM } from './ideal-diameter.ts'
import { fullMartensiteHrc, martensiteFractionFor } from './martensite-hardness.ts'
import { publishedCriticalCooling } from './published-critical-cooling.ts'
import { annealedHv, deepSoftStructureHvAt, softStructureHv, softStructureHvAt } from './soft-structure.ts'

/** What a steel becomes when it is cooled from austenite, whatever cooled it. */
export interface HardeningResponse {
  readonly basis: Basis
  readonly source: string
  /** One standard deviation of a single spot about the curve [HRC], composition and cooling being known. */
  readonly scatterHrc: number
  /** Hardness [HV] by time from 800 to 500 degC [s] as `CoolingClock` measures it; Infinity: as slow as you like. Never rises with time. */
  quenchedHv(cooling800To500S: number): number
  /** The same by the time's logarithm [ln s]: for inner loops. */
  quenchedHvAt(lnCoolingS: number): number
  /** Share of the austenite that becomes martensite, 0..1. Never rises with time. */
  martensiteFraction(cooling800To500S: number): number
  martensiteFractionAt(lnCoolingS: number): number
  readonly fullHv: number
  readonly softHv: number
  /** Slowest cooling that still gives the full hardness less 3 HRC [s]. */
  readonly criticalCoolingS: number
  /** Cooling that gives half martensite [s]; the end of the table (8 h) where that is not slow enough. */
  readonly halfMartensiteS: number
}

const INCH_M = 0.0254

/** Places of the table in ln(s): 0.3 s to 8 h. */
const LN_FROM = ln(0.3)
const LN_STEP = 0.2
const PLACES = 58
const LN_TO = LN_FROM + (PLACES - 1) * LN_STEP
/** The same to base 10, for the laws of soft structure. */
const LOG10_TIMES = Array.from({ length: PLACES }, (_, i) => log10(Math.max(1, exp(LN_FROM + i * LN_STEP))))
const TIMES = Array.from({ length: PLACES }, (_, i) => exp(LN_FROM + i * LN_STEP))

/**
 * Shallow steels (ideal diameter under `UNTIL_IN`), where the polynomials of A255 end: half martensite after `SHALLOW_S` D^2 seconds, with a
 * steepness fitted on 1040, 1050 and 1080 rounds in oil and water (a constant shared by all; see docs/validation.md). A perfect quench
 * halves the martensite at 5.6 s for 1 in, so the factor says that A255 gives plain carbon steel an ideal diameter half as much again too large;
 * the observed critical diameters of W-type steel in brine (Roberts, Krauss & Kennedy, Tool Steels, table 7-3) say the same.
 */
const SHALLOW_S = 1.9
const SHALLOW_POWER = 4.5
const SHALLOW_UNTIL_IN = [1.6, 2.6] as const

/** Deep steels, for which the end-quench bar is too short: half martensite after 5.6 D^2 seconds (the perfect quench again), at most `DEEP_MOST_S`. */
const DEEP_S = 5.6
const DEEP_POWER = 2
const DEEP_FROM_IN = [6.5, 8.5] as const
const DEEP_MOST_S = 4000

/**
 * The multiplying factors spread steels too far: with typical analyses the rounds of 1141, 9255, 5160 come out soft and those of 4140 and 6150 hard,
 * and so do the middles of the hardenability bands of 5160H, 4140H and 6150H. For the end-quench curve the ideal diameter is drawn toward
 * `EVEN_IN` by this power; not in poor steel (4130, 8620H), nor in deep steel from `RAW_FROM_IN` on. One number, fitted on the rounds
 * (mean error 3.2 to 3.0 HRC), held to the bands (1.5 to 1.2 HRC) and to 100Cr6 rounds.
 */
const EVENING_POWER = 0.3
const EVEN_IN = 4.4
const RAW_FROM_IN = 6.8
const POOR_CARBON = [0.2, 0.4] as const

/** Past two inches of the bar hardness falls by 5 % for each factor e of time: 4140, 4340 and 5160 then meet their normalised hardness. */
const TAIL_PER_LN = 0.05

/**
 * Richer in carbon than A255's steels the end-quench curve ends in fine pearlite and bainite far harder than the standard's factors have it:
 * there the curve gives the share of martensite, and the mixture with that structure the hardness. Between, in proportion [wt%].
 */
const RICH_CARBON = [0.5, 0.7] as const

/** Martensite that the hardness of full martensite stands for in Hodge & Orehoski's curves. */
const WHOLE = 0.999

const SCATTER_HRC = { inRange: 2, shallow: 3, extrapolated: 2.5, published: 1.5 } as const
const CRITICAL_LOSS_HRC = 3

/**
 * Response of `steel` austenitised so that `austenite` is in solution.
 *
 * - ideal diameter 2.6 to 6.5 in: hardness of the end-quench bar (ASTM A255) at the place that cools from 800 to 500 degC alike
 * - below 1.6 in: full hardness to pearlite by a curve in t / D^2; between, a smooth passage
 * - above 8.5 in: full hardness until a critical time, from a sheet's depth for the grade or from D^2
 * - full hardness from sheets for tool and high-carbon steel, else by carbon in solution less retained austenite
 *
 * Precomputed: a look-up costs a few nanoseconds.
 */
export function hardeningResponse(steel: Steel, austenite: Composition): HardeningResponse {
  const full = fullHardness(steel, austenite)
  const diameterIn = idealDiameterM(austenite, steel.grainSize) / INCH_M
  const published = publishedCriticalCooling(steel.gradeId)
  const softHv = Math.min(annealedHv(austenite), full.hv)

  const bar = barCurve(austenite, evenedDiameter(diameterIn, austenite.C), full.hv)
  const lnShallowHalf = ln(SHALLOW_S * diameterIn * diameterIn)
  const ownHalfS = Math.min(DEEP_MOST_S, DEEP_S * diameterIn * diameterIn)
  const lnDeepHalf = ln(published === undefined ? ownHalfS : Math.max(published.atLeast ? ownHalfS : 0, published.halfS))
  const notShallow = smoothStep(diameterIn, SHALLOW_UNTIL_IN[0], SHALLOW_UNTIL_IN[1])
  const deep = published === undefined ? smoothStep(diameterIn, DEEP_FROM_IN[0], DEEP_FROM_IN[1]) : 1

  const hv = new Float64Array(PLACES)
  const martensite = new Float64Array(PLACES)
  for (let i = 0; i < PLACES; i++) {
    const lnT = LN_FROM + i * LN_STEP
    let mixed = 0
    let share = 0
    // The deep law also bounds what the end-quench curve leaves beyond the end of the bar.
    const beyond = lnT > bar.lnEnd
    const deepShare = deep > 0 || beyond ? 1 / (1 + exp(DEEP_POWER * (lnT - lnDeepHalf))) : 0
    const deepHv = deep > 0 || beyond ? mixture(deepShare, full.hv, deepSoftStructureHvAt(austenite, LOG10_TIMES[i]!)) : 0
    if (deep < 1 && notShallow > 0) {
      const weight = notShallow * (1 - deep)
      mixed += weight * (beyond ? Math.min(bar.hv[i]!, deepHv) : bar.hv[i]!)
      share += weight * (beyond ? Math.min(bar.martensite[i]!, deepShare) : bar.martensite[i]!)
    }
    if (deep < 1 && notShallow < 1) {
      const f = 1 / (1 + exp(SHALLOW_POWER * (lnT - lnShallowHalf)))
      const weight = (1 - notShallow) * (1 - deep)
      mixed += weight * mixture(f, full.hv, softStructureHvAt(austenite, LOG10_TIMES[i]!))
      share += weight * f
    }
    mixed += deep * deepHv
    share += deep * deepShare
    const ceiling = i === 0 ? full.hv : hv[i - 1]!
    hv[i] = Math.max(softHv, Math.min(ceiling, mixed))
    martensite[i] = Math.min(i === 0 ? 1 : martensite[i - 1]!, share)
  }
  return {
    ...provenance(steel, austenite, diameterIn, full, published),
    fullHv: full.hv,
    softHv,
    halfMartensiteS: criticalS(martensite, 0.5),
    criticalCoolingS: criticalS(hv, hvFromHrc(hrcFromHv(full.hv) - CRITICAL_LOSS_HRC)),
    quenchedHv: (s) => lookUp(hv, softHv, lnOf(s)),
    quenchedHvAt: (lnS) => lookUp(hv, softHv, lnS),
    martensiteFraction: (s) => lookUp(martensite, 0, lnOf(s)),
    martensiteFractionAt: (lnS) => lookUp(martensite, 0, lnS),
  }
}

function evenedDiameter(diameterIn: number, carbonWtPct: number): number {
  const drawn = diameterIn * exp(EVENING_POWER * ln(EVEN_IN / diameterIn)) - diameterIn
  const rich = smoothStep(carbonWtPct, POOR_CARBON[0], POOR_CARBON[1])
  if (diameterIn <= EVEN_IN) return diameterIn + rich * drawn
  return diameterIn + rich * drawn * Math.max(0, (RAW_FROM_IN - diameterIn) / (RAW_FROM_IN - EVEN_IN))
}

interface BarCurve {
  readonly hv: Float64Array
  readonly martensite: Float64Array
  /** Time of the last place of the bar [ln s]; beyond it the curve is carried on. */
  readonly lnEnd: number
}

/** Hardness [HV] and martensite of the end-quench bar over TIMES: places of the bar, timed for the structure that forms there. */
function barCurve(austenite: Composition, diameterIn: number, fullHv: number): BarCurve {
  const fullHrc = hrcFromHv(fullHv)
  const martensiticHrc = fullMartensiteHrc(austenite.C)
  const factorOf = dividingFactors(diameterIn)
  const rich = smoothStep(austenite.C, RICH_CARBON[0], RICH_CARBON[1])
  const lnTimes: number[] = []
  const hardness: number[] = []
  const shares: number[] = []
  let least = fullHv
  for (const [place, [, martensiticS, pearliticS]] of END_QUENCH_COOLING.entries()) {
    const standardHrc = fullHrc / factorOf(place)
    const share = Math.min(1, martensiteFractionFor(austenite.C, martensiticHrc / factorOf(place)) / WHOLE)
    const timeS = share * martensiticS + (1 - share) * pearliticS
    const lnTime = ln(timeS)
    if (lnTimes.length > 0 && lnTime <= lnTimes[lnTimes.length - 1]!) continue
    const standardHv = hvFromHrc(standardHrc)
    const mixedHv = rich > 0 ? mixture(share, fullHv, softStructureHv(austenite, timeS)) : standardHv
    least = Math.min(least, standardHv + rich * Math.max(0, mixedHv - standardHv))
    lnTimes.push(lnTime)
    hardness.push(least)
    shares.push(share)
  }
  const hv = new Float64Array(PLACES)
  const martensite = new Float64Array(PLACES)
  const last = lnTimes.length - 1
  let k = 0
  for (let i = 0; i < PLACES; i++) {
    const x = LN_FROM + i * LN_STEP
    while (k < last - 1 && lnTimes[k + 1]! < x) k++
    if (x >= lnTimes[last]!) {
      const kept = Math.max(0, 1 - TAIL_PER_LN * (x - lnTimes[last]!))
      hv[i] = hardness[last]! * kept
      martensite[i] = shares[last]! * kept
    } else {
      const u = Math.max(0, (x - lnTimes[k]!) / (lnTimes[k + 1]! - lnTimes[k]!))
      hv[i] = hardness[k]! + u * (hardness[k + 1]! - hardness[k]!)
      martensite[i] = shares[k]! + u * (shares[k + 1]! - shares[k]!)
    }
  }
  return { hv, martensite, lnEnd: lnTimes[last]! }
}

const GRID_FROM_IN = 0.3
const GRID_STEP_IN = 0.05
const GRID_PLACES = 174
const grid: (Float64Array | undefined)[] = new Array(GRID_PLACES).fill(undefined)

/** Dividing factors of A255 at the places of END_QUENCH_COOLING for an ideal diameter, from a grid whose rows are worked out once, when wanted. */
function dividingFactors(diameterIn: number): (place: number) => number {
  const at = Math.min(GRID_PLACES - 1.001, Math.max(0, (diameterIn - GRID_FROM_IN) / GRID_STEP_IN))
  const row = Math.floor(at)
  const lower = gridRow(row)
  const upper = gridRow(row + 1)
  return (place) => lower[place]! + (at - row) * (upper[place]! - lower[place]!)
}

function gridRow(row: number): Float64Array {
  let factors = grid[row]
  if (factors === undefined) {
    const diameterIn = GRID_FROM_IN + row * GRID_STEP_IN
    factors = Float64Array.from(END_QUENCH_COOLING, ([distance]) => dividingFactor(diameterIn, distance))
    grid[row] = factors
  }
  return factors
}

function mixture(f: number, hardHv: number, softHv: number): number {
  return f * hardHv + (1 - f) * Math.min(hardHv, softHv)
}

function smoothStep(x: number, from: number, to: number): number {
  const u = Math.min(1, Math.max(0, (x - from) / (to - from)))
  return u * u * (3 - 2 * u)
}

function lnOf(s: number): number {
  return s > 0 ? (Number.isFinite(s) ? ln(s) : s) : Number.NEGATIVE_INFINITY
}

function lookUp(table: Float64Array, endless: number, lnS: number): number {
  if (!(lnS > LN_FROM)) return table[0]!
  if (lnS === Number.POSITIVE_INFINITY) return endless
  const at = (lnS - LN_FROM) / LN_STEP
  const i = Math.floor(at)
  // Past the table the value goes to its end within one factor e.
  if (i >= PLACES - 1) return table[PLACES - 1]! + Math.min(1, lnS - LN_TO) * (endless - table[PLACES - 1]!)
  return table[i]! + (at - i) * (table[i + 1]! - table[i]!)
}

/** Where the falling table passes `hv` [s]; the end of the table when it never does. */
function criticalS(table: Float64Array, hv: number): number {
  for (let i = 1; i < PLACES; i++) {
    if (table[i]! >= hv) continue
    const u = (table[i - 1]! - hv) / (table[i - 1]! - table[i]!)
    return exp(LN_FROM + (i - 1 + Math.max(0, u)) * LN_STEP)
  }
  return TIMES[PLACES - 1]!
}

function provenance(
  steel: Steel,
  austenite: Composition,
  diameterIn: number,
  full: { readonly basis: Basis; readonly source: string },
  published: ReturnType<typeof publishedCriticalCooling>,
): Pick<HardeningResponse, 'basis' | 'source' | 'scatterHrc'> {
  if (published !== undefined)
    return {
      basis: published.basis,
      source: `${published.source}; as quenched: ${full.source}`,
      scatterHrc: SCATTER_HRC.published,
    }
  const input = { ...austenite, grainSize: steel.grainSize }
  if (diameterIn < SHALLOW_UNTIL_IN[0])
    return {
      basis: 'model',
      source: `ideal diameter by ${a255IdealDiameter.source}, shallow steel: own fit to published rounds; ${full.source}`,
      scatterHrc: SCATTER_HRC.shallow,
    }
  if (limitsBroken(a255IdealDiameter, input).length === 0 && diameterIn <= DEEP_FROM_IN[1])
    return {
      basis: 'model',
      source: `${a255IdealDiameter.source}, end-quench bar at equal time from 800 to 500 degC`,
      scatterHrc: SCATTER_HRC.inRange,
    }
  const why =
    isHighAlloy(austenite) || diameterIn > DEEP_FROM_IN[1] ? 'factors carried far beyond' : 'factors carried a little beyond'
  return {
    basis: 'model',
    source: `${a255IdealDiameter.source}, ${why} its range (+/-30 % on the diameter); ${full.source}`,
    scatterHrc: SCATTER_HRC.extrapolated,
  }
}
