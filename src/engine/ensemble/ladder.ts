import { radiusAt } from '#engine/geometry/outline.ts'
import { type Body, readAt, type Spot } from '#engine/simulation/body.ts'
import { innerRadiusM, type Ladder, type SpotPlan } from './spots.ts'

const SHARES = [0, 0.4, 0.8, 1] as const
/** Where hardness changes by more than this from one height to the next [HRC], three more rungs are put between them; in so many places at most. */
const STEEP_HRC = 6
const BETWEEN = [0.25, 0.5, 0.75]
const MOST_STEEP = 4

/**
 * The plan with a ladder on it. The ends of its rungs are places along the piece that the plan has already. A `bare` ladder has no others,
 * and costs nothing; a full one has two more within each rung, and more rungs where `temperedHrc` (nominal, of each node) is steep.
 *
 * Against widths worked out at every node of seven tools: from a full ladder 19 nodes in 20 come within 3 HRC, from a bare one within 9. At the
 * very edge of a hardened part, where the width leaps from 7 to 46 HRC between neighbouring nodes, either may be 20 out.
 */
export function withLadder(plan: SpotPlan, body: Body, temperedHrc: Float64Array, bare: boolean): SpotPlan {
  const { along } = plan
  const from = plan.spots.length
  if (bare) {
    const rungs = along.map(({ xM, skin, centre }) => ({ xM, at: [centre, skin] }))
    return { ...plan, ladder: { shares: [0, 1], rungs, from } }
  }
  const spots: Spot[] = [...plan.spots]
  const place = (xM: number, share: number): number => {
    const innerM = innerRadiusM(body, xM)
    return spots.push({ xM, rM: innerM + share * (radiusAt(body.outline, xM) - innerM) }) - 1
  }
  const rungs = along.map(({ xM, skin, centre }) => ({
    xM,
    at: [centre, place(xM, SHARES[1]), place(xM, SHARES[2]), skin],
  }))
  const between = steepHeightsM(plan, readAt(body, temperedHrc, plan.spots))
  rungs.push(...between.map((xM) => ({ xM, at: SHARES.map((share) => place(xM, share)) })))
  rungs.sort((a, b) => a.xM - b.xM)
  return { ...plan, spots, ladder: { shares: SHARES, rungs, from } }
}

/** Between the heights from one of which to the next hardness changes most. */
function steepHeightsM({ along }: SpotPlan, hrc: Float64Array): number[] {
  const changes = along.slice(1).map((here, k) => {
    const before = along[k]!
    const change = (of: 'skin' | 'centre'): number => Math.abs(hrc[here[of]]! - hrc[before[of]]!)
    return { fromM: before.xM, toM: here.xM, changeHrc: Math.max(change('skin'), change('centre')) }
  })
  return changes
    .filter(({ changeHrc }) => changeHrc > STEEP_HRC)
    .sort((a, b) => b.changeHrc - a.changeHrc || a.fromM - b.fromM)
    .slice(0, MOST_STEEP)
    .flatMap(({ fromM, toM }) => BETWEEN.map((share) => fromM + share * (toM - fromM)))
}

/** Widths at the places of a ladder (by index in the plan's spots), spread to every node of the mesh [n]: in proportion of height and of depth. */
export function spreadFromLadder(ladder: Ladder, widthAt: (spot: number) => number, body: Body): Float64Array {
  const { rungs, shares } = ladder
  const widths = rungs.map(({ at }) => at.map(widthAt))
  const { xM, rM } = body.mesh
  return xM.map((x, n) => {
    let k = 0
    while (k < rungs.length - 2 && rungs[k + 1]!.xM < x) k++
    const up = within(x, rungs[k]!.xM, rungs[k + 1]!.xM)
    const innerM = innerRadiusM(body, x)
    const share = within(rM[n]!, innerM, body.localRadiusM[n]!)
    let j = 0
    while (j < shares.length - 2 && shares[j + 1]! < share) j++
    const out = within(share, shares[j]!, shares[j + 1]!)
    const on = (rung: number): number => (1 - out) * widths[rung]![j]! + out * widths[rung]![j + 1]!
    return (1 - up) * on(k) + up * on(k + 1)
  })
}

function within(value: number, from: number, to: number): number {
  return to > from ? Math.min(1, Math.max(0, (value - from) / (to - from))) : 1
}
