import { spreadLabels } from '#report/label-places.ts'
import type { PlacedFinding } from './finding-places.ts'

/** A flag's place in the column, and the height that its leader goes to. */
export interface Flag {
  readonly placed: PlacedFinding
  readonly topPx: number
  /** Where on the metal it points; absent for one that speaks of the whole. */
  readonly anchorPx?: number
}

export interface FlagLayout {
  readonly flags: readonly Flag[]
  /** Findings that found no room, the least grave. */
  readonly left: readonly PlacedFinding[]
  /** Where the flag that tells of them stands. */
  readonly leftTopPx?: number
}

interface Column {
  readonly heightPx: number
  readonly flagPx: number
  readonly gapPx: number
  readonly yOf: (xMm: number) => number
}

/**
 * Flags in a column: those without a height at its top or its foot, the others as near to their height as they can be without
 * overlapping, in the order of the heights. `placed` comes gravest first; where not all have room the least grave are left out.
 */
export function flagLayout(placed: readonly PlacedFinding[], { heightPx, flagPx, gapPx, yOf }: Column): FlagLayout {
  const pitchPx = flagPx + gapPx
  const room = Math.max(1, Math.floor((heightPx + gapPx) / pitchPx))
  // What is left out needs a flag of its own to say so.
  const shown = placed.length <= room ? placed : placed.slice(0, room - 1)
  const left = placed.slice(shown.length)
  const atTop = shown.filter(({ heightMm, end }) => heightMm === undefined && end === 'top')
  const atFoot = shown.filter(({ heightMm, end }) => heightMm === undefined && end === 'foot')
  const footCount = atFoot.length + (left.length > 0 ? 1 : 0)
  const lowPx = atTop.length * pitchPx
  const highPx = heightPx + gapPx - footCount * pitchPx
  const onMetal = shown.flatMap((each) => (each.heightMm === undefined ? [] : [{ each, anchorPx: yOf(each.heightMm) }]))
  const middles = spreadLabels(
    onMetal.map(({ anchorPx }) => ({ atPx: anchorPx + gapPx / 2, tallPx: pitchPx })),
    lowPx,
    highPx,
  )
  const flags: Flag[] = [
    ...atTop.map((each, i) => ({ placed: each, topPx: i * pitchPx })),
    ...onMetal.map(({ each, anchorPx }, i) => ({ placed: each, topPx: (middles[i] ?? anchorPx) - pitchPx / 2, anchorPx })),
    ...atFoot.map((each, i) => ({ placed: each, topPx: highPx + i * pitchPx })),
  ]
  // From top to foot, so that going from flag to flag with the keyboard follows the eye.
  flags.sort((a, b) => a.topPx - b.topPx)
  return { flags, left, ...(left.length === 0 ? {} : { leftTopPx: heightPx - flagPx }) }
}
