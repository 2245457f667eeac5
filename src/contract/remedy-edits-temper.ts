import type { EngineFinding } from '#engine/findings/finding.ts'
import { leastHeatK } from '#engine/findings/hardening-heat.ts'
import type { TemperRecord } from '#engine/simulation/records.ts'
import { durationText } from '#units/duration.ts'
import type { JobEdit } from './job-edits.ts'
import { drawn } from './remedy-edits-draw.ts'
import {
  lastBefore,
  type PlacedStep,
  placedSteps,
  type Remedy,
  type RemedyGround,
  type StepOf,
  stepAt,
  writes,
  zoneNamed,
} from './remedy-edits-ground.ts'
import { heatRecord } from './remedy-edits-heat.ts'
import { before, heatSetting, inTimes } from './remedy-edits-settings.ts'
import { bestReachable, bestTemper, dialOf, missAt, overFire, temperGearFor } from './remedy-edits-temper-choice.ts'

/** Tempering: whether, when, how hot and how often. */

type TemperStep = PlacedStep<StepOf<'temper'>>

/** Usual first temper: two hours in the oven, at a pale straw where nothing is asked (common practice, no source) [s, K]. */
const HOLD_S = 7200
const PALE_STRAW_K = 478.15

export function temperSoon({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  if (figures?.cause === 'late') return atOnce(ground, where?.step)
  const quench = placedSteps(ground).findLast(({ step }) => step.do === 'quench')
  if (quench === undefined) return []
  const times = Math.max(1, figures?.times ?? 1)
  const wanted = bestReachable(ground, { holdS: HOLD_S, times, outOf: brittle(ground) })
  const asked = wanted?.atK ?? PALE_STRAW_K
  const gear = wanted?.gear ?? temperGearFor(ground, asked)
  if (gear === undefined) return []
  const at = dialOf(gear, asked, ground.units)
  return [
    {
      says: `Temper it${inTimes(times)} at ${at.text} in the ${gear.name}, as soon as it can be held in the hand`,
      edits: [
        {
          path: ['process', quench.place + 1],
          insert: { do: 'temper', in: gear.name, at: at.text, hold: durationText(HOLD_S), times },
        },
      ],
    },
  ]
}

/** What lies between the quench and the temper goes. */
function atOnce(ground: RemedyGround, temperAt: number | undefined): Remedy[] {
  const temper = stepAt(ground, temperAt, 'temper')
  const quench = temper === undefined ? undefined : lastBefore(ground, temper.at, 'quench')
  if (temper === undefined || quench === undefined) return []
  const between = placedSteps(ground).filter(({ at, step }) => at > quench.at && at < temper.at && step.do === 'carry')
  if (between.length === 0) return []
  return [
    {
      says: 'Have the oven hot before the quench, and put it in at once',
      // From the back, so that the places of the others stand.
      edits: between.reverse().map(({ path }): JobEdit => ({ path })),
    },
  ]
}

export function temperTooCool({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  if (figures?.temperK === undefined) return []
  if (figures.cause === 'spoils-another') return drawn(ground, zoneNamed(ground, where?.zone))
  const again = retempered(ground, where?.step, figures.temperK)
  return again.length > 0 ? again : drawnOver(ground, where?.step, figures.temperK)
}

/** By eye over a fire, where no oven goes so hot. */
export function drawnOver(ground: RemedyGround, at: number | undefined, trueK: number): Remedy[] {
  const temper = stepAt(ground, at, 'temper')
  const fire = overFire(ground)
  if (temper === undefined || fire === undefined || fire.name === temper.step.in) return []
  const dial = heatSetting(trueK, ground.units)
  return [
    {
      says: `Draw it over the ${fire.name} by eye, at ${dial.text}, instead of ${before.heat(temper.step.atK, ground.units)} in the ${temper.step.in}`,
      edits: [writes([...temper.path, 'in'], fire.name), writes([...temper.path, 'at'], dial.text)],
    },
  ]
}

export function temperTooHot({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  return figures?.temperK === undefined ? [] : retempered(ground, where?.step, figures.temperK)
}

/** The same temper, or the same colours, to another heat: the one that the rule names, or the best for all zones where that is better. */
export function retempered(ground: RemedyGround, at: number | undefined, namedK: number): Remedy[] {
  const colours = stepAt(ground, at, 'run-colours')
  const { units } = ground
  if (colours !== undefined) {
    const stop = heatSetting(namedK, units)
    return [
      {
        says: `Stop the colours at ${stop.text} instead of ${before.heat(colours.step.stopAtK, units)}`,
        edits: [writes([...colours.path, 'stop'], stop.text)],
      },
    ]
  }
  const temper = stepAt(ground, at, 'temper')
  if (temper === undefined) return []
  const { step } = temper
  const best = bestTemper(ground, { ...step, outOf: brittle(ground) })
  const trueK = best !== undefined && best.missHrc < missAt(ground, namedK, step) ? best.atK : namedK
  return temperedIn(ground, temper, trueK)
}

export function temperedIn(ground: RemedyGround, { step, path }: TemperStep, trueK: number): Remedy[] {
  const gear = temperGearFor(ground, trueK, step.in)
  if (gear === undefined) return []
  const dial = dialOf(gear, trueK, ground.units)
  if (gear.name === step.in && Math.abs(dial.si - step.atK) < 1) return []
  const from = before.heat(step.atK, ground.units)
  return gear.name === step.in
    ? [{ says: `Temper at ${dial.text} in the ${gear.name} instead of ${from}`, edits: [writes([...path, 'at'], dial.text)] }]
    : [
        {
          says: `Temper at ${dial.text} in the ${gear.name} instead of ${from} in the ${step.in}`,
          edits: [writes([...path, 'in'], gear.name), writes([...path, 'at'], dial.text)],
        },
      ]
}

export function moreThanOneTemper({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const temper = stepAt(ground, where?.step, 'temper')
  if (temper === undefined || figures?.times === undefined) return []
  return [
    {
      says: `Temper it${inTimes(figures.times)} instead of${inTimes(temper.step.times) || ' once'}`,
      edits: [writes([...temper.path, 'times'], figures.times)],
    },
  ]
}

/** Softer by more than this for want of a brittle temper is no mend [HRC]. */
const GIVES_UP_HRC = 0.75

/** On either side of the brittle range, the better first; only where the aims allow it. */
export function embrittlingRange({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const temper = stepAt(ground, where?.step, 'temper')
  const record = ground.account.records.find((each): each is TemperRecord => each.kind === 'temper' && each.step === where?.step)
  const range = figures?.brittleK
  if (temper === undefined || record === undefined || range === undefined) return []
  const nowHrc = missAt(ground, record.trueK, temper.step)
  const outOf = brittle(ground)
  return [
    bestTemper(ground, { ...temper.step, outOf, mostK: range[0] - CLEAR_K }),
    bestTemper(ground, { ...temper.step, outOf, leastK: range[1] + CLEAR_K }),
  ]
    .flatMap((found) => (found === undefined || found.missHrc > nowHrc + GIVES_UP_HRC ? [] : [found]))
    .sort((a, b) => a.missHrc - b.missHrc)
    .flatMap(({ atK }) => temperedIn(ground, temper, atK))
}

/** An oven is set no closer than this [K]. */
const CLEAR_K = 3

function brittle({ account }: RemedyGround): (readonly [number, number])[] {
  return account.steel.embrittling.map(({ fromK, toK }) => [fromK - CLEAR_K, toK + CLEAR_K] as const)
}

/** No fire is held to the very end of a range [K]. */
const INSIDE_K = 5

/** From the low end of its range, and tempered twice. */
export function retainedAustenite({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const heat = stepAt(ground, where?.step, 'heat')
  const record = heatRecord(ground, where?.step)
  if (heat === undefined || record === undefined || figures?.heatToK === undefined) return []
  const to = heatSetting(Math.max(figures.heatToK + INSIDE_K, leastHeatK(ground.account.steel)), ground.units, 'up')
  if (to.si > heat.step.toK - 8) return []
  const temper = placedSteps(ground).find(({ at, step }) => at > heat.at && step.do === 'temper' && step.part === undefined)
  const twice = temper?.step.do === 'temper' && temper.step.times === 1 ? temper : undefined
  return [
    {
      says: `Harden it from ${to.text} instead of ${before.heat(heat.step.toK, ground.units)}${twice === undefined ? '' : ', and temper it twice'}`,
      edits: [writes([...heat.path, 'to'], to.text), ...(twice === undefined ? [] : [writes([...twice.path, 'times'], 2)])],
    },
  ]
}
