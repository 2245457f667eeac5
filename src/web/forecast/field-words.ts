import type { Picture } from '#contract/picture-fields.ts'
import type { System } from '#units/length.ts'
import { formatTemperature, kelvinFromCelsius } from '#units/temperature.ts'
import type { Field } from '#web/bench/bench.ts'
import { fieldValues } from './field-values.ts'

/** What the cut-away can show: short, and in full for who does not see it. */
export const FIELD_NAMES: { readonly [Of in Field]: readonly [short: string, full: string] } = {
  heat: ['Heat', 'Temperature at the time of the cursor'],
  became: ['Became', 'What the metal has become'],
  quenched: ['Quenched', 'Hardness as quenched'],
  tempered: ['Tempered', 'Hardness after tempering'],
  band: ['Doubt', 'Width of the band that holds nine in ten'],
  colours: ['Colours', 'Temper colours of the skin'],
}

/** The span of a field over the piece, with its unit: `840 to 857 °C`, `52 to 56 HRC`. Empty for fields that have words. */
export function spanSays(picture: Picture, field: Field, instantS: number, units: System): string {
  const values = fieldValues(picture, field, instantS, units)
  if (values === undefined) return ''
  const { low, high } = values
  if (field === 'heat') {
    const degrees = (celsius: number): string => formatTemperature(kelvinFromCelsius(celsius), units)
    return degrees(low) === degrees(high)
      ? `${degrees(low)} all through`
      : `${degrees(low).replace(/ .*/u, '')} to ${degrees(high)}`
  }
  const [from, to] = [values.figureOf(low), values.figureOf(high)]
  return from === to ? `${to} ${values.unit} all through` : `${from} to ${to} ${values.unit}`
}
