/** Temperature is sorted into classes of this width, from the top downward [K]. */
const WIDTH_K = 20
const TOP_K = 1173.15
/** 900 down to 180 degC: above, austenite is safe; below, no steel forms anything but martensite. */
export const CLASSES = 36

/** Middle of each class, falling [K]. */
export const CLASS_MIDDLES_K: readonly number[] = Array.from({ length: CLASSES }, (_, k) => TOP_K - (k + 0.5) * WIDTH_K)

/**
 * Adds the `seconds` of a straight run from `fromK` to `toK` to the classes that it passes, each by its share of the way. `dwellS` holds class
 * after class, `stride` places in each; `place` is the one to add to.
 */
export function addDwell(dwellS: Float64Array, stride: number, place: number, fromK: number, toK: number, seconds: number): void {
  const highK = Math.max(fromK, toK)
  const lowK = Math.min(fromK, toK)
  if (lowK >= TOP_K || highK <= TOP_K - CLASSES * WIDTH_K) return
  const first = Math.max(0, Math.floor((TOP_K - highK) / WIDTH_K))
  const last = Math.min(CLASSES - 1, Math.floor((TOP_K - lowK) / WIDTH_K))
  if (first === last && highK <= TOP_K) {
    dwellS[first * stride + place]! += seconds
    return
  }
  const perK = seconds / Math.max(highK - lowK, 1e-9)
  for (let k = first; k <= last; k++) {
    const topK = TOP_K - k * WIDTH_K
    const within = Math.min(highK, topK) - Math.max(lowK, topK - WIDTH_K)
    if (within > 0) dwellS[k * stride + place]! += within * perK
  }
}
