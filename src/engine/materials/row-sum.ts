import { interpolate, type Rows } from '#engine/arithmetic/table.ts'

/**
 * The sum of piecewise linear functions, exact: it has a row wherever one of them has. Functions are held beyond their ends,
 * so a hump ends in zeros.
 */
export function sumOf(functions: readonly Rows[]): Rows {
  const places = functions.flatMap((rows) => rows.map(([x]) => x)).sort((a, b) => a - b)
  const distinct = places.filter((x, i) => i === 0 || x - places[i - 1]! > 1e-9)
  return distinct.map((x) => [x, functions.reduce((sum, rows) => sum + interpolate(rows, x), 0)] as const)
}

/** Rows of `rows` strictly between `from` and `to`, with the interpolated values at both ends. */
export function between(rows: Rows, from: number, to: number): Rows {
  return [[from, interpolate(rows, from)], ...rows.filter(([x]) => x > from + 1e-9 && x < to - 1e-9), [to, interpolate(rows, to)]]
}

/** Integral of `rows` from `from` to `to`, exact for a piecewise linear function held beyond its ends. */
export function integralOf(rows: Rows, from: number, to: number): number {
  const part = between(rows, from, to)
  let sum = 0
  for (let i = 1; i < part.length; i++) {
    const [x0, y0] = part[i - 1]!
    const [x1, y1] = part[i]!
    sum += ((y0 + y1) / 2) * (x1 - x0)
  }
  return sum
}

/** `rows` with every ordinate times `factor`. */
export function scaled(rows: Rows, factor: number): Rows {
  return rows.map(([x, y]) => [x, y * factor] as const)
}
