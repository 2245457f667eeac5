import { join } from 'node:path'
import { foundAgainstForecast, SCATTER_STYLE } from '#report/found-against-forecast.ts'
import { valueUnit } from '#report/validation-reach.ts'
import type { DrawnRow, ValidationRecord } from '#report/validation-record.ts'
import { RECORD, ROOT, recordText } from './record.ts'
import { page } from './report.ts'

/** The record as the page of the workshop takes it: no row's source or group, which it does not show. */
export function forTheBench({ checks }: ValidationRecord): string {
  const drawn = ({ label, family, published, forecast, low, high }: DrawnRow): DrawnRow => ({
    label,
    ...(family === undefined ? {} : { family }),
    published,
    forecast,
    ...(low === undefined || high === undefined ? {} : { low, high }),
  })
  return `${JSON.stringify({
    checks: checks.map(({ rows, ...check }) => ({ ...check, ...(rows === undefined ? {} : { rows: rows.map(drawn) }) })),
  })}\n`
}

/** Every file that is made of the record, with its text: one truth, written down for readers, programs and the bench. */
export function filesOf(record: ValidationRecord): ReadonlyMap<string, string> {
  const pictures = record.checks.flatMap((check): [string, string][] => {
    const { id, name, relative, rows } = check
    if (rows === undefined) return []
    const drawn = foundAgainstForecast({
      id,
      title: name,
      unit: valueUnit(check),
      rows,
      logarithmic: relative,
      style: SCATTER_STYLE,
    })
    return [[join(PICTURES, `${id}.svg`), `${drawn}\n`]]
  })
  return new Map([
    [RECORD, recordText(record)],
    [join(ROOT, 'docs', 'validation.md'), page(record)],
    [join(ROOT, 'src', 'web', 'proof', 'record.json'), forTheBench(record)],
    ...pictures,
  ])
}

/** Holds the pictures of this record and nothing else. */
export const PICTURES = join(ROOT, 'docs', 'pictures', 'validation')
