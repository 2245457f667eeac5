import type { Body } from '#engine/simulation/body.ts'
import { heatedFrom } from '#engine/simulation/heated-from.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { Treatment } from '#engine/simulation/treatment.ts'
import { historyOfNodes } from './history.ts'
import { spreadFromLadder } from './ladder.ts'
import type { Outlook } from './outlook.ts'
import { SteelBehaviour, spotHardness } from './spot-hardness.ts'
import type { SpotPlan } from './spots.ts'
import { NOMINAL_OFFSETS } from './unknowns.ts'

/** Best estimate at every node of the mesh [n each]. */
export interface NodeHardness {
  readonly quenchedHrc: Float64Array
  readonly temperedHrc: Float64Array
  /** Share that the last heat made austenite, 0..1. */
  readonly austeniteFraction: Float64Array
  /** Share of the whole that the quench made martensite, with the austenite retained in it, 0..1. */
  readonly martensiteFraction: Float64Array
  /** Shares of the whole that formed beside it, 0..1. */
  readonly ferriteFraction: Float64Array
  readonly pearliteFraction: Float64Array
  readonly bainiteFraction: Float64Array
}

export interface NodeOutlook extends NodeHardness {
  /** High less low of the tempered hardness: nine in ten lie within. */
  readonly bandHrc: Float64Array
}

/** The nominal hardness and structure of every node after a treatment: a few microseconds each. */
export function nodeHardness(job: Job, { state }: Pick<Treatment, 'state'>): NodeHardness {
  const history = historyOfNodes(state)
  const behaviour = new SteelBehaviour(job.steel, job.steel.composition, heatedFrom(job))
  const n = state.peakK.length
  const made = {
    quenchedHrc: new Float64Array(n),
    temperedHrc: new Float64Array(n),
    austeniteFraction: new Float64Array(n),
    martensiteFraction: new Float64Array(n),
    ferriteFraction: new Float64Array(n),
    pearliteFraction: new Float64Array(n),
    bainiteFraction: new Float64Array(n),
  }
  for (let i = 0; i < n; i++) {
    const at = spotHardness(behaviour, history, undefined, NOMINAL_OFFSETS, i)
    made.quenchedHrc[i] = at.quenchedHrc
    made.temperedHrc[i] = at.temperedHrc
    made.austeniteFraction[i] = at.austeniteFraction
    made.martensiteFraction[i] = at.martensiteFraction
    made.ferriteFraction[i] = at.ferriteFraction
    made.pearliteFraction[i] = at.pearliteFraction
    made.bainiteFraction[i] = at.bainiteFraction
  }
  return made
}

/** The width of the band at every node, from the ladder of the plan that the outlook was worked out on. */
export function bandOfNodes({ widthsHrc }: Outlook, { ladder }: SpotPlan, body: Body): Float64Array {
  if (ladder === undefined || widthsHrc === undefined)
    throw new Error('band of nodes: the outlook was worked out without a ladder')
  return spreadFromLadder(ladder, (spot) => widthsHrc.get(spot) ?? Number.NaN, body)
}
