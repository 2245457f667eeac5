import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'

/** A stream of draws that a seed fixes to the last bit. */
export interface RandomStream {
  /** Uniform in (0, 1): never 0, never 1. */
  uniform(): number
  /** Standard normal. */
  normal(): number
}

/** The stream of `seed` (any 32-bit integer). */
export function randomStream(seed: number): RandomStream {
  const generator = xoroshiro128plus(seed)
  const uniform = (): number => {
    const high = generator.next() >>> 5
    const low = generator.next() >>> 6
    return (high * 67108864 + low + 0.5) / 9007199254740992
  }
  return { uniform, normal: () => normalQuantile(uniform(), 0, 1) }
}
