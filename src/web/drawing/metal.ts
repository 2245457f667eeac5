import { crossingsAt } from '#engine/geometry/outline-pieces.ts'
import type { DrawnBody } from './body.ts'

/** True where there is metal: inside the outline and in no hollow. Distances in mm, `rMm` to either side of the axis. */
export function isMetal(body: DrawnBody, xMm: number, rMm: number): boolean {
  const away = Math.abs(rMm)
  if (xMm < 0 || xMm > body.lengthMm) return false
  if (body.outline === undefined) return away <= halfAcrossMm(body, xMm)
  // Off the very ends of the outline's pieces, which would count twice.
  const xM = xMm / 1000 + (xMm < body.lengthMm / 2 ? 1 : -1) * 3.7e-8
  const beyond = body.outline.pieces.flatMap((piece) => crossingsAt(piece, xM)).filter((rM) => rM * 1000 > away)
  return beyond.length % 2 === 1
}

/** Half of the size across at a height [mm]; 0 off the piece. */
export function halfAcrossMm({ sections }: DrawnBody, xMm: number): number {
  const section = sections.find(({ fromMm, lengthMm }) => xMm >= fromMm && xMm <= fromMm + lengthMm)
  if (section === undefined) return 0
  const { fromMm, lengthMm, acrossMm } = section
  return (acrossMm[0] + ((xMm - fromMm) / lengthMm) * (acrossMm[1] - acrossMm[0])) / 2
}

/** Half of the most that is drawn of a height: across, or the width of a flat [mm]. */
export function halfDrawnMm({ sections }: DrawnBody, xMm: number): number {
  const section = sections.find(({ fromMm, lengthMm }) => xMm >= fromMm && xMm <= fromMm + lengthMm)
  if (section === undefined) return 0
  const { fromMm, lengthMm, acrossMm, widthMm } = section
  const sizes = widthMm ?? acrossMm
  return (sizes[0] + ((xMm - fromMm) / lengthMm) * (sizes[1] - sizes[0])) / 2
}

/** The section at a height; the upper one at a joint. */
export function sectionAt({ sections }: DrawnBody, xMm: number): number | undefined {
  return sections.findLast(({ fromMm, lengthMm }) => xMm >= fromMm && xMm <= fromMm + lengthMm)?.index
}
