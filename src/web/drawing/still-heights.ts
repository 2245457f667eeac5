import { signal } from '@preact/signals'
import { useRef } from 'preact/hooks'
import type { Heights } from './heights.ts'

/** True while a hand holds the metal: the picture keeps its scale until it lets go, so that the metal stays under the hand. */
export const handOn = signal(false)

/** The scale of the picture: as it fits, or as it was when a hand took hold. */
export function useStillHeights(fitting: Heights): Heights {
  const last = useRef(fitting)
  const now = handOn.value ? heldStill(last.current, fitting) : fitting
  last.current = now
  return now
}

/** `now`, to the scale and from the place of `before`. */
export function heldStill(before: Heights, now: Heights): Heights {
  const { pxPerMm, workingEndPx } = before
  if (pxPerMm === now.pxPerMm && workingEndPx === now.workingEndPx) return now
  return {
    ...now,
    pxPerMm,
    workingEndPx,
    yOf: (xMm) => workingEndPx - xMm * pxPerMm,
    xAt: (yPx) => (workingEndPx - yPx) / pxPerMm,
  }
}
