import { type System, trimmed } from './length.ts'
import { type Measure, readMeasure, unit } from './measure.ts'
import { nearestNumber, shortDecimal } from './number-text.ts'
import { type Reading, read } from './reading.ts'

export interface TypedVolume {
  readonly typed: string
  readonly volumeM3: number
}

export interface TypedMass {
  readonly typed: string
  readonly massKg: number
}

/** A gallon, quart or pint without `imp` is the US liquid one (231 cubic inches to the gallon); the imperial gallon is 4.54609 L. */
const VOLUMES: Measure = {
  name: 'volume',
  example: '12 L or 5 gal',
  usual: ['L', 'gal'],
  units: [
    unit('m3,cubic metre,cubic metres,cubic meter,cubic meters,cu m', '1'),
    unit('cu ft,ft3,cubic foot,cubic feet', '28316846592/1000000000000'),
    unit('imp gal,imperial gal,imperial gallon,imperial gallons,uk gal,uk gallon,uk gallons,gal imp', '454609/100000000'),
    unit('gal,gallon,gallons,us gal,us gallon,us gallons,gal us', '3785411784/1000000000000'),
    unit('l,litre,litres,liter,liters,dm3', '1/1000'),
    unit('imp qt,imperial quart,imperial quarts,uk qt', '454609/400000000'),
    unit('qt,quart,quarts,us qt', '3785411784/4000000000000'),
    unit('imp pt,imperial pint,imperial pints', '454609/800000000'),
    unit('pt,pint,pints,us pt', '3785411784/8000000000000'),
    unit('cl', '1/100000'),
    unit('cu in,in3,cubic inch,cubic inches', '16387064/1000000000000'),
    unit('ml,millilitre,millilitres,milliliter,milliliters,cm3,cc', '1/1000000'),
  ],
}

const MASSES: Measure = {
  name: 'weight',
  example: '2 kg or 1 lb 4 oz',
  usual: ['kg', 'lb'],
  units: [
    unit('kg,kilo,kilos,kilogram,kilograms', '1'),
    unit('lb,lbs,pound,pounds', '45359237/100000000'),
    unit('oz,ounce,ounces', '45359237/1600000000'),
    unit('g,gram,grams', '1/1000'),
  ],
}

/** `12 L`, `5 gal` (US), `5 imp gal`, `2 qt`, `500 ml`, `300 cu in`. */
export function parseVolume(input: unknown): Reading<TypedVolume> {
  const exact = readMeasure(input, VOLUMES)
  return exact.ok ? read({ typed: String(input), volumeM3: nearestNumber(exact.value) }) : exact
}

/** `2 kg`, `300 g`, `3/4 lb`, `1 lb 4 oz`. */
export function parseMass(input: unknown): Reading<TypedMass> {
  const exact = readMeasure(input, MASSES)
  return exact.ok ? read({ typed: String(input), massKg: nearestNumber(exact.value) }) : exact
}

/** For reading: `12 L`, `500 ml`; `3.2 gal`. */
export function formatVolume(volumeM3: number, system: System): string {
  if (system === 'inch') return `${trimmed(volumeM3 / 3.785411784e-3, 1)} gal`
  return volumeM3 < 1e-3 ? `${trimmed(volumeM3 * 1e6, 0)} ml` : `${trimmed(volumeM3 * 1e3, 1)} L`
}

/** For reading: `1.25 kg`, `300 g`; `1 lb 4 oz`. */
export function formatMass(massKg: number, system: System): string {
  if (system === 'metric') return massKg < 1 ? `${trimmed(massKg * 1000, 0)} g` : `${trimmed(massKg, 2)} kg`
  const ounces = Math.round(massKg / (0.45359237 / 16))
  const pounds = Math.floor(ounces / 16)
  const rest = ounces % 16
  return pounds === 0 ? `${rest} oz` : rest === 0 ? `${pounds} lb` : `${pounds} lb ${rest} oz`
}

/** For typing again. */
export function volumeText(volumeM3: number): string {
  return `${shortDecimal(volumeM3 * 1000)} L`
}
