import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Check, ValidationRecord } from '#report/validation-record.ts'
import type { Comparison } from './comparison.ts'
import { idOf } from './comparison.ts'
import { measure } from './measure.ts'

export const ROOT = join(import.meta.dirname, '..', '..')
export const RECORD = join(ROOT, 'docs', 'validation.json')

/** The record as it was last made; undefined before the first time. */
export function recordAsKept(): ValidationRecord | undefined {
  return existsSync(RECORD) ? (JSON.parse(readFileSync(RECORD, 'utf8')) as ValidationRecord) : undefined
}

/** Each comparison as measured now; sets that are not at hand stay as `before` has them, with the words and limits of today. */
export function recordNow(
  comparisons: readonly Comparison[],
  before: ValidationRecord | undefined,
  allAtHand: boolean,
): ValidationRecord {
  return {
    checks: comparisons.flatMap((comparison): Check[] => {
      if (comparison.committed || allAtHand) return [measure(comparison)]
      const kept = before?.checks.find(({ id }) => id === idOf(comparison.name))
      if (kept === undefined) return []
      const { aim, tolerance, says } = comparison
      const { whyMissed: _, whyOutside: __, ...rest } = kept
      return [
        {
          ...rest,
          aim,
          tolerance,
          says,
          ...(comparison.whyMissed === undefined ? {} : { whyMissed: comparison.whyMissed }),
          ...(comparison.whyOutside === undefined ? {} : { whyOutside: comparison.whyOutside }),
        },
      ]
    }),
  }
}

/** One row a line: a change of one figure is a change of one line. */
export function recordText({ checks }: ValidationRecord): string {
  const written = checks.map(({ rows, ...check }) => {
    const head = JSON.stringify(check, null, 2).replaceAll('\n', '\n    ')
    if (rows === undefined) return head
    return `${head.slice(0, -6)},\n      "rows": [\n        ${rows.map((row) => JSON.stringify(row)).join(',\n        ')}\n      ]\n    }`
  })
  return `{\n  "checks": [\n    ${written.join(',\n    ')}\n  ]\n}\n`
}
