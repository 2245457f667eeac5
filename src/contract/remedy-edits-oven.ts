import type { EngineFinding } from '#engine/findings/finding.ts'
import { rulingDrawing } from '#engine/findings/temper-choice.ts'
import { durationText } from '#units/duration.ts'
import { formatDifference } from '#units/temperature.ts'
import type { JobEdit } from './job-edits.ts'
import {
  gearPath,
  lastBefore,
  type PlacedStep,
  type Remedy,
  type RemedyGround,
  type StepOf,
  stepAt,
  writes,
} from './remedy-edits-ground.ts'
import { before, heatSetting } from './remedy-edits-settings.ts'
import { drawnOver, temperedIn } from './remedy-edits-temper.ts'
import { bestReachable, bestTemper, dialOf, missAt, overFire } from './remedy-edits-temper-choice.ts'

/** What the ovens cannot do, what their errors cost, and colours that mislead. */

/** What is not felt [HRC]. */
const AS_GOOD_HRC = 0.3
const WILL_DO_HRC = 0.5

/** Another oven; as hot as one here goes, where that will do; else over a fire by eye. */
export function ovenCannotReach({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const temper = stepAt(ground, where?.step, 'temper')
  if (temper === undefined) return otherFire(ground, where?.step)
  const { step } = temper
  const oven = ground.account.job.shop.ovens.find(({ name }) => name === step.in)
  const trueK = figures?.temperK ?? step.atK + (oven?.readsLowK ?? 0)
  const elsewhere = temperedIn(ground, temper, trueK)
  if (elsewhere.length > 0) return elsewhere
  const reached = bestReachable(ground, step, step.in)
  const within = reached !== undefined && reached.missHrc < WILL_DO_HRC ? temperedIn(ground, temper, reached.atK) : []
  return [...within, ...drawnOver(ground, temper.at, trueK)]
}

function otherFire(ground: RemedyGround, at: number | undefined): Remedy[] {
  const placed = stepAt(ground, at, 'heat', 'normalise', 'anneal', 'stress-relieve')
  const fire = overFire(ground)
  if (placed === undefined || fire === undefined) return []
  return [
    { says: `Do it in the ${fire.name} instead of the ${placed.step.in}`, edits: [writes([...placed.path, 'in'], fire.name)] },
  ]
}

/** A swing that a thick plate or a box of sand leaves [K]: common practice, no source. */
const EVENED_K = 5

/** Set by a thermometer beside the piece: at the same figure, or where another is better for the aims. */
export function ovenErrorMatters({ where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const temper = stepAt(ground, where?.step, 'temper')
  const ruling = rulingDrawing(ground.account)
  const path = temper === undefined ? undefined : gearPath(ground, 'ovens', temper.step.in)
  if (temper === undefined || ruling?.oven === undefined || path === undefined) return []
  const { units } = ground
  const best = bestTemper(ground, { ...temper.step, mostK: ruling.oven.maxK })
  const keeps = best === undefined || missAt(ground, ruling.setK, temper.step) <= best.missHrc + AS_GOOD_HRC
  const at = heatSetting(keeps ? ruling.setK : best.atK, units, 'down')
  const edits: JobEdit[] = [
    writes([...path, 'reads'], 'true'),
    writes([...path, 'swing'], formatDifference(Math.min(EVENED_K, ruling.oven.swingK), units)),
  ]
  if (Math.abs(at.si - temper.step.atK) > 1) edits.push(writes([...temper.path, 'at'], at.text))
  return [{ says: `Set the ${temper.step.in} to ${at.text} by a thermometer beside the piece, in a box of sand`, edits }]
}

/** Longer in the bath or shorter, where that is at fault; or the oven in place of the colours. */
export function coloursUnreliable({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const colours = stepAt(ground, where?.step, 'run-colours')
  const quench = colours === undefined ? undefined : lastBefore(ground, colours.at, 'quench')
  if (colours === undefined || quench === undefined) return []
  const share = figures?.cause === 'colour-never' ? SHORTER : figures?.cause === 'colour-races' ? LONGER : undefined
  return [...inOven(ground, colours, quench), ...(share === undefined ? [] : [dipFor(quench, quench.step.forS * share)])]
}

const SHORTER = 0.5
const LONGER = 1.5
const HOLD_S = 7200
/** Until it can be held in the hand [s]. */
const COLD_S = 240

function inOven(ground: RemedyGround, colours: PlacedStep, quench: PlacedStep<StepOf<'quench'>>): Remedy[] {
  const times = Math.max(1, ground.account.steel.cycles.least)
  const best = bestReachable(ground, { holdS: HOLD_S, times })
  if (best === undefined) return []
  const at = dialOf(best.gear, best.atK, ground.units)
  return [
    {
      says: `Temper it at ${at.text} in the ${best.gear.name} instead of by its colours`,
      edits: [
        writes([...quench.path, 'for'], durationText(Math.max(COLD_S, quench.step.forS))),
        writes(colours.path, { do: 'temper', in: best.gear.name, at: at.text, hold: durationText(HOLD_S), times }),
      ],
    },
  ]
}

function dipFor({ step, path }: PlacedStep<StepOf<'quench'>>, forS: number): Remedy {
  const text = durationText(Math.max(1, Math.round(forS)))
  return {
    says: `Leave it in the bath ${text} instead of ${before.time(step.forS)}`,
    edits: [writes([...path, 'for'], text)],
  }
}
