import type { Wording } from '#engine/findings/wording.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { Refusal } from './candidates.ts'
import type { Route } from './routes.ts'
import type { SteelPractice } from './steel-practice.ts'

export interface None {
  readonly because: string
  readonly nearest: string
}

export function noBath(refused: readonly Refusal[], practice: SteelPractice): None {
  return {
    because: refused[0]?.because ?? 'the shop has no bath',
    nearest: `a bath that suits the steel: ${practice.media.join(' or ')}`,
  }
}

/** Why no way will do, from the best one that was tried: what it misses, and what it would give instead. */
export function whyNone(job: Job, nearest: Route | undefined, wording: Wording): None {
  if (nearest === undefined) return { because: 'no temper within reach of the ovens was found', nearest: 'a hotter oven' }
  const worst = [...nearest.outlook.zones].sort((a, b) => a.chance - b.chance)[0]
  const stops = nearest.findings.filter(({ id }) => REASONS.has(id))
  const because =
    stops.length > 0
      ? stops.map(({ says, because: why }) => `${says} ${why}`).join(' ')
      : worst === undefined
        ? 'no zone has an aim'
        : `the ${worst.zone.name} comes out ${worst.tooHard > worst.tooSoft ? 'too hard' : 'too soft'} in ${Math.round(100 * Math.max(worst.tooHard, worst.tooSoft))} of 100 pieces like ${job.piece}`
  const had = nearest.outlook.zones
    .map(
      ({ zone, temperedHrc }) =>
        `${zone.name} ${wording.hardness(temperedHrc.value)} (${wording.hardness(temperedHrc.low)} to ${wording.hardness(temperedHrc.high)})`,
    )
    .join('; ')
  return { because, nearest: `${nearest.says}: ${had}` }
}

const REASONS: ReadonlySet<string> = new Set([
  'oven-cannot-reach',
  'aim-out-of-reach',
  'steel-will-not-harden',
  'bath-too-slow',
  'bath-too-shallow',
  'bath-too-small',
])
