import type { Scale } from '#report/validation-record.ts'

/** One published or measured figure beside what the program says. */
export interface ComparedRow {
  /** Names the row for a reader: steel, place, condition. */
  readonly label: string
  /** Steels, places or sources by which the summary is split. */
  readonly group: string
  /** Kind of steel, by `steelFamily`. */
  readonly family?: string
  /** How the figure was read from its source: "tabulated", "memory", "computed"... */
  readonly provenance: string
  /** Publication that the figure comes from. */
  readonly source?: string
  readonly published: number
  readonly forecast: number
  /** Band that the program gives with its figure, when it gives one. */
  readonly low?: number
  readonly high?: number
  /** Something in the program was fitted to this very figure: it is shown and does not count in the error, unless all were. */
  readonly fitted?: boolean
  /** Names steel and condition; rows of the same name and unlike sources tell how far sources are apart. */
  readonly alike?: string
}

/** Two sources on nominally the same steel and condition. */
export interface Repeat {
  readonly what: string
  readonly one: number
  readonly other: number
}

/** A set of published figures that one part of the program is held to. */
export interface Comparison {
  readonly name: string
  /** Unit of the error. */
  readonly unit: string
  /** What the figures themselves stand in, where a reader may want them in another unit. */
  readonly scale?: Scale
  /** Errors in per cent of what is published. */
  readonly relative?: boolean
  /** Row of the table to reach (`WISHES`); without one the aim is the program's own. */
  readonly wish?: Wish
  /** The program's own formula is the reference: the arithmetic is checked, not the metallurgy. */
  readonly arithmetic?: boolean
  /** Mean absolute error to reach. */
  readonly aim: number
  /** The release is refused when the mean absolute error rises by more than this. */
  readonly tolerance: number
  /** The release is refused when the share of published figures inside the band leaves these; 0.85 to 0.95 unless said. */
  readonly inside?: readonly [least: number, most: number]
  /** What is compared with what: choices, what was fitted to these figures, what was left out. */
  readonly says: string
  /** Why the error is above the aim, by figures; only while it is. */
  readonly whyMissed?: string
  /** Why the band holds fewer or more than 0.85 to 0.95; only while it does. */
  readonly whyOutside?: string
  /** The figures lie in this tree; else they are read from the folder given with --data and never kept. */
  readonly committed: boolean
  rows(): readonly ComparedRow[]
  /** Pairs of sources, where `alike` rows do not tell. */
  repeats?(): readonly Repeat[]
}

/** The rows of the table to reach, in its order. */
export const WISHES = [
  'Hardness as quenched, rounds, skin to middle',
  'End-quench bar, middle of the published band',
  'Tempered, with a table of the grade from elsewhere',
  'Tempered, from the composition alone',
  'Quenched and tempered rounds',
  'Where martensite starts (Ms), carbon and low-alloy steel',
  'Where martensite starts (Ms), tool steel',
  'Where austenite starts and is complete (Ac1, Ac3)',
  'Cooling curve of the bath probe',
] as const
export type Wish = (typeof WISHES)[number]

/** File name of a comparison's picture, and its place on the page. */
export function idOf(name: string): string {
  return name
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/gu, '-')
    .replaceAll(/^-|-$/gu, '')
}
