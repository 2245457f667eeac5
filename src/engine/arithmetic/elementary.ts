import stdlibExp from '@stdlib/math-base-special-exp'
import stdlibLn from '@stdlib/math-base-special-ln'
import stdlibPow from '@stdlib/math-base-special-pow'

/**
 * exp, ln and pow with the same bits in Node and in every browser (Math.exp and its kin differ by a unit in the last place
 * between runtimes). The whole engine takes them from here; sqrt and the four operations agree everywhere already.
 */
export const exp: (x: number) => number = stdlibExp
export const ln: (x: number) => number = stdlibLn
export const pow: (base: number, exponent: number) => number = stdlibPow

const LN10 = Math.LN10

/** Decadic logarithm through `ln`. */
export function log10(x: number): number {
  return ln(x) / LN10
}
