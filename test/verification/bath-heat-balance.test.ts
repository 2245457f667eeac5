import { readFileSync } from 'node:fs'
import { parse } from 'csv-parse/sync'
import { describe, expect, test } from 'vitest'
import { bathAfterBar, bathHeatCapacityJPerK, scrapBarToWarm } from '#engine/surface-heat/bath.ts'
import type { Bath } from '#engine/surface-heat/gear.ts'

const ZERO_DEGC_K = 273.15

const cases = (
  parse(readFileSync(new URL('./data/oil_bath_cases.csv', import.meta.url)), { columns: true }) as Record<string, string>[]
).map((row) => ({ id: row.case_id!, value: (column: string) => Number(row[column]) }))

/** The bath of a case: the oil whose density turns the mass printed into the volume that a smith would name. */
function bathOf(value: (column: string) => number): Bath {
  const kgPerM3 = 875
  return {
    name: 'oil',
    kind: 'medium oil',
    volumeM3: value('oil_mass_kg') / kgPerM3,
    temperatureK: value('oil_from_c') + ZERO_DEGC_K,
  }
}

describe('[HC6] heat balance of an oil bath', () => {
  test('there are cases', () => expect(cases.length).toBeGreaterThanOrEqual(5))

  // Whole steel to the bath's temperature, nothing lost, 700 J/(kg K) for steel and 1900 for oil: worked by hand in the table.
  test.each(cases)('$id: the oil rises as worked', ({ value }) => {
    const bath = bathOf(value)
    const afterK = bathAfterBar(bath, { massKg: value('steel_mass_kg'), atK: value('steel_from_c') + ZERO_DEGC_K })
    expect(Math.abs((afterK - bath.temperatureK) / value('oil_rise_c') - 1)).toBeLessThan(0.02)
  })

  test.each(cases)('$id: the bar that warms it so is the bar of the case', ({ value }) => {
    const massKg = scrapBarToWarm(bathOf(value), value('final_c') + ZERO_DEGC_K, value('steel_from_c') + ZERO_DEGC_K)
    expect(Math.abs(massKg / value('steel_mass_kg') - 1)).toBeLessThan(0.02)
  })

  test('a US gallon of oil to the pound of steel rises by about 38 K (MacKenzie, Thermal Processing)', () => {
    const bath: Bath = { name: 'oil', kind: 'medium oil', volumeM3: 3.785411784e-3, temperatureK: 313 }
    const rise = bathAfterBar(bath, { massKg: 0.45359237, atK: 1123 }) - 313
    expect(rise).toBeGreaterThan(35)
    expect(rise).toBeLessThan(42)
  })

  test('air never warms, and a bath already warm wants no bar', () => {
    const air: Bath = { name: 'air', kind: 'still air', temperatureK: 295 }
    expect(bathHeatCapacityJPerK(air)).toBe(Number.POSITIVE_INFINITY)
    expect(bathAfterBar(air, { massKg: 3, atK: 1100 })).toBe(295)
    expect(scrapBarToWarm({ name: 'oil', kind: 'fast oil', temperatureK: 330 }, 325, 900)).toBe(0)
  })

  test('a bar colder than the aim is refused by name', () => {
    expect(() => scrapBarToWarm({ name: 'drum', kind: 'fast oil', temperatureK: 290 }, 330, 325)).toThrow(/drum.*heat the bar/)
  })
})
