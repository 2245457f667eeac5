/** How quantities are written for the smith who reads; a shop that works in inches and Fahrenheit brings its own. */
export interface Wording {
  /** A temperature [K]. */
  temperature(kelvin: number): string
  /** A length [m]. */
  length(metres: number): string
  /** A depth under the skin [m], which is a few hundredths of a millimetre. */
  depth(metres: number): string
  /** A lapse of time [s]. */
  time(seconds: number): string
  /** Rockwell C hardness. */
  hardness(hrc: number): string
  /** What a tank holds [m3]. */
  volume(cubicMetres: number): string
  /** Weight of a piece [kg]. */
  mass(kilograms: number): string
}

/** Celsius, millimetres, litres, kilograms. */
export const IN_METRIC: Wording = {
  temperature: (kelvin) => `${Math.round(kelvin - 273.15)} °C`,
  length: (metres) => {
    const millimetres = metres * 1000
    return `${millimetres < 10 ? Number(millimetres.toFixed(1)) : Math.round(millimetres)} mm`
  },
  depth: (metres) => `${Number((metres * 1000).toFixed(2))} mm`,
  time: timeInWords,
  hardness: (hrc) => `${Math.round(hrc)} HRC`,
  volume: (cubicMetres) => `${Number((cubicMetres * 1000).toPrecision(2))} L`,
  mass: (kilograms) => `${Number(kilograms.toPrecision(2))} kg`,
}

/** `45 s`, `12 min`, `2 h`, `1 h 30 min`. */
export function timeInWords(seconds: number): string {
  if (seconds < 10) return `${Number(seconds.toFixed(1))} s`
  if (seconds < 90) return `${Math.round(seconds)} s`
  const minutes = Math.round(seconds / 60)
  if (minutes < 90) return `${minutes} min`
  const hours = Math.floor(minutes / 60)
  const rest = minutes - 60 * hours
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`
}
