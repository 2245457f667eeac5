import type { Outlook } from '#engine/ensemble/outlook.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { Treatment } from '#engine/simulation/treatment.ts'
import type { Account } from './account.ts'
import type { EngineFinding } from './finding.ts'
import { findingsIn } from './rules.ts'
import { steelFacts } from './steel-sheet.ts'
import { IN_METRIC, type Wording } from './wording.ts'

/** A job that has been treated, with what came of it. */
export interface Treated {
  readonly job: Job
  readonly treatment: Pick<Treatment, 'records' | 'body'>
  readonly outlook: Outlook
}

export interface FindingsInput extends Treated {
  /** How quantities are written; metric unless given. */
  readonly wording?: Wording
}

/** All that is wrong with a job, or may hurt somebody: one finding for each cause and place, worst first. */
export function findingsOf({ wording = IN_METRIC, ...treated }: FindingsInput): EngineFinding[] {
  return findingsIn(accountOf(treated), wording)
}

/** What the rules judge by, for whoever asks more of it than the findings. */
export function accountOf({ job, treatment, outlook }: Treated): Account {
  return {
    job,
    records: treatment.records,
    outlook,
    lengthM: treatment.body.lengthM,
    steel: steelFacts(job.steel),
  }
}
