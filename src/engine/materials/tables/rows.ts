import type { Element } from '#engine/materials/steel.ts'
import type { SourceId } from './sources.ts'

/** How a figure was read from its source: digit by digit, from running text, or recalled and not checked against it. */
export type Provenance = 'tabulated' | 'text' | 'memory'
export type Confidence = 'high' | 'medium' | 'low'

/** What every row carries. */
export interface Sourced {
  readonly source: SourceId
  readonly provenance: Provenance
  readonly confidence: Confidence
}

export type NamingSystem = 'AISI/SAE' | 'AISI tool' | 'EN' | 'ASTM' | 'historic'

export interface GradeRow extends Sourced {
  readonly id: string
  readonly system: NamingSystem
  readonly family: string
  readonly uns: string
  readonly en: string
  readonly wNr: string
  readonly jis: string
  readonly note: string
  readonly warning: string
  /** Weight per cent; null is no bound. */
  readonly limits: { readonly [Key in Element]?: readonly [low: number | null, high: number | null] }
  /** Where the names in other systems come from. */
  readonly equivalents: string
}

export const TREATMENT_ITEMS = [
  'forge start',
  'forge not below',
  'forge range',
  'normalise',
  'anneal',
  'anneal cooling rate',
  'annealed hardness',
  'preheat',
  'austenitise',
  'austenitise (water or brine)',
  'soak at hardening heat',
  'quenchant',
  'as-quenched hardness',
  'temper range',
  'temper avoid',
  'temper cycles',
  'working hardness over temper range',
  'hardening use',
] as const
export type TreatmentName = (typeof TREATMENT_ITEMS)[number]

export type TreatmentRow = readonly [
  grade: string,
  item: TreatmentName,
  low: number | null,
  high: number | null,
  unit: 'C' | 'C/h' | 'HB' | 'HRC' | 'min' | '',
  text: string,
  source: SourceId,
  provenance: Provenance,
  confidence: Confidence,
  note: string,
]

export interface CurveRow extends Sourced {
  readonly id: string
  readonly grade: string
  /** Typical analysis on the sheet. */
  readonly typical: string
  readonly section: string
  readonly hardenC: number | null
  readonly quench: string
  readonly holdH: number | null
  readonly holdSays: string
  readonly cycles: number | null
  readonly note: string
  readonly points: readonly (readonly [
    temperC: number | null,
    hrc: number | null,
    lowHrc: number | null,
    highHrc: number | null,
    brinell: number | null,
  ])[]
}

export interface AsQuenchedRow extends Sourced {
  readonly grade: string
  readonly quench: string
  readonly holdMin: number | null
  readonly hardenC: number | null
  readonly hrc: number | null
  readonly lowHrc: number | null
  readonly highHrc: number | null
  /** ASTM E112, as printed ("7-8"). */
  readonly grainSize: string
  readonly note: string
}

export interface DepthRow extends Sourced {
  readonly id: string
  readonly steel: string
  readonly composition: string
  readonly sectionMm: number | null
  readonly quench: string
  readonly quantity: string
  readonly fromCentreMm: number | null
  readonly value: number | null
  readonly unit: string
  readonly note: string
}
