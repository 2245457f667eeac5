import { randomStream } from '#engine/arithmetic/random.ts'
import { heatedFrom } from '#engine/simulation/heated-from.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { Response, SpotHistory } from './history.ts'
import { likelyPieces } from './likely-pieces.ts'
import type { Outlook } from './outlook.ts'
import { type SpotHardness, SteelBehaviour, spotHardness } from './spot-hardness.ts'
import type { SpotPlan } from './spots.ts'
import { spread, summed } from './summary.ts'
import { drawMember, NOMINAL_OFFSETS } from './unknowns.ts'

/** A picture's own places do with the first of the members, and below so many take the band of `likelyPieces`. */
const LADDER_MEMBERS = 200
const FEWEST_FOR_WIDTH = 20
/** Carbon in solution of a member to this [wt%]: half of it moves hardness by less than a unit, and in all directions. */
const MEMBER_WITHIN_WT_PCT = 0.03

/**
 * Runs the members of the ensemble over the spots of a plan, and sums them up by zone, probe and height. Without members the band is
 * that of `likelyPieces`, which takes a few milliseconds and no answer to the film.
 */
export function outlookOf(
  job: Job,
  plan: SpotPlan,
  history: SpotHistory,
  response: Response | undefined,
  options: { readonly members: number; readonly seed: number },
): Outlook {
  const { members, seed } = options
  const count = plan.spots.length
  const steel = new SteelBehaviour(job.steel, job.steel.composition, heatedFrom(job))
  const nominal = Array.from({ length: count }, (_, i) => spotHardness(steel, history, response, NOMINAL_OFFSETS, i))
  const counted = { members, seed }
  if (members === 0) {
    const pieces = likelyPieces(job, history, steel, nominal)
    return { ...summed({ plan, history, steel, nominal, ...pieces }, counted), ...widths(plan, nominal, pieces.tempered) }
  }
  const judged = plan.ladder?.from ?? count
  const quenched = nominal.map(() => new Float64Array(members))
  const tempered = nominal.map(() => new Float64Array(members))
  const random = randomStream(seed)
  for (let m = 0; m < members; m++) {
    const member = drawMember(job, random)
    const behaviour = new SteelBehaviour(job.steel, member.composition, heatedFrom(job), MEMBER_WITHIN_WT_PCT)
    for (let i = 0; i < (m < LADDER_MEMBERS ? count : judged); i++) {
      const { quenchedHrc, temperedHrc } = spotHardness(behaviour, history, response, member, i)
      quenched[i]![m] = quenchedHrc
      tempered[i]![m] = temperedHrc
    }
  }
  const outlook = summed({ plan, history, steel, nominal, quenched, tempered }, counted)
  if (plan.ladder === undefined) return outlook
  // So few pieces say nothing of how they differ.
  const forWidths = members < FEWEST_FOR_WIDTH ? likelyPieces(job, history, steel, nominal).tempered : tempered
  return { ...outlook, ...widths(plan, nominal, forWidths) }
}

/** Width of the band at each place of the plan's ladder. */
function widths(
  { ladder }: SpotPlan,
  nominal: readonly SpotHardness[],
  tempered: readonly Float64Array[],
): Pick<Outlook, 'widthsHrc'> {
  if (ladder === undefined) return {}
  const width = (spot: number): number => {
    const pieces = spot < ladder.from ? tempered[spot]! : tempered[spot]!.subarray(0, LADDER_MEMBERS)
    const { low, high } = spread(nominal[spot]!.temperedHrc, pieces)
    return high - low
  }
  return { widthsHrc: new Map(ladder.rungs.flatMap(({ at }) => at).map((spot) => [spot, width(spot)])) }
}
