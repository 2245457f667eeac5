import { DEPTH_ROWS } from './tables/hardening-depths.ts'
import type { Confidence, Provenance } from './tables/rows.ts'
import { SOURCES } from './tables/sources.ts'

/** What a sheet says of the thickness that hardens through. */
export interface ThroughHardening {
  readonly quench: string
  /** In the sheet's words: "full hardness only below about". */
  readonly says: string
  readonly sectionM: number
  readonly source: string
  readonly provenance: Provenance
  readonly confidence: Confidence
}

/** Thicknesses that sheets print for the grade; "A-group (A2 A6)" speaks of both. */
export function throughHardeningOf(gradeId: string): readonly ThroughHardening[] {
  return DEPTH_ROWS.flatMap(({ steel, quantity, quench, value, unit, source, provenance, confidence }) => {
    const names = steel.split(/[^A-Za-z0-9-]+/)
    if (!/\b(up to|below|above)\b/.test(quantity) || unit !== 'mm' || value === null || !names.includes(gradeId)) return []
    return [{ quench, says: quantity, sectionM: value / 1000, source: SOURCES[source], provenance, confidence }]
  })
}

/** Measured hardness across a quenched bar. */
export interface HardnessAcross {
  readonly diameterM: number
  readonly quench: string
  readonly fromCentreM: number
  readonly hardnessHrc: number
  readonly source: string
}

/** Printed hardness across quenched bars of the grade, surface first. */
export function hardnessAcrossOf(gradeId: string): readonly HardnessAcross[] {
  return DEPTH_ROWS.flatMap(({ steel, quantity, quench, value, sectionMm, fromCentreMm, source }) =>
    steel !== gradeId || quantity !== 'hardness at radius' || value === null || sectionMm === null || fromCentreMm === null
      ? []
      : [{ diameterM: sectionMm / 1000, quench, fromCentreM: fromCentreMm / 1000, hardnessHrc: value, source: SOURCES[source] }],
  )
}
