import { atan2, cos, sin } from '#engine/arithmetic/angles.ts'
import { square } from '#engine/arithmetic/square.ts'
import { type BoundaryNodes, turnBefore } from './boundary-nodes.ts'
import { distanceToBoundaryM, distanceToSegmentM, isInside } from './outline-distance.ts'
import type { OutlinePiece, OutlinePoint } from './outline-pieces.ts'
import { directionOn } from './outline-pieces.ts'
import { type PointGrid, pointGrid } from './point-grid.ts'
import { columnDepthsM, type SizeLaw } from './size-law.ts'

/** A point of a column is kept if no other lies nearer than this share of the cell size there; one of the fill, than the other share. */
const APART_IN_COLUMN = 0.55
const APART_IN_FILL = 0.72

/** The last point of a column, set on the axis, may come nearer to the one before it. */
const APART_AT_AXIS = 0.45

/** Nearest that a point off the axis may come to it, in cells: a nearer one is set on the axis. */
const OFF_AXIS = 0.6

/**
 * Points inside the body: those asked for, then columns on the inward normals of the boundary nodes, then points on the axis and a
 * graded fill of what is left.
 */
export function insidePoints(nodes: BoundaryNodes, law: SizeLaw, asked: readonly OutlinePoint[]): PointGrid {
  const largest = Math.max(...nodes.insideM)
  const grid = pointGrid(Math.max(law.surfaceM, largest / 2))
  for (let i = 0; i < nodes.xM.length; i++) grid.add(nodes.xM[i]!, nodes.rM[i]!)
  for (const { xM, rM } of asked) grid.add(xM, rM)
  for (let i = 0; i < nodes.xM.length; i++) for (const direction of columnsAt(nodes, i)) column(nodes, i, direction, law, grid)
  axisPoints(nodes, law, grid)
  fill(nodes, law, grid)
  return grid
}

/** Inward directions of the columns that start at node i: none at an outer corner, several at an inner one. */
function columnsAt(nodes: BoundaryNodes, i: number): { along: OutlinePoint; stretch: number }[] {
  const last = nodes.xM.length - 1
  const onAxis = i === 0 || i === last
  const before = i > 0 ? inward(nodes.piece[i - 1]!, nodes.shareTo[i - 1]!) : undefined
  const after = i < last ? inward(nodes.piece[i]!, nodes.shareFrom[i]!) : undefined
  if (onAxis) {
    const turn = turnBefore(nodes.piece, i === 0 ? 0 : nodes.piece.length)
    return turn > -OUTER_CORNER_RAD ? [{ along: { xM: Math.sign((before ?? after)!.xM), rM: 0 }, stretch: 1 }] : []
  }
  const turn = atan2(before!.xM * after!.rM - before!.rM * after!.xM, before!.xM * after!.xM + before!.rM * after!.rM)
  if (turn < -OUTER_CORNER_RAD) return []
  const fans = turn > FAN_RAD ? Math.ceil(turn / FAN_RAD) : 0
  const start = atan2(before!.rM, before!.xM)
  if (fans === 0) return [{ along: unit(start + turn / 2), stretch: 1 / cos(turn / 2) }]
  return Array.from({ length: fans + 1 }, (_, k) => ({ along: unit(start + (turn * k) / fans), stretch: 1 }))
}

/** Outer corners sharper than this start no column: those of their two sides meet there already [rad]. */
const OUTER_CORNER_RAD = 0.9
/** Inner corners sharper than this start several [rad]. */
const FAN_RAD = 0.6

function unit(angleRad: number): OutlinePoint {
  return { xM: cos(angleRad), rM: sin(angleRad) }
}

function inward(piece: OutlinePiece, share: number): OutlinePoint {
  const way = directionOn(piece, share)
  return { xM: way.rM, rM: -way.xM }
}

/** One column, down to the middle of the metal or to the axis. */
function column(
  nodes: BoundaryNodes,
  i: number,
  { along, stretch }: { along: OutlinePoint; stretch: number },
  law: SizeLaw,
  grid: PointGrid,
): void {
  const skin = Math.min(nodes.skinM[i - 1] ?? Infinity, nodes.skinM[i] ?? Infinity)
  const largest = Math.min(nodes.insideM[i - 1] ?? Infinity, nodes.insideM[i] ?? Infinity)
  let before = 0
  for (const depth of columnDepthsM(skin, law.growth, largest, 40 * largest)) {
    const size = depth - before
    before = depth
    const x = nodes.xM[i]! + along.xM * depth * stretch
    let r = nodes.rM[i]! + along.rM * depth * stretch
    const atAxis = r < OFF_AXIS * size
    if (atAxis) r = 0
    // The chords of an arc cut its depth a little short.
    const toSurface = distanceToBoundaryM(nodes, x, r)
    if (toSurface < (atAxis ? 0.4 : 0.97) * depth - 1e-9) return
    if (!isInside(nodes, x, r)) return
    if (!grid.hasWithin(x, r, (atAxis ? APART_AT_AXIS : APART_IN_COLUMN) * size)) grid.add(x, r)
    if (atAxis && along.rM !== 0) return
  }
}

/** Cell size allowed at a point and its depth [m]. */
function sizeAt(nodes: BoundaryNodes, law: SizeLaw, x: number, r: number): { sizeM: number; depthM: number } {
  let size = Number.POSITIVE_INFINITY
  let depthM = Number.POSITIVE_INFINITY
  let inside = 0
  let along = 0
  for (let i = 0; i < nodes.skinM.length; i++) {
    const d = distanceToSegmentM(nodes, i, x, r)
    size = Math.min(size, nodes.skinM[i]! + law.growth * d)
    if (d < depthM) {
      depthM = d
      inside = nodes.insideM[i]!
      along = segmentM(nodes, i)
    }
  }
  // Under long segments the columns stand wide apart; nothing goes between them.
  return { sizeM: Math.max(Math.min(size, inside), along), depthM }
}

function segmentM({ xM, rM }: BoundaryNodes, i: number): number {
  return Math.sqrt(square(xM[i + 1]! - xM[i]!) + square(rM[i + 1]! - rM[i]!))
}

function axisPoints(nodes: BoundaryNodes, law: SizeLaw, grid: PointGrid): void {
  const end = nodes.xM[nodes.xM.length - 1]!
  let x = nodes.xM[0]!
  for (;;) {
    const { sizeM, depthM } = sizeAt(nodes, law, x, 0)
    if (depthM > 0.4 * sizeM && !grid.hasWithin(x, 0, APART_IN_COLUMN * sizeM)) grid.add(x, 0)
    x += sizeM / 4
    if (x >= end) return
  }
}

/** Cells of a quadtree, halved until they are no larger than the law allows at their middle; middles that stand free become points. */
function fill(nodes: BoundaryNodes, law: SizeLaw, grid: PointGrid): void {
  const start = Math.min(...nodes.xM)
  const end = Math.max(...nodes.xM)
  const root = Math.max(...nodes.insideM) * 2
  const top = Math.max(...nodes.rM)
  const visit = (x0: number, r0: number, cell: number): void => {
    const x = x0 + cell / 2
    const r = r0 + cell / 2
    const { sizeM, depthM } = sizeAt(nodes, law, x, r)
    const inside = isInside(nodes, x, r)
    if (!inside && depthM > 0.71 * cell) return
    if (cell > 1.2 * sizeM) {
      const half = cell / 2
      visit(x0, r0, half)
      visit(x0, r0 + half, half)
      visit(x0 + half, r0, half)
      visit(x0 + half, r0 + half, half)
    } else if (inside && depthM > 0.5 * sizeM && r > OFF_AXIS * sizeM && !grid.hasWithin(x, r, APART_IN_FILL * sizeM))
      grid.add(x, r)
  }
  for (let x0 = start; x0 < end; x0 += root) for (let r0 = 0; r0 < top; r0 += root) visit(x0, r0, root)
}
