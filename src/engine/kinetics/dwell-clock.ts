import { addDwell, CLASSES } from './temperature-classes.ts'

/**
 * How long every place has been at which temperature since it was last austenite, until most of it is martensite: all that an additive
 * transformation needs to know of a cooling, however often it was interrupted.
 */
export class DwellClock {
  /** Class after class of `CLASS_MIDDLES_K`, each with all places [CLASSES x n, s]. */
  private readonly dwellS: Float64Array
  private readonly settled: Uint8Array
  private readonly settledK: number
  private readonly ceilingK: number
  private readonly beforeK: Float64Array
  private beforeS = 0

  /**
   * Goes on counting in `dwellS` [CLASSES x n]. `temperatureK` [n] are the temperatures now, `lowestK` [n] the lowest since the heat. A place that was
   * colder than `settledK` is martensite: warming it again tempers it and turns nothing. Time above `ceilingK` is not counted.
   */
  constructor(
    dwellS: Float64Array,
    temperatureK: Float64Array,
    lowestK: Float64Array,
    { settledK, ceilingK = Number.POSITIVE_INFINITY }: { readonly settledK: number; readonly ceilingK?: number },
  ) {
    if (dwellS.length !== CLASSES * temperatureK.length)
      throw new RangeError(`dwell clock: ${dwellS.length} dwell times for ${temperatureK.length} places of ${CLASSES} classes`)
    this.dwellS = dwellS
    this.settledK = settledK
    this.ceilingK = ceilingK
    this.settled = Uint8Array.from(lowestK, (kelvin) => (kelvin < settledK ? 1 : 0))
    this.beforeK = temperatureK.slice()
  }

  /** After every solver step: the temperatures [n] at `timeS` since this clock was made, rising. */
  at(timeS: number, temperatureK: Float64Array): void {
    const { beforeK, dwellS, settled, settledK, ceilingK } = this
    const n = beforeK.length
    const seconds = timeS - this.beforeS
    for (let i = 0; i < n; i++) {
      if (settled[i] === 1) continue
      const before = beforeK[i]!
      const now = temperatureK[i]!
      if (seconds > 0 && now < ceilingK) {
        // Of a run that comes from above the ceiling, the part below it.
        const part = before > ceilingK ? (ceilingK - now) / (before - now) : 1
        addDwell(dwellS, n, i, Math.min(before, ceilingK), now, part * seconds)
      }
      if (now < settledK) settled[i] = 1
    }
    beforeK.set(temperatureK)
    this.beforeS = timeS
  }
}

/** Dwell times [CLASSES, s] of one cooling curve. Throws RangeError unless there is a temperature for each time. */
export function dwellOf(timesS: readonly number[], temperaturesK: readonly number[]): Float64Array {
  if (timesS.length !== temperaturesK.length)
    throw new RangeError(`dwell: ${timesS.length} times for ${temperaturesK.length} temperatures; give one for each`)
  const dwellS = new Float64Array(CLASSES)
  for (let i = 1; i < timesS.length; i++)
    addDwell(dwellS, 1, 0, temperaturesK[i - 1]!, temperaturesK[i]!, timesS[i]! - timesS[i - 1]!)
  return dwellS
}
