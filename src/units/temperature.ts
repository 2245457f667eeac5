import Fraction from 'fraction.js'
import type { System } from './length.ts'
import { trimmed } from './length.ts'
import { type Measure, unit, unitAtStart } from './measure.ts'
import { nearestNumber, numberAtStart, shortDecimal } from './number-text.ts'
import { type Reading, read, refused } from './reading.ts'
import { tidied, withUnits } from './typed-text.ts'

export interface TypedTemperature {
  readonly typed: string
  readonly temperatureK: number
}

export interface TypedDifference {
  readonly typed: string
  readonly differenceK: number
}

const DEGREES: Measure = {
  name: 'temperature',
  example: '232 °C or 450 °F',
  usual: ['°C', '°F'],
  units: [
    unit('°c,c,° c,degc,deg c,degrees c,celsius,° celsius,degrees celsius,centigrade', '1'),
    unit('°f,f,° f,degf,deg f,degrees f,fahrenheit,° fahrenheit,degrees fahrenheit', '5/9'),
    unit('k,kelvin', '1'),
  ],
}
/** Kelvin at the nought of each unit of `DEGREES`, in its order. */
const NOUGHT_K = [new Fraction('273.15'), new Fraction('45967/180'), new Fraction(0)]

interface Degrees {
  readonly count: Fraction
  readonly unitIndex: number
  readonly inSi: Fraction
  readonly sign: string
  readonly behind: string
}

/** `450F`, `450 °F`, `232 C`, `505 K`, `-10 °C`; nothing at or below absolute zero. */
export function parseTemperature(input: unknown): Reading<TypedTemperature> {
  const degrees = readDegrees(input, DEGREES.example)
  if (!degrees.ok) return degrees
  const { count, unitIndex, inSi, sign, behind } = degrees.value
  if (sign === '±') return refused(input, 'a temperature, not a swing', `write it as ${DEGREES.example}`)
  if (behind !== '') return refused(input, `"${behind}" after the temperature`, `write only ${DEGREES.example}`)
  const signed = sign === '-' ? count.neg() : count
  const kelvin = signed.mul(inSi).add(NOUGHT_K[unitIndex] ?? 0)
  if (kelvin.lte(0)) return refused(input, 'colder than anything can be', `write it as ${DEGREES.example}`)
  return read({ typed: String(input), temperatureK: nearestNumber(kelvin) })
}

/** A difference without direction: `15 °C`, `±15 C`, `25 °F`. */
export function parseSwing(input: unknown): Reading<TypedDifference> {
  const degrees = readDegrees(input, '15 °C or 25 °F')
  if (!degrees.ok) return degrees
  const { count, inSi, sign, behind } = degrees.value
  if (sign === '-' || (behind !== '' && behind !== 'either way'))
    return refused(input, 'a swing is a difference either way', 'write it as 15 °C or ±25 °F')
  return read({ typed: String(input), differenceK: nearestNumber(count.mul(inSi)) })
}

/**
 * What an instrument's reading is off the truth: `8 °C low` is +8 K to add to the reading, `15 °F high` is -8.3 K;
 * `true` (or `right`) is none.
 */
export function parseReadingError(input: unknown): Reading<TypedDifference> {
  const example = '8 °C low, 15 °F high or true'
  const usual = ['°C low', '°C high']
  if (input === true) return read({ typed: 'true', differenceK: 0 })
  const text = tidied(input, example, usual)
  if (!text.ok) return text
  if (/^(?:true|right|exact|exactly|ok)$/u.test(text.value)) return read({ typed: String(input), differenceK: 0 })
  const degrees = readDegrees(input, example, usual)
  if (!degrees.ok) return degrees
  const { count, inSi, sign, behind } = degrees.value
  const direction = behind === 'low' || behind === 'too low' ? 1 : behind === 'high' || behind === 'too high' ? -1 : 0
  if (count.equals(0) && sign === '' && (behind === '' || direction !== 0)) return read({ typed: String(input), differenceK: 0 })
  if (sign !== '' || direction === 0) return refused(input, 'no saying whether it reads low or high', `write it as ${example}`)
  return read({ typed: String(input), differenceK: direction * nearestNumber(count.mul(inSi)) })
}

function readDegrees(input: unknown, example: string, usual = DEGREES.usual): Reading<Degrees> {
  const text = tidied(input, example, usual)
  if (!text.ok) return text
  const sign = /^[-+±]/u.exec(text.value)?.[0] ?? ''
  const unsigned = text.value.slice(sign.length).trimStart()
  const number = numberAtStart(unsigned)
  if (number.found === 'doubtful') return refused(input, number.why, `${number.mend}, as ${example}`)
  if (number.found === 'nothing') return refused(input, 'no figure in it', `write it as ${example}`)
  const rest = unsigned.slice(number.length).trimStart()
  if (rest === '')
    return refused(input, 'a number by itself, with no unit', `write its unit, as ${withUnits(text.value, usual, example)}`)
  if (/^(?:°|deg|degrees)$/u.test(rest)) return refused(input, 'degrees of which scale?', `write °C or °F, as ${example}`)
  const found = unitAtStart(rest, DEGREES)
  if (found === undefined)
    return refused(input, `"${rest.slice(0, 20)}" is no unit of temperature`, `write °C, °F or K, as ${example}`)
  return read({
    count: number.value,
    unitIndex: found.index,
    inSi: found.unit.inSi,
    sign: sign === '+' ? '' : sign,
    behind: rest.slice(found.length).trim(),
  })
}

export function kelvinFromCelsius(celsius: number): number {
  return celsius + 273.15
}

export function celsiusFromKelvin(temperatureK: number): number {
  return temperatureK - 273.15
}

function fahrenheitFromKelvin(temperatureK: number): number {
  return (temperatureK * 9) / 5 - 459.67
}

/** For reading, to the whole degree (or `decimals`): `232 °C`, `450 °F`. */
export function formatTemperature(temperatureK: number, system: System, decimals = 0): string {
  return system === 'metric'
    ? `${trimmed(celsiusFromKelvin(temperatureK), decimals)} °C`
    : `${trimmed(fahrenheitFromKelvin(temperatureK), decimals)} °F`
}

/** A difference for reading: `8 °C`, `15 °F`. */
export function formatDifference(differenceK: number, system: System, decimals = 0): string {
  return system === 'metric' ? `${trimmed(differenceK, decimals)} °C` : `${trimmed((differenceK * 9) / 5, decimals)} °F`
}

/** For typing again: the same temperature. */
export function temperatureText(temperatureK: number, system: System): string {
  // Subtracting the nought leaves rounding noise behind the eighth decimal, which nobody means.
  const value = system === 'metric' ? celsiusFromKelvin(temperatureK) : fahrenheitFromKelvin(temperatureK)
  return `${shortDecimal(Number(value.toFixed(8)))} ${system === 'metric' ? '°C' : '°F'}`
}
