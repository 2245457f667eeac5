import type { Grade } from './catalogue.ts'
import { kelvinOf, type Said, saidBy } from './source-order.ts'
import type { TreatmentRow } from './tables/rows.ts'

/** Tempering temperatures that cost toughness. */
export interface EmbrittlingRange extends Said {
  readonly fromK: number
  readonly toK: number
}

const BOOK = {
  basis: 'memory',
  source: 'G. Krauss, Steels (ASM 2005); Horn & Ritchie, Metall. Trans. A 9 (1978) 1039, from memory',
  provenance: 'memory',
  confidence: 'medium',
} as const

/** Families whose tempering is led by secondary hardening and by their own sheets. */
const BY_THEIR_OWN_CURVE = /tool|high-speed|mould|die/

/**
 * Ranges to stay out of: those that the grade's own sources name, else the one-step (tempered-martensite) range that every hardened
 * plain or low-alloy steel has, which silicon moves up.
 */
export function embrittlingRangesOf(grade: Grade, rows: readonly TreatmentRow[]): EmbrittlingRange[] {
  const named = rows.flatMap((row): EmbrittlingRange[] => {
    const said = saidBy(row)
    const [, item, low, high, , text] = row
    if (item === 'temper avoid' && low !== null && high !== null) return [{ ...said, fromK: kelvinOf(low), toK: kelvinOf(high) }]
    const match = /avoid (?:about )?(\d+)-(\d+) C/.exec(text)
    return match === null ? [] : [{ ...said, fromK: kelvinOf(Number(match[1])), toK: kelvinOf(Number(match[2])) }]
  })
  if (named.length > 0) return named
  if (BY_THEIR_OWN_CURVE.test(grade.family) || (grade.limits.C?.high ?? 0) < 0.25) return []
  const siliconRich = (grade.limits.Si?.low ?? 0) >= 1.2
  return siliconRich
    ? [{ ...BOOK, fromK: kelvinOf(350), toK: kelvinOf(450), says: 'tempered-martensite embrittlement; silicon moves it up' }]
    : [{ ...BOOK, fromK: kelvinOf(250), toK: kelvinOf(370), says: 'tempered-martensite embrittlement' }]
}
