import { describe, expect, test } from 'vitest'
import { runStage } from '#engine/conduction/stage.ts'
import { meshOf } from '#engine/geometry/axisymmetric-mesh.ts'
import { locateIn } from '#engine/geometry/locate.ts'
import { outlineFrom } from '#engine/geometry/outline.ts'
import { DwellClock, dwellOf } from '#engine/kinetics/dwell-clock.ts'
import { END_QUENCH_DWELL } from '#engine/kinetics/end-quench-dwell.ts'
import { CLASS_MIDDLES_K, CLASSES } from '#engine/kinetics/temperature-classes.ts'
import { transformation } from '#engine/kinetics/transformation.ts'
import { compositionOf } from '#engine/materials/steel.ts'
import { coolingMaterial } from '#engine/materials/thermal-properties.ts'
import { coolingTime800To500 } from '#engine/metallurgy/cooling-clock.ts'
import { END_QUENCH_COOLING } from '#engine/metallurgy/end-quench-cooling.ts'
import { hardeningResponse } from '#engine/metallurgy/hardening-response.ts'
import { hrcFromHv } from '#engine/metallurgy/hardness-scales.ts'
import { usualAustenite } from '#engine/metallurgy/jominy-estimate.ts'
import { airContact } from '#engine/surface-heat/air.ts'
import { committedTable, number, text } from '../validate/data.ts'
import { steelNamed } from '../validate/steels.ts'
import { endQuenchBar } from './end-quench-bar.ts'

const SIXTEENTH_M = 0.0015875
const PLACES = [1, 2, 4, 6, 8, 12, 16, 24, 32]
/** A steel in the middle of A255's range: only its heat matters here. */
const MIDDLING = compositionOf({ C: 0.4, Mn: 0.8, Si: 0.25, Cr: 0.5 })

/**
 * The bar of ASTM A255 by the program's own solver in two dimensions: 25.4 mm round, 101.6 mm long, water on its end face alone, still air at its side,
 * read 0.4 mm under the skin, where the standard grinds its flat. Dwell times at `PLACES` for a steel that hardens (1) or turns to pearlite (0).
 */
function barBySolver(martensiteShare: number): Float64Array[] {
  const [radiusM, lengthM] = [0.0127, 0.1016]
  const points = PLACES.map((sixteenths) => ({ xM: sixteenths * SIXTEENTH_M, rM: radiusM - 0.0004 }))
  const outline = outlineFrom([
    [0, 0],
    [0, radiusM],
    [lengthM, radiusM],
    [lengthM, 0],
  ])
  const mesh = meshOf(outline, 'normal', { points })
  const n = mesh.xM.length
  const startK = new Float64Array(n).fill(1118)
  const dwellS = new Float64Array(CLASSES * n)
  const clock = new DwellClock(dwellS, startK, new Float64Array(n).fill(Number.POSITIVE_INFINITY), { settledK: 0 })
  runStage({
    mesh,
    materials: [coolingMaterial(MIDDLING, { msK: 600, martensiteShare })],
    materialOfNode: new Uint8Array(n),
    temperatureK: startK,
    surroundings: {
      covered: { fluid: [[0, 297]], film: [[300, 12000]], emissivity: 0 },
      rest: airContact(295, { acrossM: 2 * radiusM }),
      // The end face counts as a quarter of a millimetre of height; so much of the side is wet with it.
      fromM: -1,
      level: [[0, 0.00025]],
    },
    endS: 900,
    toleranceK: 0.5,
    observe: (timeS, temperatureK) => clock.at(timeS, temperatureK),
  })
  return points.map(({ xM, rM }) => {
    const { nodes, weights } = locateIn(mesh, xM, rM)
    return Float64Array.from({ length: CLASSES }, (_, k) =>
      nodes.reduce((sum, node, corner) => sum + weights[corner]! * dwellS[k * n + node]!, 0),
    )
  })
}

const bars = [barBySolver(0), barBySolver(1)] as const

/** Hardness along the bar [HRC], by the way that a forecast goes: dwell times, kinetics, hardening response. */
function alongBar(gradeName: string): number[] {
  const steel = steelNamed(gradeName)
  const austenite = usualAustenite(steel.composition)
  const response = hardeningResponse(steel, austenite)
  const turned = transformation(steel, austenite, response.halfMartensiteS)
  return PLACES.map((_, p) => {
    const [pearlitic, martensitic] = bars.map((bar) => Math.exp(turned.lnCooling(bar[p]!, 1, 0))) as [number, number]
    const share = response.martensiteFraction(martensitic)
    return hrcFromHv(response.quenchedHv(share * martensitic + (1 - share) * pearlitic))
  })
}

const BANDS = committedTable('jominy_bands.csv').filter(
  (row) => text(row, 'steel').endsWith('H') && text(row, 'hrc_min') !== '' && text(row, 'hrc_max') !== '',
)
const STEELS = [...new Set(BANDS.map((row) => text(row, 'steel')))].filter((name) => /^\d+H$/u.test(name))

describe('[KI3] the end-quench bar, simulated and turned by the kinetics', () => {
  test('the program’s solver and the plain explicit one put the places at the same times', () => {
    const plain = endQuenchBar(
      coolingMaterial(MIDDLING, { msK: 600, martensiteShare: 1 }),
      [
        [300, 12000],
        [1400, 12000],
      ],
      {
        startK: 1118,
        endS: 900,
        distancesM: PLACES.map((sixteenths) => sixteenths * SIXTEENTH_M),
        cells: 64,
      },
    )
    for (const [p, { timesS, temperaturesK }] of plain.entries()) {
      const inWindow = bars[1][p]!.reduce(
        (sum, s, k) => (CLASS_MIDDLES_K[k]! < 1073 && CLASS_MIDDLES_K[k]! > 773 ? sum + s : sum),
        0,
      )
      expect(Math.abs(inWindow / coolingTime800To500(timesS, temperaturesK) - 1), `J${PLACES[p]}`).toBeLessThan(0.1)
    }
  })

  test('the table of the kinetics is that of the plain bar, of either structure', () => {
    for (const { timeS, share } of END_QUENCH_DWELL) {
      const place = END_QUENCH_COOLING.reduce((best, each) => {
        const off = ([, m, p]: readonly [number, number, number]) => Math.abs(Math.log(Math.sqrt(m * p) / timeS))
        return off(each) < off(best) ? each : best
      })
      const mean = new Float64Array(CLASSES)
      for (const martensiteShare of [0, 1]) {
        const [bar] = endQuenchBar(
          coolingMaterial(MIDDLING, { msK: 600, martensiteShare }),
          [
            [300, 12000],
            [1400, 12000],
          ],
          {
            startK: 1118,
            endS: 2000,
            distancesM: [place[0] * SIXTEENTH_M],
            cells: 64,
          },
        )
        const { timesS, temperaturesK } = bar!
        const ownS = coolingTime800To500(timesS, temperaturesK)
        dwellOf(timesS, temperaturesK).forEach((s, k) => {
          mean[k] = mean[k]! + (500 * s) / ownS
        })
      }
      for (let k = 4; k < 26; k++)
        expect(Math.abs(mean[k]! / share[k]! - 1), `${timeS} s, class ${k}`).toBeLessThan(timeS < 3 ? 0.2 : 0.12)
    }
  })

  test.each(STEELS)('%s comes out inside the band that the standard gives it', (steel) => {
    const rows = BANDS.filter((row) => text(row, 'steel') === steel)
    const hardness = alongBar(steel.replace(/H$/u, ''))
    let inside = 0
    let counted = 0
    for (const row of rows) {
      const p = PLACES.findIndex((sixteenths) => Math.abs(sixteenths - number(row, 'distance_sixteenths')) < 0.05)
      if (p < 0) continue
      counted++
      if (hardness[p]! >= number(row, 'hrc_min') - 1 && hardness[p]! <= number(row, 'hrc_max') + 1) inside++
    }
    expect(counted).toBeGreaterThan(3)
    // One place may lie outside: 8620H does, two units over its band at 4/16 in.
    expect(inside).toBeGreaterThanOrEqual(counted - 1)
  })

  test.each(['4140', '8650', '5160'])('%s on the simulated bar is as hard as its own response says for each place', (name) => {
    const steel = steelNamed(name)
    const response = hardeningResponse(steel, usualAustenite(steel.composition))
    const along = alongBar(name)
    for (const [p, sixteenths] of PLACES.entries()) {
      const [, martensiticS, pearliticS] = END_QUENCH_COOLING.find(([place]) => place === sixteenths)!
      const share = response.martensiteFraction(martensiticS)
      const expected = hrcFromHv(response.quenchedHv(share * martensiticS + (1 - share) * pearliticS))
      expect(Math.abs(along[p]! - expected), `J${sixteenths}`).toBeLessThan(1.5)
    }
  })
})
