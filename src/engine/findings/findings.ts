import type { Outlook } from '#engine/ensemble/outlook.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { Treatment } from '#engine/simulation/treatment.ts'
import type { Account } from './account.ts'
import type { EngineFinding } from './finding.ts'
import { findingsIn } from './rules.ts'
import { steelFacts } from './steel-sheet.ts'
import { IN_METRIC, type Wording } from './wording.ts'

export interface FindingsInput {
  readonly job: Job
  readonly treatment: Pick<Treatment, 'records' | 'body'>
  readonly outlook: Outlook
  /** How quantities are written; metric unless given. */
  readonly wording?: Wording
}

/** All that is wrong with a job, or may hurt somebody: one finding for each cause and place, worst first. */
export function findingsOf({ job, treatment, outlook, wording = IN_METRIC }: FindingsInput): EngineFinding[] {
  const account: Account = {
    job,
    records: treatment.records,
    outlook,
    lengthM: treatment.body.lengthM,
    steel: steelFacts(job.steel),
  }
  return findingsIn(account, wording)
}
