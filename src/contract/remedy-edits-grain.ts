import type { EngineFinding } from '#engine/findings/finding.ts'
import { decarburisedM, isNormalisedBefore, soakWanted, timeToGapS } from '#engine/findings/hardening-heat.ts'
import type { HeatRecord, StepRecord } from '#engine/simulation/records.ts'
import { atmosphereOf } from '#engine/surface-heat/atmosphere.ts'
import type { JobEdit } from './job-edits.ts'
import {
  type PlacedStep,
  placedSteps,
  type Remedy,
  type RemedyGround,
  type StepOf,
  stepAt,
  writes,
} from './remedy-edits-ground.ts'
import { heatRecord, held, overheated } from './remedy-edits-heat.ts'
import { before, heatSetting, holdSetting, inTimes } from './remedy-edits-settings.ts'

/** What long and many heats do: coarse grain, and a skin without carbon. */

export function coarseGrain(finding: EngineFinding, ground: RemedyGround): Remedy[] {
  const { figures, where } = finding
  if (figures?.cause === 'coarse-bar') return normaliseFirst(ground, figures.times ?? 3)
  const heat = stepAt(ground, where?.step, 'heat')
  const record = heatRecord(ground, where?.step)
  if (heat === undefined || record === undefined) return []
  const shorter = figures?.holdS !== undefined && figures.holdS < record.holdS ? held(heat, ground, figures.holdS) : []
  return figures?.heatToK === undefined ? shorter : overheated(finding, ground)
}

/** Two minutes at heat do no harm and let the middle follow: common practice, no source [s]. */
const NORMALISE_SOAK_S = 120

function normaliseFirst(ground: RemedyGround, times: number): Remedy[] {
  const { normaliseK } = ground.practice()
  const heat = placedSteps(ground).find(({ step }) => step.do === 'heat') as PlacedStep<StepOf<'heat'>> | undefined
  const record = heatRecord(ground, heat?.at)
  if (normaliseK === undefined || heat === undefined || record === undefined) return []
  const to = heatSetting(normaliseK, ground.units).text
  const upS = timeToGapS(record, 15)
  const hold = holdSetting(Number.isFinite(upS) ? upS + NORMALISE_SOAK_S : record.holdS).text
  return [
    {
      says: `Normalise it${inTimes(times)} at ${to} before you harden it`,
      edits: [{ path: heat.path, insert: { do: 'normalise', in: heat.step.in, to, hold, times } }],
    },
  ]
}

/** A closed pipe with a bit of charcoal in it; else no longer at heat than the middle needs, where that takes a good part of the skin away. */
export function decarburisedSkin(_finding: EngineFinding, ground: RemedyGround): Remedy[] {
  const hot = hotSteps(ground)
  const now = depthM(ground, ground.account.records)
  const worthwhile = (records: readonly StepRecord[]): boolean => depthM(ground, records) <= MUCH_LESS * now
  const shorter = hot.map(({ step, record, path }) => ({ step, record, path, hold: holdSetting(needS(ground, record)) }))
  const less = shorter.filter(({ step, hold }) => hold.si < step.holdS)
  const shortened = ground.account.records.map((record) => {
    const found = less.find((each) => each.record === record)
    return found === undefined ? record : ({ ...record, holdS: found.hold.si } as StepRecord)
  })
  const remedies: Remedy[] = []
  if (less.length > 0 && worthwhile(shortened))
    remedies.push({
      says: `${sentences(less.map(({ step, hold }) => `${WORD[step.do]} ${hold.text} instead of ${before.time(step.holdS)}`))}: no longer at heat than the middle needs`,
      edits: less.map(({ path, hold }): JobEdit => writes([...path, 'hold'], hold.text)),
    })
  return [...inPipe(hot), ...remedies]
}

/** Half of it gone is worth the trouble. */
const MUCH_LESS = 0.5
const WORD = { heat: 'hold the hardening heat', normalise: 'hold the normalising', anneal: 'hold the annealing' } as const

type HotStep = StepOf<'heat' | 'normalise' | 'anneal'>
interface Hot extends PlacedStep<HotStep> {
  readonly record: HeatRecord
}

function hotSteps(ground: RemedyGround): Hot[] {
  return placedSteps(ground).flatMap((placed): Hot[] => {
    const { step, at } = placed
    const record = ground.account.records.find((each) => each.step === at)
    if (step.do !== 'heat' && step.do !== 'normalise' && step.do !== 'anneal') return []
    return record !== undefined && 'widestGapK' in record ? [{ ...placed, step, record }] : []
  })
}

function inPipe(hot: readonly Hot[]): Remedy[] {
  const open = hot.filter(({ record }) => atmosphereOf(record.fire) !== 'packed')
  if (open.length === 0) return []
  return [
    {
      says: `Heat it in a closed pipe with a bit of charcoal in it${open.length > 1 ? ', every time' : ''}`,
      edits: open.map(({ path }) => writes([...path, 'atmosphere'], 'packed')),
    },
  ]
}

function depthM({ account }: RemedyGround, records: readonly StepRecord[]): number {
  return decarburisedM(records, account.job.process, account.steel.critical.ac1K)
}

/** What a hold needs: until the middle is up, and the soak of the steel after it. */
function needS({ account }: RemedyGround, record: HeatRecord): number {
  const upS = timeToGapS(record, 15)
  if (!Number.isFinite(upS)) return record.holdS
  const soakS =
    record.kind === 'heat' ? soakWanted(account.steel, isNormalisedBefore(account.records, record.step)).goodS : NORMALISE_SOAK_S
  return record.kind === 'anneal' ? record.holdS : upS + soakS
}

function sentences(parts: readonly string[]): string {
  const all = parts.join(', ')
  return all.charAt(0).toUpperCase() + all.slice(1)
}
