/** One figure that nobody has checked against a source. */
export interface MemoryFigure {
  /** Steel and what it is of it, or what the figure means. */
  readonly what: string
  readonly value: string
  /** Empty where the figure has none or its words name it. */
  readonly unit: string
  /** Where it stands in the code: its file, and its name there where it has one of its own. */
  readonly file: string
  readonly constant?: string
  /** The publication that is remembered, or that there is none. */
  readonly from: string
}

/** Figures of one kind, and what would take the place of each. */
export interface MemoryTable {
  readonly name: string
  readonly replacedBy: string
  readonly figures: readonly MemoryFigure[]
}
