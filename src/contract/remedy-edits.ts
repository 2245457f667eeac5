import type { Account } from '#engine/findings/account.ts'
import type { EngineFinding, FindingId } from '#engine/findings/finding.ts'
import { accountOf, type Treated } from '#engine/findings/findings.ts'
import { type SteelPractice, steelPractice } from '#engine/planning/steel-practice.ts'
import { type Layout, layoutOf } from '#engine/planning/zones.ts'
import type { System } from '#units/length.ts'
import { bathTooFast, bathTooSlow, quenchLineAtShoulder } from './remedy-edits-bath.ts'
import { coarseGrain, decarburisedSkin } from './remedy-edits-grain.ts'
import type { Remedy, RemedyGround } from './remedy-edits-ground.ts'
import { overheated, soakTooShort, underheated, unevenHeat } from './remedy-edits-heat.ts'
import { coloursUnreliable, ovenCannotReach, ovenErrorMatters } from './remedy-edits-oven.ts'
import { aimOutOfReach, redShort, steelWillNotHarden } from './remedy-edits-reach.ts'
import { sectionJump, sharpInnerCorner, thinBesideThick } from './remedy-edits-shape.ts'
import { hollowEdgeChips, struckEndHard } from './remedy-edits-struck.ts'
import { bathTooCold, bathTooHot, bathTooShallow, bathTooSmall } from './remedy-edits-tank.ts'
import {
  embrittlingRange,
  moreThanOneTemper,
  retainedAustenite,
  temperSoon,
  temperTooCool,
  temperTooHot,
} from './remedy-edits-temper.ts'

export type { Remedy } from './remedy-edits-ground.ts'

/** What to do about each fault. Fume, fire and water in the oil have a caution and no change of the job: nobody tries those out. */
const MENDS: { readonly [Id in FindingId]?: (finding: EngineFinding, ground: RemedyGround) => Remedy[] } = {
  overheated,
  underheated,
  'soak-too-short': soakTooShort,
  'uneven-heat': unevenHeat,
  'steel-will-not-harden': steelWillNotHarden,
  'bath-too-slow': bathTooSlow,
  'bath-too-fast': bathTooFast,
  'bath-too-hot': bathTooHot,
  'bath-too-cold': bathTooCold,
  'bath-too-small': bathTooSmall,
  'bath-too-shallow': bathTooShallow,
  'quench-line-at-shoulder': quenchLineAtShoulder,
  'sharp-inner-corner': sharpInnerCorner,
  'section-jump': sectionJump,
  'thin-beside-thick': thinBesideThick,
  'temper-soon': temperSoon,
  'temper-too-cool-for-aim': temperTooCool,
  'temper-too-hot-for-aim': temperTooHot,
  'oven-cannot-reach': ovenCannotReach,
  'oven-error-matters': ovenErrorMatters,
  'colours-unreliable': coloursUnreliable,
  'embrittling-range': embrittlingRange,
  'retained-austenite': retainedAustenite,
  'more-than-one-temper': moreThanOneTemper,
  'struck-end-hard': struckEndHard,
  'hollow-edge-chips': hollowEdgeChips,
  'decarburised-skin': decarburisedSkin,
  'coarse-grain': coarseGrain,
  'red-short': redShort,
  'aim-out-of-reach': aimOutOfReach,
}

/** A job that was worked out, beside the document that it was read from. */
export interface RemedyInput extends Treated {
  readonly document: unknown
  readonly account?: Account
  readonly units: System
}

/** For a job that was worked out: what can be tried about each of its findings. */
export type Mends = (input: RemedyInput) => (finding: EngineFinding) => readonly Remedy[]

export const mends: Mends = (input) => {
  const ground = remedyGround(input)
  return (finding) => remedyEdits(finding, ground)
}

/** More than this are no help to choose from. */
const MOST = 3

/**
 * For each finding what can be tried in the job: changes of the document, the best first and three at most; empty where nothing in the job
 * mends it. Figures are those that a shop can set, in the units of who reads.
 */
function remedyEdits(finding: EngineFinding, ground: RemedyGround): readonly Remedy[] {
  const remedies = MENDS[finding.id]?.(finding, ground) ?? []
  return remedies.filter((each, i) => remedies.findIndex(({ says }) => says === each.says) === i).slice(0, MOST)
}

/** What remedies are worked out from. */
function remedyGround({ document, account, units, ...treated }: RemedyInput): RemedyGround {
  const { job, treatment } = treated
  return {
    document,
    account: account ?? accountOf(treated),
    units,
    layout: once((): Layout => layoutOf(job, treatment.body)),
    practice: once((): SteelPractice => steelPractice(job.steel)),
  }
}

function once<Value>(work: () => Value): () => Value {
  let done: { readonly value: Value } | undefined
  return () => {
    done ??= { value: work() }
    return done.value
  }
}
