import type { Composition } from '#engine/materials/steel.ts'
import { ATMOSPHERE_NATURES } from '#engine/surface-heat/atmosphere.ts'
import type { Atmosphere } from '#engine/surface-heat/gear.ts'
import { carbonInAustenite, carbonInFerrite } from './carbon-diffusion.ts'
import type { CarbonLines } from './carbon-lines.ts'
import type { SkinStep } from './carbon-profile.ts'
import { metalLossRate, SCALE_PER_METAL } from './scale-growth.ts'

/** A surface through one stay in a fire or in the air: its temperature against time [s, K], as straight pieces. */
export interface SkinLeg {
  readonly points: readonly (readonly [timeS: number, temperatureK: number])[]
  readonly atmosphere: Atmosphere
  /** How often it is gone through. */
  readonly times: number
  /** The scale comes off at the end, as in a liquid. */
  readonly scaleFalls: boolean
}

/** One possible truth about what is known badly: factors on diffusion and on the depth of metal lost, an offset of the heat, and the carbon outside. */
export interface SkinTruth {
  readonly onDiffusion: number
  readonly onScaling: number
  readonly offK: number
  readonly outside: 'best' | 'least' | 'most'
}

export const BEST_TRUTH: SkinTruth = { onDiffusion: 1, onScaling: 1, offK: 0, outside: 'best' }

/** Colder than this nothing moves in a day [K]. */
const IDLE_K = 800
/** A leg is looked at in pieces no longer than this in heat [K]. */
const PIECE_K = 12

/** Steps for `carbonAfter`, what they come to, and the scale that lies on at the end. */
export interface SkinSteps {
  readonly steps: readonly SkinStep[]
  /** Diffusion length [m]: sqrt of the integral of D dt. */
  readonly diffusionM: number
  readonly metalLostM: number
  readonly scaleM: number
}

/**
 * Cuts the legs into about `wanted` steps of equal growth of the diffusion length, so that the start of each heat is not drowned. Metal is lost by
 * the parabolic law, whose scale lies on until it falls in a quench.
 */
export function skinSteps(
  legs: readonly SkinLeg[],
  steel: { readonly composition: Composition; readonly lines: CarbonLines },
  truth: SkinTruth,
  wanted = 24,
): SkinSteps {
  const pieces = legs.flatMap((leg) => {
    const once = piecesOf(leg, steel, truth)
    return Array.from({ length: leg.times }, () => once).flat()
  })
  const total = Math.sqrt(pieces.reduce((sum, piece) => sum + piece.diffusion, 0))
  const steps: SkinStep[] = []
  let diffusion = 0
  let reached = 0
  let lostM = 0
  let sinceFall = 0
  let open: { timeS: number; heat: number; diffusion: number; surfaceWtPct: number; lostFromM: number } | undefined
  const close = (): void => {
    if (open === undefined) return
    const { timeS, heat, surfaceWtPct, lostFromM } = open
    const temperatureK = open.diffusion > 0 ? heat / open.diffusion : 0
    steps.push({ timeS, temperatureK, surfaceWtPct, metalLostM: lostM + Math.sqrt(sinceFall) - lostFromM })
    reached = Math.sqrt(diffusion)
    open = undefined
  }
  const stride = total / wanted
  for (const piece of pieces) {
    if (open !== undefined && open.surfaceWtPct !== piece.surfaceWtPct) close()
    let share = 1
    while (share > 0) {
      open ??= { timeS: 0, heat: 0, diffusion: 0, surfaceWtPct: piece.surfaceWtPct, lostFromM: lostM + Math.sqrt(sinceFall) }
      // As much of the piece as brings the length to the end of the step.
      const end = reached + stride
      const room = end * end - diffusion
      const taken = piece.diffusion * share > room ? Math.max(1e-3, room / piece.diffusion) : share
      const now = Math.min(share, taken)
      open.timeS += piece.timeS * now
      open.heat += piece.diffusion * now * piece.temperatureK
      open.diffusion += piece.diffusion * now
      diffusion += piece.diffusion * now
      sinceFall += piece.loss * now
      share -= now
      if (share > 0) close()
    }
    if (piece.falls) {
      close()
      lostM += Math.sqrt(sinceFall)
      sinceFall = 0
    }
  }
  close()
  const onNow = Math.sqrt(sinceFall)
  return { steps, diffusionM: total, metalLostM: lostM + onNow, scaleM: SCALE_PER_METAL * onNow }
}

interface Piece {
  readonly timeS: number
  readonly temperatureK: number
  readonly diffusion: number
  readonly loss: number
  readonly surfaceWtPct: number
  readonly falls: boolean
}

function piecesOf(
  leg: SkinLeg,
  { composition, lines }: { composition: Composition; lines: CarbonLines },
  truth: SkinTruth,
): Piece[] {
  const { surfaceWtPct: outside, scaling } = ATMOSPHERE_NATURES[leg.atmosphere]
  const surfaceWtPct = outside[truth.outside]
  const found: Piece[] = []
  for (let i = 1; i < leg.points.length; i++) {
    const [fromS, fromK] = leg.points[i - 1]!
    const [toS, toK] = leg.points[i]!
    if (Math.max(fromK, toK) + truth.offK < IDLE_K || toS <= fromS) continue
    const cuts = Math.max(1, Math.ceil(Math.abs(toK - fromK) / PIECE_K))
    for (let k = 0; k < cuts; k++) {
      const temperatureK = fromK + ((toK - fromK) * (k + 0.5)) / cuts + truth.offK
      if (temperatureK < IDLE_K) continue
      const timeS = (toS - fromS) / cuts
      const onLoss = scaling * truth.onScaling
      found.push({
        timeS,
        temperatureK,
        diffusion: truth.onDiffusion * spreadRate(temperatureK, lines) * timeS,
        loss: onLoss * onLoss * metalLossRate(temperatureK, composition) * timeS,
        surfaceWtPct,
        falls: false,
      })
    }
  }
  const last = found[found.length - 1]
  if (last !== undefined && leg.scaleFalls) found[found.length - 1] = { ...last, falls: true }
  return found
}

/** How fast the loss spreads inward [m2/s]: carbon's diffusion in austenite, or the growth of a ferrite rim under Ac1. */
function spreadRate(temperatureK: number, lines: CarbonLines): number {
  const { ferrite, austenite } = lines.at(temperatureK)
  const bulk = Math.max(lines.bulkWtPct, 0.1)
  if (!Number.isFinite(austenite)) return (2 * carbonInFerrite(temperatureK) * ferrite) / bulk
  return carbonInAustenite(temperatureK, Math.min(bulk, 0.8) / 2)
}
