import type { Estimate } from '#engine/provenance/estimate.ts'

const ZERO_DEGC_K = 273.15
const HALF_BAND_K = 25

/** Ac1 and Ac3 (or the end of the Ac1 range) by grade [degC], for grades whose alloy takes them out of the range of the formulas. */
const PUBLISHED: Readonly<
  Record<string, { readonly ac1: number; readonly ac3?: number; readonly basis: 'published' | 'memory'; readonly source: string }>
> = {
  S5: { ac1: 766, basis: 'published', source: 'Crucible data sheet LaBelle Silicon #2 (AISI S5)' },
  O1: { ac1: 743, basis: 'published', source: 'Crucible data sheet Ketos (AISI O1)' },
  H21: { ac1: 827, basis: 'published', source: 'Crucible data sheet Peerless A (AISI H21)' },
  D2: { ac1: 787, ac3: 845, basis: 'published', source: 'Latrobe Specialty Steel, data sheet D2' },
  S7: { ac1: 790, ac3: 830, basis: 'memory', source: 'handbook value, memory' },
  H13: { ac1: 845, ac3: 910, basis: 'memory', source: 'handbook value, memory' },
  H11: { ac1: 840, ac3: 900, basis: 'memory', source: 'handbook value, memory' },
  A2: { ac1: 795, ac3: 840, basis: 'memory', source: 'handbook value, memory' },
  M2: { ac1: 830, ac3: 880, basis: 'memory', source: 'handbook value, memory' },
}

/** Published critical temperatures of a grade, or undefined when only the formulas speak of it. */
export function publishedCriticals(gradeId: string): { readonly ac1K: Estimate; readonly ac3K?: Estimate } | undefined {
  const row = PUBLISHED[gradeId]
  if (row === undefined) return undefined
  const at = (degC: number): Estimate => ({
    value: degC + ZERO_DEGC_K,
    low: degC + ZERO_DEGC_K - HALF_BAND_K,
    high: degC + ZERO_DEGC_K + HALF_BAND_K,
    basis: row.basis,
    source: row.source,
  })
  return { ac1K: at(row.ac1), ...(row.ac3 === undefined ? {} : { ac3K: at(row.ac3) }) }
}
