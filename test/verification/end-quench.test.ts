import { readFileSync } from 'node:fs'
import { parse } from 'csv-parse/sync'
import { describe, expect, test } from 'vitest'
import type { Rows } from '#engine/arithmetic/table.ts'
import { compositionOf } from '#engine/materials/steel.ts'
import { coolingMaterial } from '#engine/materials/thermal-properties.ts'
import { coolingTime800To500 } from '#engine/metallurgy/cooling-clock.ts'
import { END_QUENCH_COOLING } from '#engine/metallurgy/end-quench-cooling.ts'
import { type BarHistory, endQuenchBar } from './end-quench-bar.ts'

const SIXTEENTH_M = 0.0015875
/** The jet on the end [W/(m2 K)], and a steel between the plain and the alloyed. */
const JET: Rows = [[300, 12000]]
const STEEL = compositionOf({ C: 0.4, Mn: 0.8, Si: 0.25, Cr: 0.7, Mo: 0.1 })
const CELLS = 127

function bar(martensiteShare: number, sixteenths: readonly number[], composition = STEEL): BarHistory[] {
  return endQuenchBar(coolingMaterial(composition, { msK: 600, martensiteShare }), JET, {
    startK: 1118.15,
    endS: 200,
    distancesM: sixteenths.map((each) => each * SIXTEENTH_M),
    cells: CELLS,
  })
}

describe('[MT9] the end-quench bar', () => {
  const sixteenths = END_QUENCH_COOLING.map(([place]) => place)
  const histories = [bar(1, sixteenths), bar(0, sixteenths)]

  test('is the table that hardness is looked up by', () => {
    END_QUENCH_COOLING.forEach(([place, ...times], i) => {
      times.forEach((s, k) => {
        const { timesS, temperaturesK } = histories[k]![i]!
        // The table was made with half the cell size.
        expect(Math.abs(coolingTime800To500(timesS, temperaturesK) / s - 1), `${place}/16 in`).toBeLessThan(0.02)
      })
    })
  })

  test('cools as fast at 704 degC as the printed scale says at its end and beyond 9/16 in; up to 40 % slower between', () => {
    const printed = parse(readFileSync(new URL('./data/jominy_cooling_rates.csv', import.meta.url)), { columns: true }) as Record<
      string,
      string
    >[]
    for (const row of printed) {
      const place = Number(row.distance_sixteenths)
      const i = sixteenths.indexOf(place)
      if (i < 0) continue
      const ratio = rateAt(histories[0]![i]!, 977.15) / Number(row.cooling_rate_C_per_s_at_704C)
      expect(ratio, `${place}/16 in`).toBeGreaterThan(place >= 10 ? 0.88 : 0.6)
      expect(ratio, `${place}/16 in`).toBeLessThan(1.12)
    }
  })

  test('differs little from one steel to the next', () => {
    const plain = bar(1, [4, 12], compositionOf({ C: 0.5, Mn: 0.75, Si: 0.2 }))
    plain.forEach(({ timesS, temperaturesK }, k) => {
      const [, s] = END_QUENCH_COOLING.find(([place]) => place === [4, 12][k])!
      expect(Math.abs(coolingTime800To500(timesS, temperaturesK) / s - 1)).toBeLessThan(0.05)
    })
  })
})

/** Rate of cooling at `atK`, over 20 K [K/s]. */
function rateAt({ timesS, temperaturesK }: BarHistory, atK: number): number {
  const when = (kelvin: number): number => {
    const i = temperaturesK.findIndex((t) => t <= kelvin)
    const a = temperaturesK[i - 1]!
    return timesS[i - 1]! + ((timesS[i]! - timesS[i - 1]!) * (a - kelvin)) / (a - temperaturesK[i]!)
  }
  return 20 / (when(atK - 10) - when(atK + 10))
}
