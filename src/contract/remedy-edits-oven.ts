import type { EngineFinding } from '#engine/findings/finding.ts'
import { rulingDrawing } from '#engine/findings/temper-choice.ts'
import type { Fire } from '#engine/surface-heat/gear.ts'
import { durationText } from '#units/duration.ts'
import { formatDifference } from '#units/temperature.ts'
import type { JobEdit } from './job-edits.ts'
import { gearPath, lastBefore, placedSteps, type Remedy, type RemedyGround, stepAt, writes } from './remedy-edits-ground.ts'
import { before, heatSetting } from './remedy-edits-settings.ts'
import { temperedIn } from './remedy-edits-temper.ts'
import { bestTemper, dialOf, missAt, temperGearFor } from './remedy-edits-temper-choice.ts'

/** What the ovens cannot do, what their errors cost, and colours that mislead. */

export function ovenCannotReach({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const temper = stepAt(ground, where?.step, 'temper')
  if (temper === undefined) return figures?.temperK === undefined ? otherFire(ground, where?.step) : []
  const { step, path } = temper
  const oven = ground.account.job.shop.ovens.find(({ name }) => name === step.in)
  const trueK = figures?.temperK ?? step.atK + (oven?.readsLowK ?? 0)
  const elsewhere = temperedIn(ground, temper, trueK)
  const fire = byFire(ground.account.job.shop.fires)
  const overFire: Remedy[] =
    fire === undefined || elsewhere.length > 0
      ? []
      : [
          {
            says: `Draw it over the ${fire.name} by eye, at ${heatSetting(trueK, ground.units).text}`,
            edits: [writes([...path, 'in'], fire.name), writes([...path, 'at'], heatSetting(trueK, ground.units).text)],
          },
        ]
  // As hot as this oven goes, where that will do.
  const asFar =
    oven === undefined || figures?.temperK !== undefined
      ? undefined
      : bestTemper(ground, { ...step, mostK: oven.maxK + oven.readsLowK })
  const within = asFar !== undefined && asFar.missHrc < WILL_DO_HRC ? temperedIn(ground, temper, asFar.atK) : []
  return [...elsewhere, ...within, ...overFire]
}

const WILL_DO_HRC = 0.5

/** Muffles first: they hold a heat. */
function byFire(fires: readonly Fire[]): Fire | undefined {
  const order = ['muffle', 'gas', 'charcoal', 'coal']
  return [...fires].filter(({ kind }) => order.includes(kind)).sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind))[0]
}

function otherFire(ground: RemedyGround, at: number | undefined): Remedy[] {
  const placed = stepAt(ground, at, 'heat', 'normalise', 'anneal', 'stress-relieve')
  const fire = byFire(ground.account.job.shop.fires)
  if (placed === undefined || fire === undefined) return []
  return [
    { says: `Do it in the ${fire.name} instead of the ${placed.step.in}`, edits: [writes([...placed.path, 'in'], fire.name)] },
  ]
}

/** A swing that a thick plate or a box of sand leaves [K]: common practice, no source. */
const EVENED_K = 5

/** Set by a thermometer beside the piece; to what the oven truly held, where the dial's own figure would miss. */
export function ovenErrorMatters({ where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const temper = stepAt(ground, where?.step, 'temper')
  const ruling = rulingDrawing(ground.account)
  const path = temper === undefined ? undefined : gearPath(ground, 'ovens', temper.step.in)
  if (temper === undefined || ruling?.oven === undefined || path === undefined) return []
  const { units } = ground
  const better =
    missAt(ground, ruling.setK, temper.step) <= missAt(ground, ruling.trueK, temper.step) ? ruling.setK : ruling.trueK
  const at = heatSetting(better, units)
  const edits: JobEdit[] = [
    writes([...path, 'reads'], 'true'),
    writes([...path, 'swing'], formatDifference(Math.min(EVENED_K, ruling.oven.swingK), units)),
  ]
  if (Math.abs(at.si - temper.step.atK) > 1) edits.push(writes([...temper.path, 'at'], at.text))
  return [{ says: `Set the ${temper.step.in} to ${at.text} by a thermometer beside the piece, in a box of sand`, edits }]
}

/** The oven in place of the colours; or more heat left behind the edge, or less of it. */
export function coloursUnreliable({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const colours = stepAt(ground, where?.step, 'run-colours')
  const quench = colours === undefined ? undefined : lastBefore(ground, colours.at, 'quench')
  if (colours === undefined || quench === undefined) return []
  const dip: Remedy[] =
    figures?.cause === 'colour-never' || figures?.cause === 'colour-races'
      ? [dipFor(quench, quench.step.forS * (figures.cause === 'colour-never' ? 0.5 : 1.5))]
      : []
  return [...inOven(ground, colours, quench), ...dip]
}

const HOLD_S = 7200
/** Until it can be held in the hand [s]. */
const COLD_S = 240

function inOven(
  ground: RemedyGround,
  colours: { readonly path: JobEdit['path'] },
  quench: NonNullable<ReturnType<typeof lastBefore<'quench'>>>,
): Remedy[] {
  const times = Math.max(1, ground.account.steel.cycles.least)
  const best = bestTemper(ground, { holdS: HOLD_S, times })
  const gear = best === undefined ? undefined : temperGearFor(ground, best.atK)
  if (best === undefined || gear === undefined || placedSteps(ground).length === 0) return []
  const at = dialOf(gear, best.atK, ground.units)
  return [
    {
      says: `Temper it at ${at.text} in the ${gear.name} instead of by its colours`,
      edits: [
        writes([...quench.path, 'for'], durationText(Math.max(COLD_S, quench.step.forS))),
        writes(colours.path, { do: 'temper', in: gear.name, at: at.text, hold: durationText(HOLD_S), times }),
      ],
    },
  ]
}

function dipFor({ step, path }: NonNullable<ReturnType<typeof lastBefore<'quench'>>>, forS: number): Remedy {
  const s = Math.max(1, Math.round(forS))
  return {
    says: `Leave it in the bath ${durationText(s)} instead of ${before.time(step.forS)}`,
    edits: [writes([...path, 'for'], durationText(s))],
  }
}
