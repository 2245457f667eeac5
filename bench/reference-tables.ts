/**
 * Temperatures that other solutions gave for the cases in `cases/`, by name of the case [degC]. One row a time, one column a probe in
 * the order of the case. `within_K` is how far they can be trusted.
 */
export interface ReferenceTable {
  readonly source: string
  readonly within_K: number
  readonly rows: readonly { readonly time_s: number; readonly temperature_C: readonly number[] }[]
}

export const referenceTables: { readonly [name: string]: ReferenceTable } = {
  'A: cylinder in oil': {
    source: 'computed for this project on finer meshes with other programs; +-0.2 K, +-0.5 K at the corner up to 2 s',
    within_K: 0.2,
    rows: [
      { time_s: 1, temperature_C: [849.98, 801.52, 848.29, 805.82, 751.63, 798.25] },
      { time_s: 2, temperature_C: [848.74, 775.55, 840.08, 783.78, 635.07, 762.13] },
      { time_s: 5, temperature_C: [823.86, 642.74, 797.74, 524.74, 380.08, 460.35] },
      { time_s: 10, temperature_C: [681.85, 415.85, 610.37, 404.17, 326.54, 373.56] },
      { time_s: 20, temperature_C: [443.31, 339.45, 414.18, 319.19, 282.26, 306.6] },
      { time_s: 30, temperature_C: [348.38, 300.27, 335.4, 286.33, 258.04, 276.44] },
      { time_s: 60, temperature_C: [280.32, 251.65, 272.34, 232.54, 215.35, 226.96] },
    ],
  },
  'C: stepped piece in a fire': {
    source: 'computed for this project on finer meshes; about +-0.2 K, not checked by another program',
    within_K: 0.2,
    rows: [
      { time_s: 300, temperature_C: [227.14, 220.24, 227.01, 235.58, 223.31, 183.53, 182.17, 232.51] },
      { time_s: 600, temperature_C: [587.14, 571.2, 587.49, 607.18, 579.66, 478.47, 475.53, 599.88] },
      { time_s: 900, temperature_C: [753.94, 745.54, 754.68, 766.29, 749.29, 636.7, 636.0, 761.77] },
      { time_s: 1200, temperature_C: [833.61, 826.56, 831.86, 837.56, 818.46, 666.27, 666.16, 836.29] },
      { time_s: 1800, temperature_C: [856.91, 852.26, 855.28, 858.38, 843.49, 687.84, 688.19, 857.97] },
      { time_s: 2700, temperature_C: [857.31, 852.74, 855.69, 858.72, 844.0, 688.77, 689.15, 858.33] },
    ],
  },
}
