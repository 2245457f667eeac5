import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { runRadialStage } from '#engine/conduction/radial.ts'
import { runStage } from '#engine/conduction/stage.ts'
import { meshOf } from '#engine/geometry/axisymmetric-mesh.ts'
import { outlineFrom } from '#engine/geometry/outline.ts'
import { type ReferenceTable, referenceTables } from '../../bench/reference-tables.ts'
import { solveThermalCase } from '../../bench/solve-case.ts'
import { parseThermalCase, type ThermalCase } from '../../bench/thermal-case.ts'
import { solveOnTwoMeshes } from '../../bench/two-meshes.ts'
import { seriesShare } from './conduction-series.ts'

interface Probes {
  readonly probes: readonly { readonly name: string; readonly temperature_C: readonly number[] }[]
}

function caseNamed(file: string): ThermalCase {
  return parseThermalCase(JSON.parse(readFileSync(new URL(`../../bench/cases/${file}.json`, import.meta.url), 'utf8')))
}

function worstError({ probes }: Probes, rows: ReferenceTable['rows']): number {
  return Math.max(
    ...rows.flatMap(({ temperature_C }, row) => temperature_C.map((t, p) => Math.abs(probes[p]!.temperature_C[row]! - t))),
  )
}

describe('short cylinder', () => {
  // Exact: with one constant film all round the share left is that of the plate times that of the long cylinder (Carslaw & Jaeger,
  // Conduction of Heat in Solids, 2nd ed. 1959, section 1.15).
  test.each(['explicit', 'implicit'] as const)('follows the product of two series, %s steps', (integrator) => {
    const [radiusM, halfM, film, k, endS] = [0.012, 0.014, 2400, 30, 6]
    const probes = [
      { xM: halfM, rM: 0 },
      { xM: halfM, rM: radiusM },
      { xM: 0, rM: 0 },
      { xM: 0, rM: radiusM },
      { xM: 0.5 * halfM, rM: 0.5 * radiusM },
    ]
    const outline = outlineFrom([
      [0, 0],
      [0, radiusM],
      [2 * halfM, radiusM],
      [2 * halfM, 0],
    ])
    const mesh = meshOf(outline, 'normal', { points: probes })
    const contact = { fluid: [[0, 333]], film: [[300, film]], emissivity: 0 } as const
    const { temperatureK } = runStage({
      mesh,
      materials: [{ densityKgPerM3: 7800, conductivity: [[300, k]], specificHeat: [[300, 600]] }],
      materialOfNode: new Uint8Array(mesh.xM.length),
      temperatureK: new Float64Array(mesh.xM.length).fill(1123),
      surroundings: { covered: contact, rest: contact, fromM: 0, level: [[0, 1]] },
      endS,
      toleranceK: 0.05,
      integrator,
    })
    const diffusivity = k / (7800 * 600)
    for (const [p, { xM, rM }] of probes.entries()) {
      const plate = seriesShare('plate', (film * halfM) / k, (diffusivity * endS) / halfM ** 2, Math.abs(xM - halfM) / halfM)
      const round = seriesShare('cylinder', (film * radiusM) / k, (diffusivity * endS) / radiusM ** 2, rM / radiusM)
      const exactK = 333 + 790 * plate * round
      expect(Math.abs(temperatureK[mesh.askedNode[p]!]! - exactK)).toBeLessThan(0.79) // 0.1 % of the start difference
    }
  })
})

describe('reference cases', () => {
  const cylinder = caseNamed('cylinder-in-oil')
  const { rows: cylinderRows } = referenceTables['A: cylinder in oil']!

  // At 5 s the surface falls by 100 K/s through the steepest part of the film, at the corner by 150 K/s at 2 s: 3 K are 30 ms.
  test('A: a cylinder in oil, normal mesh, is within 3 K of the table everywhere', () => {
    expect(worstError(solveThermalCase(cylinder, { grade: 'normal', toleranceK: 0.3 }), cylinderRows)).toBeLessThan(3)
  })

  const carriedOn = solveOnTwoMeshes(cylinder, 0.3, 'extrapolated-fine')
  const fine = carriedOn.probes.map(({ name, temperature_C, carried_K }) => ({
    name,
    temperature_C: temperature_C.map((t, i) => t - carried_K[i]!),
  }))

  test('A: carried on from the draft and the normal mesh, as a case is solved unless more is asked, within 1.5 K', () => {
    expect(worstError(solveOnTwoMeshes(cylinder, 0.3, 'extrapolated'), cylinderRows)).toBeLessThan(1.5)
  })

  test('A: on the fine mesh it is within 1.5 K, carried on from two meshes within 0.5 K', () => {
    expect(worstError(carriedOn, cylinderRows)).toBeLessThan(0.5)
    expect(worstError({ probes: fine }, cylinderRows)).toBeLessThan(1.5)
  })

  test('C: a stepped piece in a fire, normal mesh, is within 0.5 K of the table everywhere', () => {
    const answer = solveThermalCase(caseNamed('stepped-in-fire'), { grade: 'normal', toleranceK: 0.1 })
    expect(worstError(answer, referenceTables['C: stepped piece in a fire']!.rows)).toBeLessThan(0.5)
    expect(Math.abs(answer.imbalance)).toBeLessThan(1e-3)
  })

  // Half way along, ten diameters from the ends' reach, the body and the long bar must agree: two codes, one answer.
  test('A: mid-length follows the long bar until the ends are felt', () => {
    const bar = runRadialStage({
      shape: 'cylinder',
      radiusM: 0.0125,
      cells: 80,
      materials: [cylinder.material],
      temperatureK: cylinder.startK,
      contact: cylinder.surroundings.covered,
      endS: 10,
      toleranceK: 0.03,
    })
    const [core, side] = [fine[0]!, fine[1]!]
    const ten = cylinder.timesS.indexOf(10)
    expect(Math.abs(core.temperature_C[ten]! + 273.15 - bar.temperatureK[0]!)).toBeLessThan(0.5)
    expect(Math.abs(side.temperature_C[ten]! + 273.15 - bar.temperatureK[80]!)).toBeLessThan(0.2)
  })
})

describe('another program', () => {
  // Expected: FreeFem++ 4.9 with quadratic elements, its own mesh, steps and Newton; freefem/make-answers.ts wrote the script and the file.
  const stored = JSON.parse(readFileSync(new URL('./data/conduction-freefem-drift-in-oil.json', import.meta.url), 'utf8')) as {
    readonly rows: ReferenceTable['rows']
  }
  const drift = caseNamed('drift-in-oil')

  test('a drift dipped part way in oil, film below and radiation above the waterline: within 0.6 K of FreeFem++ everywhere', () => {
    expect(worstError(solveOnTwoMeshes(drift, 0.3, 'extrapolated-fine'), stored.rows)).toBeLessThan(0.6)
  })

  // The sharp edge of the point falls by 250 K/s at 2 s: 4 K are 16 ms there.
  test('on the normal mesh within 4 K', () => {
    expect(worstError(solveThermalCase(drift, { grade: 'normal', toleranceK: 0.3 }), stored.rows)).toBeLessThan(4)
  })
})
