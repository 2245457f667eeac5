/** What the published figures of one kind are, and in which unit they stand: of the values, of their errors. */
export type Scale = 'HRC' | 'degC' | 'mm' | 'other'

/** One published figure beside what the program says. */
export interface CheckRow {
  /** Steel, place, condition. */
  readonly label: string
  /** Steel, family or place by which the check is split. */
  readonly group: string
  /** Kind of steel, where there is one. */
  readonly family?: string
  /** How the figure was read from its source: "tabulated", "memory", "computed"... */
  readonly provenance: string
  readonly source: string
  readonly published: number
  readonly forecast: number
  readonly low?: number
  readonly high?: number
  /** Something in the program was fitted to this very figure: it does not count in the error of the check. */
  readonly fitted?: true
}

/** What a picture of a row needs. */
export type DrawnRow = Pick<CheckRow, 'label' | 'family' | 'published' | 'forecast' | 'low' | 'high'>

/** Error statistics of some rows. */
export interface CheckSummary {
  readonly name: string
  readonly n: number
  readonly meanAbsolute: number
  /** Forecast minus published. */
  readonly bias: number
  /** Share of published figures inside the band, of the rows that have one. */
  readonly inside?: number
  /** Rows that have a band. */
  readonly banded?: number
  /** Never of a set that may not be passed on. */
  readonly worst?: { readonly label: string; readonly published: number; readonly error: number }
}

/** How far sources are from each other on nominally the same steel and condition. */
export interface BetweenSources {
  /** Pairs of figures. */
  readonly n: number
  readonly meanAbsolute: number
  /** Never of a set that may not be passed on. */
  readonly widest?: { readonly what: string; readonly one: number; readonly other: number }
}

/** A set of published figures that one part of the program is held to, and how it came out. */
export interface Check {
  readonly id: string
  readonly name: string
  /** Of the error. */
  readonly unit: string
  readonly scale: Scale
  /** Errors in per cent of what is published; a picture of such figures has logarithmic scales. */
  readonly relative: boolean
  /** Row of the table to reach that it answers; without one its aim is the program's own. */
  readonly wish?: string
  /** Holds the program to its own formulas: says that they are computed rightly, not that they are right. */
  readonly arithmetic: boolean
  /** The figures lie in this tree; of others only summaries are kept. */
  readonly committed: boolean
  readonly aim: number
  /** The release is refused when the error rises by more. */
  readonly tolerance: number
  /** The release is refused when the share in the band leaves these. */
  readonly insideBounds?: readonly [least: number, most: number]
  readonly says: string
  readonly whyMissed?: string
  readonly whyOutside?: string
  readonly all: CheckSummary
  /** All of its rows were fitted to: on others the error will be larger. */
  readonly inSample?: true
  readonly fitted?: CheckSummary
  readonly families: readonly CheckSummary[]
  readonly groups: readonly CheckSummary[]
  readonly provenances: readonly CheckSummary[]
  readonly betweenSources?: BetweenSources
  /** Every source of the rows, in the order in which they come. */
  readonly sources: readonly string[]
  readonly rows?: readonly CheckRow[]
}

/** docs/validation.json: how true the numbers are, as last measured. */
export interface ValidationRecord {
  readonly checks: readonly Check[]
}

/** Share of published figures that a band of nine in ten is to hold. */
export const INSIDE_AIM = [0.85, 0.95] as const

export function errorMet({ all, aim }: Pick<Check, 'all' | 'aim'>): boolean {
  return all.meanAbsolute <= aim
}

/** Whether the band holds as many as it should, to a whole figure; undefined where no band is given. */
export function bandMet({ inside, banded }: CheckSummary): boolean | undefined {
  if (inside === undefined || banded === undefined) return undefined
  const held = Math.round(inside * banded)
  return held >= Math.floor(INSIDE_AIM[0] * banded) && held <= Math.ceil(INSIDE_AIM[1] * banded)
}
