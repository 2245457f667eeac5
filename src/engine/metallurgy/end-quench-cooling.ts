/**
 * Time from 800 to 500 degC along the end-quench bar of ASTM A255 [sixteenths of an inch, s where martensite forms, s where pearlite
 * forms]: computed by test/verification/end-quench-bar.ts with 254 cells and this program's own heat properties, 12 kW/(m2 K) on the end from 845 degC
 * and still air at the side.
 *
 * Its rates at 704 degC agree with the printed scale of the bar (SAE J406, from memory) within 10 % at 1/16 in and from 9/16 in on, and
 * lie up to 40 % below it between. Pieces are timed with the same properties, so that this cancels to a large part.
 */
export const END_QUENCH_COOLING: readonly (readonly [sixteenths: number, martensiticS: number, pearliticS: number])[] = [
  [1, 1.54, 1.66],
  [1.5, 2.48, 2.42],
  [2, 3.58, 3.27],
  [2.5, 4.82, 4.21],
  [3, 6.19, 5.25],
  [3.5, 7.69, 6.37],
  [4, 9.31, 7.57],
  [5, 12.9, 10.2],
  [6, 16.8, 13.2],
  [7, 21.1, 16.4],
  [8, 25.6, 20],
  [9, 30.3, 23.7],
  [10, 35.3, 27.8],
  [11, 40.3, 32],
  [12, 45.5, 36.4],
  [13, 50.8, 41.1],
  [14, 56.1, 45.9],
  [15, 61.5, 50.9],
  [16, 66.9, 56.1],
  [18, 77.8, 66.9],
  [20, 88.6, 78.3],
  [22, 99.4, 90.2],
  [24, 110, 102],
  [26, 120, 115],
  [28, 130, 128],
  [30, 139, 140],
  [32, 147, 153],
]
