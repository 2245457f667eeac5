import { readFileSync } from 'node:fs'
import { parse } from 'csv-parse/sync'
import { describe, expect, test } from 'vitest'
import { type RadialOutcome, runRadialStage } from '#engine/conduction/radial.ts'

// Expected values, tolerances, sources and provenance stand in each row of the file.
type Row = { readonly [column: string]: string }
const rows: Row[] = parse(readFileSync(new URL('./data/conduction-analytic-cases.csv', import.meta.url), 'utf8'), {
  columns: true,
})
const number = (row: Row, column: string): number => Number(row[column])
const kelvin = (celsius: number): number => celsius + 273.15

/** Temperature at a distance from the middle, linear between nodes (80 and more cells: that costs under 0.02 K here) [K]. */
function temperatureAt({ radiusM, temperatureK }: RadialOutcome, atM: number): number {
  let i = 0
  while (i + 2 < radiusM.length && radiusM[i + 1]! < atM) i++
  const share = (atM - radiusM[i]!) / (radiusM[i + 1]! - radiusM[i]!)
  return temperatureK[i]! + share * (temperatureK[i + 1]! - temperatureK[i]!)
}

function solve(
  row: Row,
  given: { shape: 'plate' | 'cylinder' | 'sphere'; radiusM: number; k: number; film: number; cells: number },
): RadialOutcome {
  return runRadialStage({
    shape: given.shape,
    radiusM: given.radiusM,
    cells: given.cells,
    materials: [
      {
        densityKgPerM3: number(row, 'rho_kg_m3'),
        conductivity: [[300, given.k]],
        specificHeat: [[300, number(row, 'cp_J_kgK')]],
      },
    ],
    temperatureK: kelvin(number(row, 'T_initial_C')),
    contact: {
      fluid: [[0, kelvin(number(row, 'T_ambient_C'))]],
      film: [[300, given.film]],
      emissivity: number(row, 'emissivity'),
    },
    endS: number(row, 'time_s'),
    toleranceK: 0.02,
  })
}

const within = (row: Row): number => Number.parseFloat(row.tolerance!)
const ofKind = (kind: string): Row[] => rows.filter((row) => row.kind === kind)

describe('[HC1] published and closed-form cases', () => {
  test.each(ofKind('convection, sudden'))('$case_id: $description, $position after $time_s s', (row) => {
    const radiusM = number(row, 'size_m') / 2
    const shape = row.geometry === 'slab' ? 'plate' : (row.geometry as 'cylinder' | 'sphere')
    const outcome = solve(row, { shape, radiusM, k: number(row, 'k_W_mK'), film: number(row, 'h_W_m2K'), cells: 80 })
    const place = { centre: 0, surface: 1, 'half radius': 0.5 }[row.position!]!
    expect(Math.abs(temperatureAt(outcome, place * radiusM) - kelvin(number(row, 'expected_C')))).toBeLessThan(within(row))
  })

  // The closed form holds for a bar of one temperature throughout: conductivity is made large.
  test.each(ofKind('radiation, lumped'))('$case_id: $description, after $time_s s', (row) => {
    const outcome = solve(row, { shape: 'cylinder', radiusM: number(row, 'size_m') / 2, k: 1e5, film: 0, cells: 10 })
    expect(Math.abs(outcome.temperatureK[0]! - kelvin(number(row, 'expected_C')))).toBeLessThan(within(row))
  })

  // A sudden surface temperature is a film of 1e8 W/(m2 K): at 2.5e6 W/m2 the surface then stands 0.03 K off. The far face of the
  // plate, 0.1 m deep, feels nothing by then.
  test.each(ofKind('semi-infinite, surface temperature'))('$case_id: $position after $time_s s', (row) => {
    const outcome = solve(row, { shape: 'plate', radiusM: 0.1, k: number(row, 'k_W_mK'), film: 1e8, cells: 400 })
    const depthM = Number.parseFloat(row.position!) / 1000
    expect(Math.abs(temperatureAt(outcome, 0.1 - depthM) - kelvin(number(row, 'expected_C')))).toBeLessThan(within(row))
  })

  // Expected 147.7 degC, read off a chart: J.P. Holman, Heat Transfer, 5th ed. (1981), example 4.5; the series gives 148.40.
  test('aluminium plate of 50 mm from 200 degC with 525 W/(m2 K) at 70 degC, 12.5 mm deep after 60 s', () => {
    const outcome = runRadialStage({
      shape: 'plate',
      radiusM: 0.025,
      cells: 40,
      materials: [{ densityKgPerM3: 2700, conductivity: [[300, 215]], specificHeat: [[300, 900]] }],
      temperatureK: kelvin(200),
      contact: { fluid: [[0, kelvin(70)]], film: [[300, 525]], emissivity: 0 },
      endS: 60,
    })
    expect(Math.abs(temperatureAt(outcome, 0.0125) - kelvin(148.4))).toBeLessThan(0.3)
    expect(Math.abs(temperatureAt(outcome, 0.0125) - kelvin(147.7))).toBeLessThan(3)
  })

  // Expected: the series for R 12.5 mm, k 25, rho c 4.6e6, h 2000, 850 degC into 60 degC (two decimals, 40 terms).
  test.each([
    { timeS: 1, centre: 849.93, surface: 696.09 },
    { timeS: 5, centre: 772.2, surface: 531.01 },
    { timeS: 10, centre: 610.29, surface: 414.54 },
    { timeS: 20, centre: 378.37, surface: 264.7 },
  ])('long bar of 25 mm with a constant film after $timeS s', ({ timeS, centre, surface }) => {
    const outcome = runRadialStage({
      shape: 'cylinder',
      radiusM: 0.0125,
      cells: 80,
      materials: [{ densityKgPerM3: 4600, conductivity: [[300, 25]], specificHeat: [[300, 1000]] }],
      temperatureK: kelvin(850),
      contact: { fluid: [[0, kelvin(60)]], film: [[300, 2000]], emissivity: 0 },
      endS: timeS,
      toleranceK: 0.02,
    })
    expect(Math.abs(outcome.temperatureK[0]! - kelvin(centre))).toBeLessThan(0.1)
    expect(Math.abs(outcome.temperatureK[80]! - kelvin(surface))).toBeLessThan(0.1)
  })
})
