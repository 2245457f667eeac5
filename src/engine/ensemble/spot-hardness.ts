import { type Products, type Transformation, transformation } from '#engine/kinetics/transformation.ts'
import type { Composition, Steel } from '#engine/materials/steel.ts'
import { austeniteBetween, retention } from '#engine/metallurgy/austenite.ts'
import { criticalTemperatures } from '#engine/metallurgy/critical-temperatures.ts'
import { grainAfterHeat, growsFromK } from '#engine/metallurgy/grain-growth.ts'
import { type HardeningResponse, hardeningResponse } from '#engine/metallurgy/hardening-response.ts'
import { hrcFromHv, hvFromHrc } from '#engine/metallurgy/hardness-scales.ts'
import type { TemperRound } from '#engine/metallurgy/retained-in-temper.ts'
import { type TemperingResponse, temperingResponse } from '#engine/metallurgy/tempering-response.ts'
import type { HeatedFrom } from '#engine/simulation/heated-from.ts'
import type { Response, SpotHistory } from './history.ts'
import type { Member, NOMINAL_OFFSETS } from './unknowns.ts'

/** Structure and hardness of one place for one possible truth. */
export interface SpotHardness {
  readonly quenchedHrc: number
  readonly temperedHrc: number
  readonly austeniteFraction: number
  readonly martensiteFraction: number
  readonly retainedAusteniteFraction: number
  /** Of that still austenite after all tempers, and martensite of it that no temper came after [0..1 of the whole]. */
  readonly austeniteLeftFraction: number
  readonly freshMartensiteFraction: number
  /** Shares of the austenite that turned to something else than martensite [0..1]. */
  readonly ferriteFraction: number
  readonly pearliteFraction: number
  readonly bainiteFraction: number
}

/**
 * What one steel makes of any heat. Hardening and tempering hang on what is in solution and on the grain, so answers are kept by the
 * carbon there, to `withinWtPct`, and by half a grain number; how much is austenite is worked out for every place.
 */
export class SteelBehaviour {
  readonly steel: Steel
  private readonly ac1K: number
  private readonly ac3K: number
  private readonly withinWtPct: number
  private readonly from: HeatedFrom
  /** No heat below this lets the grain grow [K]. */
  private readonly growsFromK: number
  private readonly kept = new Map<number, Made>()

  /** `from`: what the hardening heat finds. */
  constructor(steel: Steel, composition: Composition, from: HeatedFrom, withinWtPct = 0.02) {
    this.withinWtPct = withinWtPct
    this.from = from
    this.growsFromK = growsFromK(composition, from.countedNumber)
    this.steel = { ...steel, composition }
    const found = criticalTemperatures(composition, steel.gradeId === undefined ? {} : { gradeId: steel.gradeId })
    this.ac1K = found.ac1K.value
    this.ac3K = Math.max(found.ac3K.value, found.ac1K.value + 5)
  }

  /** Austenite after `peakK` held for `soakS`, with what hardening and tempering will do to it. */
  after(peakK: number, soakS: number): Heated {
    const bulk = this.steel.composition
    const { prior } = this.from
    const { fraction, composition } = austeniteBetween(bulk, this.ac1K, this.ac3K, peakK, soakS, prior)
    const grainSize = this.grainAfter(peakK, soakS)
    const key = 32 * Math.round(composition.C / this.withinWtPct) + Math.round(2 * grainSize)
    let made = this.kept.get(key)
    if (made === undefined) {
      const steel = { ...this.steel, grainSize }
      const hardening = hardeningResponse(steel, composition)
      made = {
        composition,
        hardening,
        transformation: transformation(steel, composition, hardening.halfMartensiteS),
        retainedAt: retention(composition),
        tempering: temperingResponse(steel, composition),
      }
      this.kept.set(key, made)
    }
    return { fraction, made }
  }

  /** ASTM number of the austenite grain after that heat, held to the numbers that hardenability is published for. */
  private grainAfter(peakK: number, soakS: number): number {
    const { countedNumber } = this.from
    if (peakK <= this.growsFromK) return countedNumber
    return Math.max(0, grainAfterHeat(this.steel.composition, countedNumber, peakK, soakS).number)
  }
}

/** What the fire made of one place: the share that is austenite, and what becomes of that. */
export interface Heated {
  readonly fraction: number
  readonly made: Made
}

export interface Made {
  readonly composition: Composition
  readonly hardening: HardeningResponse
  readonly transformation: Transformation
  /** Share of austenite left after cooling to a temperature [K]. */
  readonly retainedAt: (minK: number) => number
  readonly tempering: TemperingResponse
}

/** From this share on what formed beside the martensite is not asked for. */
const ALL_MARTENSITE = 0.98
const NO_PRODUCTS: Products = { factor: 1, ferrite: 0, pearlite: 0, bainite: 0 }

/** No steel that a smith quenches reads higher [HRC]: the end of the published as-quenched figures. */
const HARDEST_HRC = 68

export type Offsets = Pick<Member, keyof typeof NOMINAL_OFFSETS>

/** Hardness at spot `i` for a member of the ensemble: its history shifted by the member's offsets, then structure, quench and temper. */
export function spotHardness(
  behaviour: SteelBehaviour,
  history: SpotHistory,
  response: Response | undefined,
  offsets: Offsets,
  i: number,
): SpotHardness {
  return hardnessOf(heatedSpot(behaviour, history, response, offsets, i), history, response, offsets, i)
}

/** What the fire made of spot `i`, if it ran as far off as the member's does. */
export function heatedSpot(
  behaviour: SteelBehaviour,
  history: SpotHistory,
  response: Response | undefined,
  { heatOffsetK }: Pick<Offsets, 'heatOffsetK'>,
  i: number,
): Heated {
  const offK = response === undefined ? 0 : response.peakPerK[i]! * heatOffsetK
  return behaviour.after(history.peakK[i]! + offK, history.soakS[i]!)
}

/** Quench and temper of spot `i` after the fire has made it what `heated` says. */
export function hardnessOf(
  { fraction, made }: Heated,
  history: SpotHistory,
  response: Response | undefined,
  offsets: Omit<Offsets, 'heatOffsetK'>,
  i: number,
): SpotHardness {
  const { hardening, tempering } = made
  const { dwellS } = history
  const places = history.peakK.length
  let lnCooling = made.transformation.lnCooling(dwellS, places, i)
  if (response !== undefined && offsets.lnFilm !== 0) {
    const perFilm = offsets.lnFilm >= 0 ? response.lnCoolingPerLnFilmUp : response.lnCoolingPerLnFilmDown
    lnCooling += perFilm[i]! * offsets.lnFilm
  }
  const share = hardening.martensiteFractionAt(lnCooling)
  const beside = share < ALL_MARTENSITE ? made.transformation.products(dwellS, places, i) : NO_PRODUCTS
  const hardened = withProducts(hardening, lnCooling, share, beside.factor)
  const martensiteFraction = fraction * share
  // The scatter of the hardening model belongs to what hardens; soft steel is known better.
  const mixedHrc = hrcFromHv(fraction * hardened + (1 - fraction) * hardening.softHv)
  const quenchedHrc = Math.min(mixedHrc + offsets.hardening * hardening.scatterHrc, Math.max(mixedHrc, HARDEST_HRC))
  const temperPeakK = history.temperPeakK[i]!
  const retained = martensiteFraction * made.retainedAt(history.lowestK[i]!)
  let left = retained
  let fresh = 0
  let temperedHrc = quenchedHrc
  if (temperPeakK > 373) {
    const parameterK = tempering.constant === 18 ? history.parameter18K[i]! : history.parameter20K[i]!
    const shifted = (parameterK * (temperPeakK + offsets.ovenOffsetK)) / temperPeakK
    const softened = tempering.temperedHv(hvFromHrc(quenchedHrc), martensiteFraction, shifted, bainiteOf(beside))
    const after = tempering.afterTempers(softened, retained, roundsAt(history, offsets.ovenOffsetK, i))
    left = after.left
    fresh = after.fresh
    temperedHrc = hrcFromHv(after.hv) + offsets.tempering * tempering.scatterHrc * martensiteFraction
  }
  return {
    quenchedHrc,
    temperedHrc,
    austeniteFraction: fraction,
    martensiteFraction,
    ferriteFraction: fraction * (1 - share) * beside.ferrite,
    pearliteFraction: fraction * (1 - share) * beside.pearlite,
    bainiteFraction: fraction * (1 - share) * beside.bainite,
    retainedAusteniteFraction: retained,
    austeniteLeftFraction: left,
    freshMartensiteFraction: fresh,
  }
}

/** Share of bainite in what is not martensite; undefined where nothing formed beside it. */
function bainiteOf({ ferrite, pearlite, bainite }: Products): number | undefined {
  const all = ferrite + pearlite + bainite
  return all > 0 ? bainite / all : undefined
}

/** Tempers of spot `i` as the steel felt them; without any, the heat left in the body counts as one that it never cooled from. */
function roundsAt({ rounds, parameter20K, temperPeakK }: SpotHistory, ovenOffsetK: number, i: number): TemperRound[] {
  const own = rounds.length > 0 ? rounds : [{ times: 1, parameter20K, peakK: temperPeakK }]
  return own.map(({ times, parameter20K: ofOne, peakK }) => {
    const atK = peakK[i]! + ovenOffsetK
    return { times, peakK: atK, parameterK: (ofOne[i]! * atK) / Math.max(1, peakK[i]!) }
  })
}

/** The laws of soft structure were fitted on pieces that cooled without a stop, whose products differ by this much among themselves. */
const ALIKE = [0.8, 1.2] as const
const LEAST_SOFT_HV = 120

/** Hardness [HV] with what is not martensite made harder or softer where it formed much colder or hotter than it does on the end-quench bar. */
function withProducts(hardening: HardeningResponse, lnCooling: number, martensite: number, factor: number): number {
  const hv = hardening.quenchedHvAt(lnCooling)
  const beyond = factor > ALIKE[1] ? factor / ALIKE[1] : factor < ALIKE[0] ? factor / ALIKE[0] : 1
  if (beyond === 1) return hv
  const soft = Math.max(LEAST_SOFT_HV, (hv - martensite * hardening.fullHv) / (1 - martensite))
  return Math.min(hardening.fullHv, hv + (1 - martensite) * soft * (beyond - 1))
}
