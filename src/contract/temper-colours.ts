import { TEMPER_COLOURS, type TemperColour } from '#engine/materials/temper-colour-table.ts'

export { TEMPER_COLOURS, type TemperColour }

/** Name of the colour that a table gives so hot an edge; undefined under the first and past the last. */
export function nameOfColour(temperatureC: number): string | undefined {
  return TEMPER_COLOURS.find((colour) => Math.abs(colour.temperatureC - temperatureC) < 0.6)?.name
}

/** The colour of that name; plain `straw` is straw yellow. */
export function colourNamed(name: string): TemperColour | undefined {
  const asked = name
    .toLowerCase()
    .replace(/[\s_-]+/gu, ' ')
    .trim()
  const full = asked === 'straw' ? 'straw yellow' : asked
  return TEMPER_COLOURS.find((colour) => colour.name === full)
}
