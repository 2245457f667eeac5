import type { System } from '#units/length.ts'
import { trimmed } from '#units/length.ts'

/** Below this the Rockwell C scale says nothing. */
const SCALE_BEGINS_HRC = 20

/** `52`, or `under 20` where the scale has no figure. */
export function hrcSays(hrc: number): string {
  return hrc < SCALE_BEGINS_HRC ? `under ${SCALE_BEGINS_HRC}` : `${Math.round(hrc)}`
}

/** A depth under the skin as one measures it: hundredths of a millimetre, thousandths of an inch. */
export function depthSays(mm: number, units: System): string {
  return units === 'inch' ? `${trimmed(mm / 25.4, 3)} in` : `${trimmed(mm, 2)} mm`
}

/** `from 0.02 to 0.1 mm`, the unit once; `up to 0.1 mm` where it may be none at all. */
export function depthsSay(fromMm: number, toMm: number, units: System): string {
  const from = depthSays(fromMm, units).replace(/ (?:mm|in)$/u, '')
  return from === '0' ? `up to ${depthSays(toMm, units)}` : `from ${from} to ${depthSays(toMm, units)}`
}

/** A share as so many in a hundred. */
export function inHundred(share: number): string {
  return `${Math.max(1, Math.round(100 * share))} in 100`
}
