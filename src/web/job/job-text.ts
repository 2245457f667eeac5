/**
 * A job as its file holds it: every quantity as typed, with its unit (`22 mm`, `7/8 in`, `845 °C`). What is edited, kept, saved and
 * linked is this and nothing else, so that what was typed is shown as typed. It may be at fault; `contract` says where.
 */
export interface JobText {
  readonly piece?: string
  readonly steel?: SteelText
  readonly grainSize?: number
  readonly struck?: boolean
  readonly profile?: readonly SectionText[]
  readonly zones?: readonly ZoneText[]
  readonly probes?: readonly ProbeText[]
  /** Left out: the shop of this device. */
  readonly shop?: ShopText
  readonly process?: readonly StepText[]
}

export interface SteelText {
  readonly grade?: string
  readonly analysis?: { readonly [element: string]: number }
  readonly unknown?: { readonly [evidence: string]: unknown }
  readonly grainSize?: number
}

export type ShapeText = 'round' | 'square' | 'hexagon' | 'octagon' | 'flat'

/** `across`, `from` and `to` are one length, or thickness x width of a flat (`5 x 12 mm`). */
export interface SectionText {
  readonly shape: ShapeText
  readonly across?: string
  readonly from?: string
  readonly to?: string
  readonly length: string
  readonly fillet?: string
  readonly dish?: HollowText
  readonly bore?: HollowText
  readonly tip?: { readonly radius: string }
}

export interface HollowText {
  readonly across: string
  readonly depth: string
}

export interface ZoneText {
  readonly name?: string
  readonly from: string
  readonly to: string
  readonly aim: string
}

export interface ProbeText {
  readonly name?: string
  readonly x: string
  readonly r?: string
}

export interface ShopText {
  readonly fires?: readonly FireText[]
  readonly baths?: readonly BathText[]
  readonly ovens?: readonly OvenText[]
  readonly testers?: readonly TesterText[]
  readonly files?: readonly FileText[]
}

export interface FireText {
  readonly name: string
  readonly kind?: string
  readonly atmosphere?: string
}

export interface BathText {
  readonly name: string
  readonly kind?: string
  readonly volume?: string
  readonly depth?: string
  readonly temperature?: string
  readonly flash?: string
}

export interface OvenText {
  readonly name: string
  readonly max: string
  readonly reads?: string
  readonly swing?: string
}

export interface TesterText {
  readonly name: string
  readonly scale: string
  readonly block?: string
  readonly shows?: string
}

export interface FileText {
  readonly name: string
  readonly hardness: string
}

/** One step, tagged by `do`, in the words of a job file. */
export interface StepText {
  readonly do: string
  readonly [field: string]: unknown
}
