/** A colour of the oxide film and the temperature that a published table gives it. */
export interface TemperColour {
  readonly name: string
  readonly temperatureC: number
  readonly source: string
}

const DOOLEY = 'W.H. Dooley, Applied Science for Metal Workers (early 20th century)'
const TRAINING = 'workshop training table (design and technology teaching)'

/**
 * Temper colours as two published tables have them. Both name a dark purple: 288 degC in Dooley, 280 degC in the training table;
 * Dooley's stands here, as it does for every colour that Dooley names. The film also answers to time, alloy and polish.
 */
export const TEMPER_COLOURS: readonly TemperColour[] = [
  { name: 'very pale yellow', temperatureC: 221, source: DOOLEY },
  { name: 'pale yellow', temperatureC: 230, source: TRAINING },
  { name: 'straw yellow', temperatureC: 238, source: DOOLEY },
  { name: 'dark yellow', temperatureC: 240, source: TRAINING },
  { name: 'dark straw', temperatureC: 249, source: DOOLEY },
  { name: 'brown', temperatureC: 250, source: TRAINING },
  { name: 'brownish yellow', temperatureC: 260, source: DOOLEY },
  { name: 'brown to purple', temperatureC: 260, source: TRAINING },
  { name: 'purple', temperatureC: 270, source: TRAINING },
  { name: 'yellow tinged with purple', temperatureC: 271, source: DOOLEY },
  { name: 'light purple', temperatureC: 277, source: DOOLEY },
  { name: 'dark purple', temperatureC: 288, source: DOOLEY },
  { name: 'dark blue', temperatureC: 299, source: DOOLEY },
  { name: 'blue', temperatureC: 300, source: TRAINING },
  { name: 'pale blue', temperatureC: 321, source: DOOLEY },
  { name: 'blue tinged with green', temperatureC: 332, source: DOOLEY },
]
