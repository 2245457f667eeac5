import { exp, ln, log10 } from '#engine/arithmetic/elementary.ts'
import type { Composition, Steel } from '#engine/materials/steel.ts'
import { austeniteAt, retainedAusteniteFraction } from '#engine/metallurgy/austenite.ts'
import { type HardeningResponse, hardeningResponse } from '#engine/metallurgy/hardening-response.ts'
import { hrcFromHv, hvFromHrc } from '#engine/metallurgy/hardness-scales.ts'
import { type TemperingResponse, temperingResponse } from '#engine/metallurgy/tempering-response.ts'
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

/** What one steel makes of any heat: answers are kept by heat and soak, since most places of a piece saw the same. */
export class SteelBehaviour {
  readonly steel: Steel
  private readonly kept = new Map<number, Made>()

  constructor(steel: Steel, composition: Composition) {
    this.steel = { ...steel, composition }
  }

  /** Austenite, hardening and tempering after `peakK` held for `soakS`; heats within 4 K and soaks within a third share an answer. */
  after(peakK: number, soakS: number): Made {
    const heatBin = Math.round(peakK / 4)
    const soakBin = Math.round(3 * log10(Math.max(soakS, 1)) * 2)
    const key = heatBin * 64 + Math.min(soakBin, 63)
    let made = this.kept.get(key)
    if (made === undefined) {
      const austenite = austeniteAt(this.steel, heatBin * 4, exp((soakBin / 6) * ln(10)))
      made = {
        fraction: austenite.fraction,
        composition: austenite.composition,
        hardening: hardeningResponse(this.steel, austenite.composition),
        tempering: temperingResponse(this.steel, austenite.composition),
      }
      this.kept.set(key, made)
    }
    return made
  }
}

export interface Made {
  readonly fraction: number
  readonly composition: Composition
  readonly hardening: HardeningResponse
  readonly tempering: TemperingResponse
}

type Offsets = Pick<Member, keyof typeof NOMINAL_OFFSETS>

/** Hardness at spot `i` for a member of the ensemble: its history shifted by the member's offsets, then structure, quench and temper. */
export function spotHardness(
  behaviour: SteelBehaviour,
  history: SpotHistory,
  response: Response | undefined,
  offsets: Offsets,
  i: number,
): SpotHardness {
  let peakK = history.peakK[i]!
  let lnCooling = history.lnCoolingS[i]!
  if (response !== undefined) {
    const perFilm = offsets.lnFilm >= 0 ? response.lnCoolingPerLnFilmUp : response.lnCoolingPerLnFilmDown
    peakK += response.peakPerK[i]! * offsets.heatOffsetK
    lnCooling += perFilm[i]! * offsets.lnFilm
  }
  const { fraction, composition, hardening, tempering } = behaviour.after(peakK, history.soakS[i]!)
  const coolingS = lnCooling >= SLOWEST_LN_S - 1e-6 ? Number.POSITIVE_INFINITY : exp(lnCooling)
  const hardened = hardening.quenchedHv(coolingS)
  const martensiteFraction = fraction * hardening.martensiteFraction(coolingS)
  // The scatter of the hardening model belongs to what hardens; soft steel is known better.
  const mixedHrc = hrcFromHv(fraction * hardened + (1 - fraction) * hardening.softHv)
  const quenchedHrc = mixedHrc + offsets.hardening * hardening.scatterHrc
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
