import type { System } from '#units/length.ts'
import { CHISELS } from './starting-chisels.ts'
import { HELD_TOOLS } from './starting-held-tools.ts'
import type { StartingPattern, StartingSection, StartingZone } from './starting-patterns.ts'
import { PUNCHES } from './starting-punches.ts'
import { readSizes, type StartingSize, startingSizes } from './starting-sizes.ts'

export type { StartingSize } from './starting-sizes.ts'

/** A piece to start from, by kind of tool. */
export interface StartingPiece {
  readonly kind: string
  /** What it is for, and where its aims are from. */
  readonly says: string
  /** Steels that it is made of, the likeliest first; the job has the first. */
  readonly grades: readonly string[]
  /** Sizes to change, each a length with its unit. */
  readonly sizes: readonly StartingSize[]
  /**
   * The job document with these sizes, and the default of each that is left out: piece, steel, shape, struck or not, zones with their
   * aims; no treatment. Throws `InputProblems` that name the size and the mend.
   */
  readonly job: (sizes?: Readonly<Record<string, string | undefined>>) => StartingJob
}

export interface StartingJob {
  readonly piece: string
  readonly steel: { readonly grade: string }
  readonly profile: readonly StartingSection[]
  readonly struck: boolean
  readonly zones: readonly StartingZone[]
}

const PATTERNS: readonly StartingPattern[] = [...CHISELS, ...PUNCHES, ...HELD_TOOLS]

/** Starting pieces with sizes in round figures of these units. */
export function startingPieces(units: System): readonly StartingPiece[] {
  return PATTERNS.map(({ kind, says, grades, struck, sizes, shape }) => ({
    kind,
    says,
    grades,
    sizes: startingSizes(sizes, units),
    job: (typed = {}) => {
      const { profile, zones } = shape(readSizes(sizes, typed, units), units)
      return { piece: kind, steel: { grade: grades[0] }, profile, struck, zones }
    },
  }))
}
