/** One published or measured figure beside what the program says. */
export interface ComparedRow {
  /** Names the row for a reader: steel, place, condition. */
  readonly label: string
  /** Families, steels or sources by which the summary is split. */
  readonly group: string
  /** How the figure was read from its source: "tabulated", "memory", "computed"... */
  readonly provenance: string
  readonly published: number
  readonly forecast: number
  /** Band that the program gives with its figure, when it gives one. */
  readonly low?: number
  readonly high?: number
}

/** A set of published figures that one part of the program is held to. */
export interface Comparison {
  readonly name: string
  readonly unit: string
  /** Mean absolute error to reach, and where it was set; the quick test holds to it what `committed` comparisons reach. */
  readonly aim: number
  /** What is compared with what, in a sentence or two: choices, what was fitted, what was left out. */
  readonly says: string
  /** The figures lie in this tree; else they are read from the folder given with --data and never kept. */
  readonly committed: boolean
  rows(): readonly ComparedRow[]
}
