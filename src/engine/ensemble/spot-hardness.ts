import { exp } from '#engine/arithmetic/elementary.ts'
import type { Composition, Steel } from '#engine/materials/steel.ts'
import { austeniteBetween, retainedAusteniteFraction } from '#engine/metallurgy/austenite.ts'
import { criticalTemperatures } from '#engine/metallurgy/critical-temperatures.ts'
import { grainAfterHeat, growsFromK } from '#engine/metallurgy/grain-growth.ts'
import { type HardeningResponse, hardeningResponse } from '#engine/metallurgy/hardening-response.ts'
import { hrcFromHv, hvFromHrc } from '#engine/metallurgy/hardness-scales.ts'
import { type TemperingResponse, temperingResponse } from '#engine/metallurgy/tempering-response.ts'
import type { HeatedFrom } from '#engine/simulation/heated-from.ts'
import type { Response, SpotHistory } from './history.ts'
import { SLOWEST_LN_S } from './history.ts'
import type { Member, NOMINAL_OFFSETS } from './unknowns.ts'

/** Structure and hardness of one place for one possible truth. */
export interface SpotHardness {
  readonly quenchedHrc: number
  readonly temperedHrc: number
  readonly austeniteFraction: number
  readonly martensiteFraction: number
  readonly retainedAusteniteFraction: number
}

/**
 * What one steel makes of any heat. Hardening and tempering hang on what is in solution, so answers are kept by the carbon there,
 * to `withinWtPct`; how much is austenite is worked out for every place.
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
    this.growsFromK = growsFromK(composition, from.grainNumber)
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
      made = {
        composition,
        hardening: hardeningResponse(steel, composition),
        tempering: temperingResponse(steel, composition),
      }
      this.kept.set(key, made)
    }
    return { fraction, made }
  }

  /** ASTM number of the austenite grain after that heat, held to the numbers that hardenability is published for. */
  private grainAfter(peakK: number, soakS: number): number {
    const { grainNumber } = this.from
    if (peakK <= this.growsFromK) return grainNumber
    return Math.max(0, grainAfterHeat(this.steel.composition, grainNumber, peakK, soakS).number)
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
  readonly tempering: TemperingResponse
}

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
  let lnCooling = history.lnCoolingS[i]!
  if (response !== undefined) {
    const perFilm = offsets.lnFilm >= 0 ? response.lnCoolingPerLnFilmUp : response.lnCoolingPerLnFilmDown
    lnCooling += perFilm[i]! * offsets.lnFilm
  }
  const { composition, hardening, tempering } = made
  const coolingS = lnCooling >= SLOWEST_LN_S - 1e-6 ? Number.POSITIVE_INFINITY : exp(lnCooling)
  const hardened = hardening.quenchedHv(coolingS)
  const martensiteFraction = fraction * hardening.martensiteFraction(coolingS)
  // The scatter of the hardening model belongs to what hardens; soft steel is known better.
  const mixedHrc = hrcFromHv(fraction * hardened + (1 - fraction) * hardening.softHv)
  const quenchedHrc = Math.min(mixedHrc + offsets.hardening * hardening.scatterHrc, Math.max(mixedHrc, HARDEST_HRC))
  const temperPeakK = history.temperPeakK[i]!
  let temperedHrc = quenchedHrc
  if (temperPeakK > 373) {
    const parameterK = tempering.constant === 18 ? history.parameter18K[i]! : history.parameter20K[i]!
    const shifted = (parameterK * (temperPeakK + offsets.ovenOffsetK)) / temperPeakK
    const temperedHv = tempering.temperedHv(hvFromHrc(quenchedHrc), martensiteFraction, shifted)
    temperedHrc = hrcFromHv(temperedHv) + offsets.tempering * tempering.scatterHrc * martensiteFraction
  }
  return {
    quenchedHrc,
    temperedHrc,
    austeniteFraction: fraction,
    martensiteFraction,
    retainedAusteniteFraction: martensiteFraction * retainedAusteniteFraction(composition, history.lowestK[i]!),
  }
}
