import type { ContourLine } from './contours.ts'

/** A figure on its line: middle of the text, and the room it takes [px]. */
export interface ContourLabel {
  readonly text: string
  readonly xPx: number
  readonly yPx: number
  readonly widthPx: number
  readonly heightPx: number
}

interface Room {
  /** How far from the axis the metal reaches at a height [px]; negative: none. */
  readonly reachAt: (yPx: number) => number
  readonly textPx: (text: string) => number
  readonly heightPx: number
  readonly textOf: (level: number) => string
}

/** Lines shorter than this go without a figure [px]. */
const SHORTEST_PX = 16
const EDGE_PX = 3
const APART_PX = 4
/** Places tried along a line. */
const TRIES = 24

/**
 * One figure for each level where there is room: on its line, in the metal, in the cut half if it can be, and clear of all others.
 * Where nothing is wide enough the line goes without.
 */
export function contourLabels(lines: readonly ContourLine[], room: Room): ContourLabel[] {
  const placed: ContourLabel[] = []
  const longest = new Map<number, ContourLine[]>()
  for (const line of lines.filter(({ lengthPx }) => lengthPx >= SHORTEST_PX))
    longest.set(line.level, [...(longest.get(line.level) ?? []), line])
  for (const [level, own] of longest) {
    const text = room.textOf(level)
    const size = { text, widthPx: room.textPx(text), heightPx: room.heightPx }
    own.sort((a, b) => b.lengthPx - a.lengthPx)
    for (const line of own) {
      const label = onLine(line, size, room, placed)
      if (label === undefined) continue
      placed.push(label)
      break
    }
  }
  return placed
}

function onLine(
  { points }: ContourLine,
  size: Pick<ContourLabel, 'text' | 'widthPx' | 'heightPx'>,
  room: Room,
  placed: readonly ContourLabel[],
): ContourLabel | undefined {
  const count = points.length / 2
  let best: { label: ContourLabel; away: number } | undefined
  for (let i = 0; i < TRIES; i++) {
    const share = (i + 0.5) / TRIES
    const at = Math.min(count - 1, Math.floor(share * count))
    const [x, y] = [points[2 * at]!, points[2 * at + 1]!]
    const xPx = within(x, y, size, room)
    if (xPx === undefined) continue
    const label = { ...size, xPx, yPx: y }
    if (placed.some((other) => touches(label, other))) continue
    const away = Math.abs(share - 0.5) + Math.abs(xPx - x) / size.widthPx
    if (best === undefined || away < best.away) best = { label, away }
  }
  return best?.label
}

/** Where the middle of a text that belongs to x can stand, or nowhere. */
function within(x: number, y: number, size: Pick<ContourLabel, 'widthPx' | 'heightPx'>, { reachAt }: Room): number | undefined {
  const half = size.widthPx / 2
  const reach = Math.min(reachAt(y - size.heightPx / 2), reachAt(y), reachAt(y + size.heightPx / 2)) - EDGE_PX
  if (reach < half) return undefined
  const low = reach >= size.widthPx + EDGE_PX ? half + EDGE_PX : half - reach
  const xPx = Math.min(reach - half, Math.max(low, x))
  return Math.abs(xPx - x) <= half + EDGE_PX ? xPx : undefined
}

function touches(a: ContourLabel, b: ContourLabel): boolean {
  return (
    Math.abs(a.xPx - b.xPx) < (a.widthPx + b.widthPx) / 2 + APART_PX &&
    Math.abs(a.yPx - b.yPx) < (a.heightPx + b.heightPx) / 2 + APART_PX
  )
}
