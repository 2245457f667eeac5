import type { Envelope } from './envelope.ts'

/** A symmetric matrix in its envelope; `factor` turns it into L (unit diagonal left out) and D in place. */
export interface EnvelopeMatrix {
  readonly envelope: Envelope
  /** Entries left of the diagonal, row by row. */
  readonly values: Float64Array
  readonly diagonal: Float64Array
}

export function envelopeMatrix(envelope: Envelope): EnvelopeMatrix {
  const n = envelope.nodeOfRow.length
  return { envelope, values: new Float64Array(envelope.rowStart[n]!), diagonal: new Float64Array(n) }
}

/** L D L^T in place. Gives the row whose pivot is not above 0, or -1 when all is well. */
export function factor(matrix: EnvelopeMatrix): number {
  const { values, diagonal } = matrix
  const { rowStart } = matrix.envelope
  for (let p = 0; p < diagonal.length; p++) {
    const start = rowStart[p]!
    const end = rowStart[p + 1]!
    const first = p - (end - start)
    eliminate(values, rowStart, start, first, p)
    let pivot = diagonal[p]!
    for (let at = start; at < end; at++) {
      const raw = values[at]!
      const unit = raw / diagonal[first + at - start]!
      pivot -= raw * unit
      values[at] = unit
    }
    if (!(pivot > 0)) return p
    diagonal[p] = pivot
  }
  return -1
}

/** Takes from row p what the rows above it account for, column by column; leaves L times D there. */
function eliminate(values: Float64Array, rowStart: Int32Array, start: number, first: number, p: number): void {
  for (let q = first + 1; q < p; q++) {
    const above = rowStart[q]!
    const firstAbove = q - (rowStart[q + 1]! - above)
    const from = Math.max(first, firstAbove)
    const product = dot(values, start + from - first, above + from - firstAbove, q - from)
    const at = start + q - first
    values[at] = values[at]! - product
  }
}

/** Sum of `count` products of two runs of the same array, in four strands that don't wait for each other. */
function dot(values: Float64Array, a: number, b: number, count: number): number {
  let s0 = 0
  let s1 = 0
  let s2 = 0
  let s3 = 0
  let i = 0
  for (; i + 3 < count; i += 4) {
    s0 += values[a + i]! * values[b + i]!
    s1 += values[a + i + 1]! * values[b + i + 1]!
    s2 += values[a + i + 2]! * values[b + i + 2]!
    s3 += values[a + i + 3]! * values[b + i + 3]!
  }
  for (; i < count; i++) s0 += values[a + i]! * values[b + i]!
  return s0 + s1 + (s2 + s3)
}

/** Solves with a factored matrix; `rightSide` and `solution` are by node [n], `work` is spare [n]. */
export function solveWith(matrix: EnvelopeMatrix, rightSide: Float64Array, solution: Float64Array, work: Float64Array): void {
  const { nodeOfRow } = matrix.envelope
  for (let p = 0; p < work.length; p++) work[p] = rightSide[nodeOfRow[p]!]!
  forward(matrix.values, matrix.envelope.rowStart, work)
  backward(matrix.values, matrix.envelope.rowStart, matrix.diagonal, work)
  for (let p = 0; p < work.length; p++) solution[nodeOfRow[p]!] = work[p]!
}

function forward(values: Float64Array, rowStart: Int32Array, x: Float64Array): void {
  for (let p = 0; p < x.length; p++) {
    const end = rowStart[p + 1]!
    let column = p - (end - rowStart[p]!)
    let sum = x[p]!
    for (let at = rowStart[p]!; at < end; at++) sum -= values[at]! * x[column++]!
    x[p] = sum
  }
}

function backward(values: Float64Array, rowStart: Int32Array, diagonal: Float64Array, x: Float64Array): void {
  for (let p = 0; p < x.length; p++) x[p] = x[p]! / diagonal[p]!
  for (let p = x.length - 1; p >= 0; p--) {
    const end = rowStart[p + 1]!
    const known = x[p]!
    let column = p - (end - rowStart[p]!)
    for (let at = rowStart[p]!; at < end; at++) {
      x[column] = x[column]! - values[at]! * known
      column++
    }
  }
}
