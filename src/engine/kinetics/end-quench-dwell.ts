/** Time spent in each temperature class on the end-quench bar, at the places that cool from 800 to 500 degC in `timeS`. */
interface BarDwell {
  readonly timeS: number
  /** In thousandths of `timeS` [CLASSES]. */
  readonly share: readonly number[]
}

/**
 * The end-quench bar of ASTM A255 at 1, 4, 16 and 32 sixteenths of an inch, mean of a steel that hardens and one that turns to pearlite:
 * computed by test/verification/end-quench-bar.ts with 128 cells, this program's own heat properties, 12 kW/(m2 K) on the end, from 845 degC.
 * Between 800 and 450 degC the shares hardly change along the bar: one cooling is much like another there, only slower.
 */
export const END_QUENCH_DWELL: readonly BarDwell[] = [
  {
    timeS: 1.6,
    share: [
      0, 0, 28, 39, 32, 32, 34, 38, 41, 45, 49, 57, 62, 64, 69, 82, 93, 98, 108, 129, 150, 168, 196, 225, 248, 289, 351, 420, 479,
      567, 763, 910, 1178, 1541, 2104, 3009,
    ],
  },
  {
    timeS: 8.35,
    share: [
      0, 0, 79, 71, 50, 47, 46, 47, 49, 51, 53, 57, 61, 65, 70, 76, 82, 89, 99, 110, 122, 138, 154, 174, 197, 223, 257, 297, 347,
      422, 509, 634, 798, 1014, 1317, 1810,
    ],
  },
  {
    timeS: 60.6,
    share: [
      0, 0, 32, 118, 74, 60, 55, 54, 54, 55, 57, 59, 62, 66, 69, 72, 76, 81, 86, 94, 103, 112, 123, 135, 149, 166, 185, 208, 236,
      274, 320, 377, 446, 532, 637, 791,
    ],
  },
  {
    timeS: 149,
    share: [
      0, 0, 13, 56, 60, 61, 59, 57, 56, 56, 57, 59, 64, 74, 77, 74, 74, 75, 77, 81, 87, 93, 100, 108, 117, 128, 141, 157, 179,
      196, 213, 236, 265, 303, 345, 394,
    ],
  },
]
