import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import type { Estimate } from '#engine/provenance/estimate.ts'
import { BEYOND_E140, E140, E140_SOFT } from './hardness-scale-table.ts'

/** Scales that `convert` knows; MPa is tensile strength. */
export const HARDNESS_SCALES = ['HRC', 'HV', 'HBW', 'HRB', 'HRA', 'HK', 'HR15N', 'HR30N', 'HR45N', 'MPa'] as const
export type HardnessScale = (typeof HARDNESS_SCALES)[number]

const HARD_SOURCE = 'ASTM E140 table 1 (tensile strength: ASTM A370), non-austenitic steel'
const SOFT_SOURCE = 'ASTM E140 table 2 (tensile strength: ASTM A370), non-austenitic steel'

const HV_OF_HRC: Rows = [...BEYOND_E140, ...E140.map(([hrc, hv]) => [hrc, hv] as const)].sort((a, b) => a[0] - b[0])
const HRC_OF_HV: Rows = HV_OF_HRC.map(([hrc, hv]) => [hv, hrc])

/**
 * Rockwell C of a Vickers hardness: ASTM E140 table 1, linear between rows. Below 20 HRC it goes on down the old extension
 * (160 HV = 0 HRC, 100 HV = -20), above 68 up to 70: a monotone scale for models, not a reading to report.
 */
export function hrcFromHv(hv: number): number {
  if (hv < 100) return -20 + (hv - 100) / 3
  return interpolate(HRC_OF_HV, hv)
}

/** Vickers hardness of a Rockwell C hardness; the inverse of `hrcFromHv` for 100..1076 HV. */
export function hvFromHrc(hrc: number): number {
  if (hrc < -20) return Math.max(1, 100 + 3 * (hrc + 20))
  return interpolate(HV_OF_HRC, hrc)
}

/** What each scale reads beside Vickers, in two stretches: hard (20..68 HRC) and soft (60..100 HRB). */
function column(index: number): Rows {
  return E140.flatMap((row) => (Number.isNaN(row[index]!) ? [] : [[row[1], row[index]!] as const]))
}
const BRINELL_SOFT: Rows = [
  [107, 107],
  [150, 150],
  [195, 195],
  [228, 222],
  [237, 226],
]
const TENSILE_SOFT: Rows = E140_SOFT.flatMap(([, hv, mpa]) => (Number.isNaN(mpa) || hv >= 238 ? [] : [[hv, mpa] as const]))
const BY_HV: Record<HardnessScale, Rows> = {
  HRC: column(0),
  HV: [
    [107, 107],
    [940, 940],
  ],
  HBW: [...BRINELL_SOFT, ...column(2)],
  HRB: E140_SOFT.map(([hrb, hv]) => [hv, hrb]),
  HRA: column(4),
  HK: column(3),
  HR15N: column(5),
  HR30N: column(6),
  HR45N: column(7),
  MPa: [...TENSILE_SOFT, ...column(8)],
}
const backwards = (rows: Rows): Rows => rows.map(([hv, value]) => [value, hv] as const)
const HV_BY: Record<HardnessScale, Rows> = {
  HRC: backwards(BY_HV.HRC),
  HV: BY_HV.HV,
  HBW: backwards(BY_HV.HBW),
  HRB: backwards(BY_HV.HRB),
  HRA: backwards(BY_HV.HRA),
  HK: backwards(BY_HV.HK),
  HR15N: backwards(BY_HV.HR15N),
  HR30N: backwards(BY_HV.HR30N),
  HR45N: backwards(BY_HV.HR45N),
  MPa: backwards(BY_HV.MPa),
}

/** A hardness that the standards do not convert. */
export class OutsideScale extends Error {
  override readonly name = 'OutsideScale'
}

/** Least and greatest value of `scale` that the standards convert. */
export function scaleLimits(scale: HardnessScale): readonly [low: number, high: number] {
  const rows = BY_HV[scale]
  return [rows[0]![1], rows[rows.length - 1]![1]]
}

/**
 * `value` on scale `from` as it reads on scale `to`.
 *
 * The band holds nine in ten conversions of single readings: 1.3 HRC either way (hardness.md: one unit of Rockwell C, one sigma of 0.8),
 * carried to the scale asked for; twice that against cold-worked, cast or high-alloy steel.
 * Throws `OutsideScale` where the standards stop: below 20 or above 68 HRC, above 739 HBW, outside 60..100 HRB.
 */
export function convert(value: number, from: HardnessScale, to: HardnessScale): Estimate {
  const [least, most] = scaleLimits(from)
  if (!(value >= least && value <= most))
    throw new OutsideScale(`${value} ${from}: the standards convert ${least}..${most} ${from} only`)
  const hv = interpolate(HV_BY[from], value)
  const rows = BY_HV[to]
  if (hv < rows[0]![0] - 1e-9 || hv > rows[rows.length - 1]![0] + 1e-9)
    throw new OutsideScale(
      `${value} ${from} (${Math.round(hv)} HV) lies outside ${to}, which the standards give for ${rows[0]![1]}..${rows[rows.length - 1]![1]} ${to} only`,
    )
  const source = hv < 238 ? SOFT_SOURCE : HARD_SOURCE
  const at = (shiftHrc: number): number => {
    const shifted = hvFromHrc(hrcFromHv(hv) + shiftHrc)
    return from === to ? value : beyond(rows, shifted)
  }
  return {
    value: from === to ? value : interpolate(rows, hv),
    low: at(-CONVERSION_HRC),
    high: at(CONVERSION_HRC),
    basis: 'published',
    source,
  }
}

/** Half band of a conversion between scales, in HRC: 1.645 sigma of 0.8. */
const CONVERSION_HRC = 1.3

/** Value of `rows` at `x`, carried on beyond the ends at the end slope: for the edges of a band only. */
function beyond(rows: Rows, x: number): number {
  const first = rows[0]!
  const second = rows[1]!
  const last = rows[rows.length - 1]!
  const beforeLast = rows[rows.length - 2]!
  if (x < first[0]) return first[1] + ((x - first[0]) * (second[1] - first[1])) / (second[0] - first[0])
  if (x > last[0]) return last[1] + ((x - last[0]) * (last[1] - beforeLast[1])) / (last[0] - beforeLast[0])
  return interpolate(rows, x)
}

/** Vickers hardness of a Brinell hardness (ASTM E140), held at the ends of the table; fast, for tables that print Brinell. */
export function convertBrinellToHv(hbw: number): number {
  return hbw < BY_HV.HBW[0]![1] ? hbw : interpolate(HV_BY.HBW, hbw)
}
