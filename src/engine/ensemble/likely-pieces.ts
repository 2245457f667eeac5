import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { heatedFrom } from '#engine/simulation/heated-from.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { BathKind } from '#engine/surface-heat/gear.ts'
import { peakFollows, type Response, SLOWEST_LN_S, type SpotHistory } from './history.ts'
import { type Heated, hardnessOf, heatedSpot, type SpotHardness, SteelBehaviour, spotHardness } from './spot-hardness.ts'
import { hardeningBathKind, type Limits, limitsOf, NOMINAL_OFFSETS, outerComposition } from './unknowns.ts'

/** Carbon in solution to which the outer bars are worked out. */
const OUTER_WITHIN_WT_PCT = 0.05

/** Pieces that stand for all: from the softest to the hardest, each as likely as the next. */
const PIECES = 60

/**
 * The cooling time goes with this power of the film, where no second quench has shown it. Middle of the drafts of eighteen tools from
 * 3 to 75 mm; in oil, water and brine nine places in ten lie between -0.2 and -1.8, in still air, where most heat is radiated, by -0.2.
 */
const AIRS: ReadonlySet<BathKind> = new Set(['still air', 'moving air'])
const POWER_OF_FILM = { liquid: -1.1, air: -0.2 } as const

/**
 * A band without an ensemble, for a sketch: each unknown by itself is set to its outer limits (nine in ten lie within), and what it does
 * to a spot is added up in squares, what hardens and what softens apart. The pieces then run from softest to hardest with
 * all spots of a piece alike.
 *
 * Left out: how unknowns work together, how one place of a piece differs from the next within it, and how each place answers to the
 * film, for which one usual power is taken. Bands come within 2 HRC of those of 400 members at most places; chances within about 0.2.
 */
export function likelyPieces(
  job: Job,
  history: SpotHistory,
  steel: SteelBehaviour,
  nominal: readonly SpotHardness[],
): { readonly quenched: readonly Float64Array[]; readonly tempered: readonly Float64Array[] } {
  const reach = new Reach(nominal)
  const response = usualResponse(job, history)
  const limits = limitsOf(job)
  // Only the fire changes what the quench finds.
  const asMeant = nominal.map((_, i) => heatedSpot(steel, history, response, NOMINAL_OFFSETS, i))
  for (const unknown of Object.keys(NOMINAL_OFFSETS) as (keyof Limits)[])
    for (const way of [-1, 1]) {
      const offsets = { ...NOMINAL_OFFSETS, [unknown]: way * limits[unknown] }
      const heated = (i: number): Heated =>
        unknown === 'heatOffsetK' ? heatedSpot(steel, history, response, offsets, i) : asMeant[i]!
      reach.add((i) => hardnessOf(heated(i), history, response, offsets, i))
    }
  for (const part of ['carbon', 'others'] as const)
    for (const way of [-1, 1] as const) {
      const composition = outerComposition(job.steel, part, way)
      if (composition === undefined) continue
      const behaviour = new SteelBehaviour(job.steel, composition, heatedFrom(job), OUTER_WITHIN_WT_PCT)
      reach.add((i) => spotHardness(behaviour, history, response, NOMINAL_OFFSETS, i))
    }
  return { quenched: reach.pieces('quenchedHrc'), tempered: reach.pieces('temperedHrc') }
}

type Hardness = 'quenchedHrc' | 'temperedHrc'

/** Sums of squares of what makes each spot softer and harder [HRC2]. */
class Reach {
  private readonly nominal: readonly SpotHardness[]
  private readonly squares: { readonly [Of in Hardness]: { readonly down: Float64Array; readonly up: Float64Array } }

  constructor(nominal: readonly SpotHardness[]) {
    this.nominal = nominal
    const sums = () => ({ down: new Float64Array(nominal.length), up: new Float64Array(nominal.length) })
    this.squares = { quenchedHrc: sums(), temperedHrc: sums() }
  }

  add(changed: (spot: number) => SpotHardness): void {
    for (let i = 0; i < this.nominal.length; i++) {
      const now = changed(i)
      for (const of of ['quenchedHrc', 'temperedHrc'] as const) {
        const by = now[of] - this.nominal[i]![of]
        const sums = by < 0 ? this.squares[of].down : this.squares[of].up
        sums[i] = sums[i]! + by * by
      }
    }
  }

  pieces(of: Hardness): Float64Array[] {
    const { down, up } = this.squares[of]
    return this.nominal.map((at, i) => LEVELS.map((level) => at[of] + level * Math.sqrt(level < 0 ? down[i]! : up[i]!)))
  }
}

/** Standard normal at the middle of each piece's share, as parts of the outer limits of nine in ten. */
const LEVELS = Float64Array.from(
  { length: PIECES },
  (_, k) => normalQuantile((k + 0.5) / PIECES, 0, 1) / normalQuantile(0.95, 0, 1),
)

function usualResponse(job: Job, history: SpotHistory): Response | undefined {
  const heat = job.process.findLast((step) => step.do === 'heat')
  if (heat === undefined) return undefined
  const power = POWER_OF_FILM[AIRS.has(hardeningBathKind(job)) ? 'air' : 'liquid']
  const slope = history.lnCoolingS.map((lnS) => (lnS >= SLOWEST_LN_S - 1e-6 ? 0 : power))
  return { lnCoolingPerLnFilmUp: slope, lnCoolingPerLnFilmDown: slope, peakPerK: peakFollows(history, heat.toK) }
}
