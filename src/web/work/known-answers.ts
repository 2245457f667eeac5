import type { System } from '#units/length.ts'
import type { JobText } from '#web/job/job-text.ts'
import type { Answered } from './desk.ts'

/** Full answers kept at hand: what is undone, tried and taken back, or opened again is there at once. */
export interface KnownAnswers {
  find(job: JobText, units: System): Answered | undefined
  keep(answered: Answered): void
}

/** The last `most` full answers, by what they answer. */
export function knownAnswers(most: number): KnownAnswers {
  const kept = new Map<string, Answered>()
  const keyOf = (job: JobText, units: System): string => `${units} ${JSON.stringify(job)}`
  return {
    find(job, units) {
      const key = keyOf(job, units)
      const found = kept.get(key)
      if (found === undefined) return undefined
      kept.delete(key)
      kept.set(key, found)
      return { ...found, job }
    },
    keep(answered) {
      const key = keyOf(answered.job, answered.units)
      kept.delete(key)
      kept.set(key, answered)
      const oldest = kept.keys().next().value
      if (kept.size > most && oldest !== undefined) kept.delete(oldest)
    },
  }
}
