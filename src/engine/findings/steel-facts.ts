import type { Composition } from '#engine/materials/steel.ts'

/** The fiercest cooling that the sheets give; brine counts as water. */
export type Medium = 'air' | 'oil' | 'water'

/** What is published, or else worked out, of the steel in hand. */
export interface SteelFacts {
  readonly name: string
  readonly gradeId?: string
  readonly composition: Composition
  readonly critical: { readonly ac1K: number; readonly ac3K: number; readonly msK: number }
  /** Range to harden from; `inOilFromK` where sheets give a cooler heat for water than for anything milder. */
  readonly hardening: {
    readonly fromK: number
    readonly inOilFromK?: number
    readonly toK: number
    readonly published: boolean
    readonly source: string
  }
  /** Least published soak once the piece is at heat [s]; absent where none is published. */
  readonly soak?: { readonly leastS: number; readonly source: string }
  readonly media: {
    readonly fiercest: Medium
    /** As the sheets put it: "air or oil". */
    readonly says: string
    /** Water only from this thickness on [m]; under it oil is enough. */
    readonly waterFromM?: number
    readonly source: string
  }
  readonly cycles: { readonly least: number; readonly source: string }
  readonly grainSize: number
  /** As hard as this steel can be: full martensite at the usual heat, and the same for the richest bar sold under the name. */
  readonly fullHrc: { readonly value: number; readonly high: number }
  /** Slowest cooling from 800 to 500 degC that still leaves it within about 2 HRC of that [s]. */
  readonly fullCoolingS: number
  /** Share of austenite that the models leave in this steel when it is hardened from the top of its range, 0..1. */
  readonly usualRetained: number
  /** Tempered hardness [HRC] of fully hardened steel that came out of the quench at `quenchedHrc`. */
  readonly temperedHrc: (
    quenchedHrc: number,
    temper: { readonly atK: number; readonly holdS: number; readonly times: number },
  ) => number
  /** What so many tempers leave of `retained` austenite (shares of the whole), and how far that lifts the hardness over `temperedHrc` [HRC]. */
  readonly afterTempers: (
    quenchedHrc: number,
    retained: number,
    temper: { readonly atK: number; readonly holdS: number; readonly times: number },
  ) => { readonly overHrc: number; readonly left: number; readonly fresh: number }
  /** Tempers that make it brittle. */
  readonly embrittling: readonly {
    readonly fromK: number
    readonly toK: number
    readonly says: string
    readonly source: string
  }[]
}

/** Steel whose full martensite is softer than this is called mild, and is not hardened [HRC]: about 0.22 % carbon. */
export const MILD_HRC = 46

/** Plain enough to dissolve in seconds once the middle is up, when the carbide is fine. */
export function isPlain({ Cr, Mo, V, W, Ni, Mn }: Composition): boolean {
  return Cr < 0.7 && Mo < 0.15 && V < 0.3 && W < 0.3 && Ni < 1 && Mn < 1.2
}

/** Machine and spring steels: little that is slow to dissolve. */
export function isLowAlloy({ C, Cr, Mo, V, W }: Composition): boolean {
  return C < 0.75 && Cr < 2 && Mo < 0.5 && V < 0.3 && W < 0.3
}
