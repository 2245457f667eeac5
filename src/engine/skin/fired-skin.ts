import type { Composition } from '#engine/materials/steel.ts'
import { carbonLines } from './carbon-lines.ts'
import { carbonAfter } from './carbon-profile.ts'
import { BEST_TRUTH, type SkinLeg, type SkinTruth, skinSteps } from './skin-steps.ts'

/** What all the fires together have made of a skin. Depths are under the present surface of the metal, beneath its scale [m]. */
export interface FiredSkin {
  /** Rising; the middles of the cells. */
  readonly depthM: Float64Array
  readonly carbonWtPct: Float64Array
  readonly bulkWtPct: number
  /** Metal that went into scale, and the scale that lies on now [m]. */
  readonly metalLostM: number
  readonly scaleM: number
}

/** Steps, and cells in a diffusion length, for one look while a handle moves: depths within some 5 %. */
const ROUGH = { steps: 10, cells: 12 } as const
/** Less than this is no skin [m]: the finish of a fine file. */
const NO_SKIN_M = 2e-6

/**
 * Carbon and scale after the legs, on a flat wall whose other side lies `2 halfThicknessM` away; undefined where no fire reached it. The bar is taken
 * as sound all through at the start. `rough` is for one quick look.
 */
export function firedSkin(
  legs: readonly SkinLeg[],
  steel: { readonly composition: Composition; readonly ac1K: number; readonly ac3K: number },
  halfThicknessM: number,
  truth: SkinTruth = BEST_TRUTH,
  rough = false,
): FiredSkin | undefined {
  const { composition, ac1K, ac3K } = steel
  const lines = carbonLines(composition, ac1K, ac3K)
  const { steps, diffusionM, metalLostM, scaleM } = skinSteps(
    legs,
    { composition, lines },
    truth,
    rough ? ROUGH.steps : undefined,
  )
  if (diffusionM < NO_SKIN_M) return undefined
  const endM = Math.max(halfThicknessM, metalLostM + diffusionM)
  const { depthM, carbonWtPct } = carbonAfter(steps, lines, {
    diffusionM,
    endM,
    factorOnDiffusion: truth.onDiffusion,
    ...(rough ? { cells: ROUGH.cells } : {}),
  })
  return { depthM, carbonWtPct, bulkWtPct: composition.C, metalLostM, scaleM }
}

/** Carbon at a depth [wt%]: straight lines between the cells, the outermost value beyond the first. */
export function carbonAt({ depthM, carbonWtPct }: FiredSkin, atM: number): number {
  const last = depthM.length - 1
  if (atM <= depthM[0]!) return carbonWtPct[0]!
  if (atM >= depthM[last]!) return carbonWtPct[last]!
  let i = 1
  while (depthM[i]! < atM) i++
  const share = (atM - depthM[i - 1]!) / (depthM[i]! - depthM[i - 1]!)
  return carbonWtPct[i - 1]! + share * (carbonWtPct[i]! - carbonWtPct[i - 1]!)
}

/** Depth from which `falls` is true no more [m]: 0 where it never was, between cells by halving. `falls` must not come back deeper. */
export function depthUntil(skin: FiredSkin, falls: (carbonWtPct: number) => boolean): number {
  const { depthM, carbonWtPct } = skin
  let i = depthM.length - 1
  while (i >= 0 && !falls(carbonWtPct[i]!)) i--
  if (i < 0) return 0
  let inM = depthM[i]!
  let outM = depthM[i + 1] ?? inM
  for (let k = 0; k < 20; k++) {
    const middle = 0.5 * (inM + outM)
    if (falls(carbonAt(skin, middle))) inM = middle
    else outM = middle
  }
  return 0.5 * (inM + outM)
}

/** A skin counts as sound from nine tenths of the bar's carbon on: common practice, no source. */
const SOUND_SHARE = 0.9

export function decarburisedDepthM(skin: FiredSkin): number {
  return depthUntil(skin, (c) => c < SOUND_SHARE * skin.bulkWtPct)
}
