import { runRadialStage } from '#engine/conduction/radial.ts'
import type { ThermalMaterial } from '#engine/conduction/thermal-material.ts'
import { probeFilm } from '#engine/surface-heat/probe-films.ts'
import type { ComparedRow, Comparison } from './comparison.ts'
import { committedTable, number, text } from './data.ts'

const ZERO_DEGC_K = 273.15
const FROM_DEGC = 850
const BATH_DEGC = 40
const ACROSS_M = 0.0125

/** Alloy 600: Special Metals publication SMC-027. */
const ALLOY_600: ThermalMaterial = (() => {
  const degC = [20, 100, 200, 300, 400, 500, 600, 700, 800, 900]
  const conductivity = [14.9, 15.9, 17.3, 19.0, 20.5, 22.1, 23.9, 25.7, 27.5, 29.3]
  const specificHeat = [444, 465, 486, 502, 519, 536, 578, 595, 611, 628]
  const rows = (values: readonly number[]) => degC.map((at, i) => [at + ZERO_DEGC_K, values[i]!] as const)
  return { densityKgPerM3: 8470, conductivity: rows(conductivity), specificHeat: rows(specificHeat) }
})()

/** What the thermocouple in the middle of the probe reads: every figure that the reference oil has limits for. */
function probeInReferenceOil(): Readonly<Record<string, number>> {
  const timesS: number[] = []
  const degC: number[] = []
  const bathK = BATH_DEGC + ZERO_DEGC_K
  runRadialStage({
    shape: 'cylinder',
    radiusM: ACROSS_M / 2,
    cells: 50,
    materials: [ALLOY_600],
    temperatureK: FROM_DEGC + ZERO_DEGC_K,
    contact: { fluid: [[0, bathK]], film: probeFilm('slow oil', bathK), emissivity: 0 },
    endS: 80,
    toleranceK: 0.02,
    observe: (timeS, temperatureK) => {
      timesS.push(timeS)
      degC.push(temperatureK[0]! - ZERO_DEGC_K)
    },
  })
  const timeTo = (at: number): number => {
    const i = degC.findIndex((each) => each <= at)
    return timesS[i - 1]! + ((timesS[i]! - timesS[i - 1]!) * (degC[i - 1]! - at)) / (degC[i - 1]! - degC[i]!)
  }
  const rateAt = (at: number): number => 10 / (timeTo(at - 5) - timeTo(at + 5))
  const swept = Array.from({ length: 117 }, (_, i) => 250 + 5 * i)
  const fastestAt = swept.reduce((best, at) => (rateAt(at) > rateAt(best) ? at : best))
  return {
    'greatest cooling rate': rateAt(fastestAt),
    'temperature at greatest cooling rate': fastestAt,
    'cooling rate at 300 C': rateAt(300),
    'time to 600 C': timeTo(600),
    'time to 400 C': timeTo(400),
    'time to 200 C': timeTo(200),
  }
}

export const probeCooling: Comparison = {
  name: 'Cooling of the 12.5 mm probe in the reference oil',
  unit: '%',
  relative: true,
  wish: 'Cooling curve of the bath probe',
  aim: 10,
  tolerance: 0.5,
  committed: true,
  says: 'Middle of the limits of ISO 9950 / ASTM D6200 for the reference oil, still, from 850 degC: recalled limits, not a measured curve, and the level of the film was fitted to them. No printed curve of any other bath is at hand: water, brine and the quicker oils are held by nothing here.',
  rows: () => {
    const found = probeInReferenceOil()
    return committedTable('probe_quench_limits.csv').flatMap((row): ComparedRow[] => {
      const quantity = text(row, 'quantity')
      const forecast = found[quantity]
      if (forecast === undefined) return []
      return [
        {
          label: `${quantity} [${text(row, 'unit')}]`,
          group: quantity,
          provenance: text(row, 'provenance'),
          source: text(row, 'source'),
          fitted: true,
          published: (number(row, 'low') + number(row, 'high')) / 2,
          forecast,
        },
      ]
    })
  },
}
