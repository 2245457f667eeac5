/** Points with a quick answer to whether one lies near: buckets of one size, in order of arrival. */
export interface PointGrid {
  readonly xM: number[]
  readonly rM: number[]
  add(x: number, r: number): number
  /** Whether any point lies nearer than `withinM`. */
  hasWithin(x: number, r: number, withinM: number): boolean
}

export function pointGrid(bucketM: number): PointGrid {
  const xM: number[] = []
  const rM: number[] = []
  const buckets = new Map<number, number[]>()
  const key = (column: number, row: number) => (column + 1_000_000) * 4_000_000 + (row + 1_000_000)

  const add = (x: number, r: number): number => {
    const at = key(Math.floor(x / bucketM), Math.floor(r / bucketM))
    const bucket = buckets.get(at)
    if (bucket === undefined) buckets.set(at, [xM.length])
    else bucket.push(xM.length)
    xM.push(x)
    rM.push(r)
    return xM.length - 1
  }

  const hasWithin = (x: number, r: number, withinM: number): boolean => {
    const square = withinM * withinM
    const lastColumn = Math.floor((x + withinM) / bucketM)
    const lastRow = Math.floor((r + withinM) / bucketM)
    for (let column = Math.floor((x - withinM) / bucketM); column <= lastColumn; column++)
      for (let row = Math.floor((r - withinM) / bucketM); row <= lastRow; row++)
        for (const i of buckets.get(key(column, row)) ?? []) {
          const dx = xM[i]! - x
          const dr = rM[i]! - r
          if (dx * dx + dr * dr < square) return true
        }
    return false
  }
  return { xM, rM, add, hasWithin }
}
