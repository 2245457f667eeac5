import type { DrawnBody, DrawnSection } from '#web/drawing/body.ts'

/** A place of the field [mm] as it is drawn [mm]. */
export type Carry = (xMm: number, rMm: number) => readonly [xMm: number, rMm: number]

/**
 * Where places of a forecast's field lie in the drawing. The field lies on rounds that cool like the piece; the drawing has its true
 * sizes, and it may have been changed since (`now`): each section is stretched onto what has become of it, so that the field stays under
 * the hand until the next answer is there.
 */
export function carryOver(was: DrawnBody, now: DrawnBody): Carry {
  const pairs = was.sections.map((section, i) => [section, now.sections[i]] as const)
  const alike = was.sections.length === now.sections.length
  const stretch = was.lengthMm > 0 ? now.lengthMm / was.lengthMm : 1
  return (xMm, rMm) => {
    const [before, after] = sectionOf(pairs, xMm)
    if (before === undefined) return [xMm, rMm]
    const along = before.lengthMm > 0 ? (xMm - before.fromMm) / before.lengthMm : 0
    if (!alike || after === undefined) return [xMm * stretch, rMm * shareOf(before, before, along)]
    return [after.fromMm + along * after.lengthMm, rMm * shareOf(before, after, along)]
  }
}

type Pair = readonly [before: DrawnSection | undefined, after: DrawnSection | undefined]

/** At a joint the thicker of the two rounds counts. */
function sectionOf(pairs: readonly Pair[], xMm: number): Pair {
  let found: Pair = [undefined, undefined]
  let widest = -1
  for (const [i, pair] of pairs.entries()) {
    const section = pair[0]!
    const along = (xMm - section.fromMm) / section.lengthMm
    const low = i === 0 ? Number.NEGATIVE_INFINITY : -1e-6
    const high = i === pairs.length - 1 ? Number.POSITIVE_INFINITY : 1 + 1e-6
    if (along < low || along > high) continue
    const round = sizeAt(section.equivalentMm, along)
    if (round <= widest) continue
    widest = round
    found = pair
  }
  return found
}

/** Size across as drawn, per size of the round that the field lies on. */
function shareOf(before: DrawnSection, after: DrawnSection, along: number): number {
  const round = sizeAt(before.equivalentMm, along)
  return round > 0 ? sizeAt(after.acrossMm, along) / round : 1
}

function sizeAt([from, to]: readonly [number, number], along: number): number {
  return from + Math.min(1, Math.max(0, along)) * (to - from)
}
