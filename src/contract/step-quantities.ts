import { COOLING_PLACES, type CoolingPlace } from '#engine/simulation/process.ts'
import { parseLength } from '#units/length.ts'
import { type Reading, read, refused } from '#units/reading.ts'
import { parseTemperature } from '#units/temperature.ts'
import { parseRate } from '#units/temperature-rate.ts'
import { meant } from './nearest-word.ts'
import { quantity } from './quantity-schemas.ts'
import { colourNamed, TEMPER_COLOURS, type TemperColour } from './temper-colours.ts'

/** How much of the piece goes under: `lengthM` is absent for the whole. */
export interface TypedLengthUnder {
  readonly typed: string
  readonly lengthM?: number
}

/** When colours are stopped: a temperature, or a colour with its temperature. */
export interface TypedStop {
  readonly typed: string
  readonly temperatureK: number
  readonly colour?: TemperColour
}

function parseLengthUnder(input: unknown): Reading<TypedLengthUnder> {
  if (typeof input === 'string' && /^\s*(?:the )?(?:whole|all)(?: of it)?\s*$/iu.test(input)) return read({ typed: input })
  const length = parseLength(input)
  return length.ok ? length : refused(input, 'neither a length nor the word whole', 'write whole, 40 mm or 1-1/2 in')
}

function parseStop(input: unknown): Reading<TypedStop> {
  if (typeof input === 'string' && !/\d/u.test(input) && input.trim() !== '') {
    const colour = colourNamed(input)
    if (colour !== undefined) return read({ typed: input, temperatureK: colour.temperatureC + 273.15, colour })
    return refused(
      input,
      'no temper colour that I know',
      `${meant(
        input,
        TEMPER_COLOURS.map(({ name }) => name),
      )} Or write a temperature, as 260 °C`,
    )
  }
  return parseTemperature(input)
}

/** How a piece cools that is not to harden: by so many degrees an hour in a shut furnace, or left in something. */
export interface TypedCooling {
  readonly typed: string
  readonly rateKPerS?: number
  readonly place?: CoolingPlace
}

const PLACES = COOLING_PLACES.join(', ')

function parsePlace(input: unknown): Reading<TypedCooling> {
  const word = typeof input === 'string' ? input.trim().toLowerCase() : ''
  const place = COOLING_PLACES.find((each) => each === word)
  return place === undefined
    ? refused(input, 'nothing that I know to cool it in', `write ${PLACES}`)
    : read({ typed: String(input), place })
}

function parseCooling(input: unknown): Reading<TypedCooling> {
  if (typeof input !== 'string' || /\d/u.test(input)) return parseRate(input)
  const place = parsePlace(input)
  return place.ok
    ? place
    : refused(input, 'neither degrees by the hour nor anything that I know to cool it in', `write 15 °C/h, ${PLACES}`)
}

export const coolingPlace = quantity(parsePlace, `what it cools in: ${PLACES}`, ['vermiculite', 'still air'])
export const cooling = quantity(parseCooling, `how it cools: degrees by the hour in a shut furnace, or ${PLACES}`, [
  '15 °C/h',
  'vermiculite',
])
export const lengthUnder = quantity(
  parseLengthUnder,
  'how much goes under, from the working end: whole, or a length with its unit',
  ['whole', '40 mm', '1-1/2 in'],
)
export const stopAt = quantity(parseStop, 'where the colours are stopped: a temperature with its unit, or a temper colour', [
  '260 °C',
  'dark straw',
])
