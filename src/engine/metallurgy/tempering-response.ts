import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import type { Composition, Steel } from '#engine/materials/steel.ts'
import type { Basis } from '#engine/provenance/estimate.ts'
import { additiveTempering } from './additive-tempering.ts'
import { hvFromHrc } from './hardness-scales.ts'
import { fullMartensiteHrc } from './martensite-hardness.ts'

/** How one steel softens on tempering, whatever the history: by the tempering parameter of `advanceParameter`. */
export interface TemperingResponse {
  /** Constant of the parameter that `temperedHv` takes, for hours: 18, or 20 for steel with a secondary peak. */
  readonly constant: number
  readonly basis: Basis
  readonly source: string
  /** One standard deviation of a single piece about the curve [HRC]. */
  readonly scatterHrc: number
  /**
   * Hardness after tempering [HV].
   *
   * `quenchedHv` and `martensiteFraction` (0..1) speak of the piece as quenched, `parameterK` of all its tempers together (0 = none).
   * Only the martensite tempers by the curve; bainite softens more slowly, ferrite and pearlite not at all. Never above `quenchedHv`
   * unless a secondary peak is published for the steel.
   */
  temperedHv(quenchedHv: number, martensiteFraction: number, parameterK: number): number
}

const MODEL_SCATTER_HRC = 1.9
/** Grange-Baughman parameter up to which nothing softens, and from which the table holds. */
const NOTHING_YET = 13
const TABLE_FROM = 15.5

/** Softening of bainite against that of martensite of the same hardness, by parameter: 0.3 below 500 degC, nearly all at 650. */
const BAINITE_SHARE: Rows = [
  [24, 0.3],
  [31, 0.9],
]
/** How much of a difference between this piece and full martensite as quenched is left after tempering. */
const KEEPS_DIFFERENCE: Rows = [
  [13, 1],
  [20, 0.25],
  [24, 0],
]

/** The tempering response of `steel` hardened to `austenite` (what was in solution): the additive model of its composition. */
export function temperingResponse(_steel: Steel, austenite: Composition): TemperingResponse {
  const fullHv = hvFromHrc(fullMartensiteHrc(austenite.C))
  const tempered = (p: number): number => additiveTempering.evaluate({ ...austenite, parameter: p })
  const atTable = Math.min(fullHv, tempered(TABLE_FROM))
  const martensiteHv = (p: number): number => {
    if (p >= TABLE_FROM) return Math.min(atTable, tempered(p))
    return interpolate(
      [
        [NOTHING_YET, fullHv],
        [TABLE_FROM, atTable],
      ],
      p,
    )
  }
  return {
    constant: 18,
    basis: 'model',
    source: additiveTempering.source,
    scatterHrc: MODEL_SCATTER_HRC,
    temperedHv: (quenchedHv, martensiteFraction, parameterK) => {
      const p = (1.8 * parameterK) / 1000
      if (p <= NOTHING_YET) return quenchedHv
      return mixedHv(quenchedHv, martensiteFraction, fullHv, martensiteHv(p), p)
    },
  }
}

/** Hardness of a structure of which only `fraction` tempers as martensite. */
export function mixedHv(quenchedHv: number, fraction: number, fullHv: number, temperedFullHv: number, p: number): number {
  const f = Math.min(1, Math.max(0, fraction))
  const restHv = f > 0.98 ? quenchedHv : Math.min(quenchedHv, Math.max(120, (quenchedHv - f * fullHv) / (1 - f)))
  const martensiteHv = f > 0.02 ? (quenchedHv - (1 - f) * restHv) / f : quenchedHv
  const softened = Math.min(martensiteHv, temperedFullHv + (martensiteHv - fullHv) * interpolate(KEEPS_DIFFERENCE, p))
  const restSoftened = restHv - interpolate(BAINITE_SHARE, p) * Math.max(0, restHv - temperedFullHv)
  return Math.min(quenchedHv, f * softened + (1 - f) * restSoftened)
}
