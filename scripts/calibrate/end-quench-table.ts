// Prints the table of src/engine/metallurgy/end-quench-cooling.ts: node --conditions=source --import tsx scripts/calibrate/end-quench-table.ts
import type { Rows } from '#engine/arithmetic/table.ts'
import { compositionOf } from '#engine/materials/steel.ts'
import { coolingMaterial } from '#engine/materials/thermal-properties.ts'
import { coolingTime800To500 } from '#engine/metallurgy/cooling-clock.ts'
import { endQuenchBar } from './end-quench-bar.ts'

const SIXTEENTH_M = 0.0015875
const SIXTEENTHS = [1, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 18, 20, 22, 24, 26, 28, 30, 32]
/** The jet on the end [W/(m2 K)]: the level at which the rate at 704 degC agrees with the printed scale at 1/16 in and beyond 9/16 in. */
const JET: Rows = [[300, 12000]]
/** A steel between the plain and the alloyed: the bar's times differ by a few per cent from one steel to the next. */
const STEEL = compositionOf({ C: 0.4, Mn: 0.8, Si: 0.25, Cr: 0.7, Mo: 0.1 })

const distances = SIXTEENTHS.map((sixteenths) => sixteenths * SIXTEENTH_M)
const times = [1, 0].map((martensiteShare) =>
  endQuenchBar(coolingMaterial(STEEL, { msK: 600, martensiteShare }), JET, 1118.15, distances, 400).map(({ timesS, temperaturesK }) =>
    coolingTime800To500(timesS, temperaturesK),
  ),
)
SIXTEENTHS.forEach((sixteenths, i) => {
  const [hard, soft] = times.map((row) => row[i]!.toPrecision(3))
  console.log(`  [${sixteenths}, ${Number(hard)}, ${Number(soft)}],`)
})
