import Fraction from 'fraction.js'
import { type Measure, type MeasureOptions, readMeasure, unit } from './measure.ts'
import { nearestNumber, shortDecimal } from './number-text.ts'
import { type Reading, read } from './reading.ts'

export interface TypedLength {
  readonly typed: string
  readonly lengthM: number
}

/** International inch: 25.4 mm exactly. */
const M_PER_INCH = 0.0254

export const LENGTHS: Measure = {
  name: 'length',
  example: '22 mm or 7/8 in',
  usual: ['mm', 'in'],
  units: [
    unit('m,metre,metres,meter,meters', '1'),
    unit("ft,ft.,foot,feet,'", '3048/10000'),
    unit('in,inch,inches,"', '254/10000'),
    unit('cm,centimetre,centimetres,centimeter,centimeters', '1/100'),
    unit('mm,millimetre,millimetres,millimeter,millimeters', '1/1000'),
    unit('thou', '254/10000000'),
  ],
}

/** `7/8 in`, `1-3/16"`, `1 3/16 in`, `22 mm`, `2.2 cm`, `1' 6"`; never negative, and nothing only with `zero`. */
export function parseLength(input: unknown, options: MeasureOptions = {}): Reading<TypedLength> {
  const exact = readMeasure(input, LENGTHS, options)
  return exact.ok ? read({ typed: String(input), lengthM: nearestNumber(exact.value) }) : exact
}

/** `'metric'`: mm and degC; `'inch'`: inches with fractions and degF. */
export type System = 'metric' | 'inch'

/** For reading: `22.2 mm`, or the nearest sixteenth (or `nearest`) of an inch: `7/8 in`, `1-3/16 in`. */
export function formatLength(lengthM: number, system: System, nearest: 16 | 32 | 64 = 16): string {
  if (system === 'metric') {
    const mm = lengthM * 1000
    return `${trimmed(mm, Math.abs(mm) < 10 ? 2 : 1)} mm`
  }
  return `${inchFraction(Math.round((lengthM / M_PER_INCH) * nearest), nearest)} in`
}

/** For typing again: the same length. */
export function lengthText(lengthM: number, system: System): string {
  if (system === 'metric') return `${shortDecimal(lengthM * 1000)} mm`
  const sixtyFourths = (lengthM / M_PER_INCH) * 64
  const whole = Math.round(sixtyFourths)
  if (whole > 0 && Math.abs(sixtyFourths - whole) <= 1e-9 * whole) return `${inchFraction(whole, 64)} in`
  return `${shortDecimal(lengthM / M_PER_INCH)} in`
}

/** `count` parts of an inch cut in `parts`, as smiths write it: 7/8, 1-3/16, 2. */
function inchFraction(count: number, parts: number): string {
  if (!Number.isFinite(count)) return String(count)
  const sign = count < 0 ? '-' : ''
  const size = Math.abs(count)
  const whole = Math.floor(size / parts)
  const rest = new Fraction(size - whole * parts, parts)
  if (rest.equals(0)) return `${sign}${whole}`
  return `${sign}${whole === 0 ? '' : `${whole}-`}${rest.n}/${rest.d}`
}

/** A number with at most `decimals` behind the point and no idle noughts. */
export function trimmed(value: number, decimals: number): string {
  const text = value.toFixed(decimals)
  const short = text.includes('.') ? text.replace(/\.?0+$/u, '') : text
  return short === '-0' ? '0' : short
}
