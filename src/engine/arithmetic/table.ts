/** A piecewise linear function: strictly rising abscissae with their ordinates. */
export type Rows = readonly (readonly [x: number, y: number])[]

/** Value of `rows` at `x`, linear between rows and held at the end values beyond them. */
export function interpolate(rows: Rows, x: number): number {
  const first = rows[0]
  const last = rows[rows.length - 1]
  if (first === undefined || last === undefined) throw new RangeError('interpolate: the table has no rows')
  if (x <= first[0]) return first[1]
  if (x >= last[0]) return last[1]
  let low = 0
  let high = rows.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (rows[middle]![0] <= x) low = middle
    else high = middle
  }
  const [x0, y0] = rows[low]!
  const [x1, y1] = rows[high]!
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0)
}
