import { kelvinOf, type Said, saidBy } from './source-order.ts'
import type { TreatmentRow } from './tables/rows.ts'

/** Tempering temperatures that a source of the grade warns off. */
export interface NamedEmbrittling extends Said {
  readonly fromK: number
  readonly toK: number
}

/** Ranges to stay out of that the grade's own sources name; what holds of steel in general is `embrittlingRanges` of the metallurgy. */
export function namedEmbrittling(rows: readonly TreatmentRow[]): NamedEmbrittling[] {
  return rows.flatMap((row): NamedEmbrittling[] => {
    const said = saidBy(row)
    const [, item, low, high, , text] = row
    if (item === 'temper avoid' && low !== null && high !== null) return [{ ...said, fromK: kelvinOf(low), toK: kelvinOf(high) }]
    const match = /avoid (?:about )?(\d+)-(\d+) C/.exec(text)
    return match === null ? [] : [{ ...said, fromK: kelvinOf(Number(match[1])), toK: kelvinOf(Number(match[2])) }]
  })
}
