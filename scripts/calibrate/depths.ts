// Times the centres of the sections that sheets name, for src/engine/metallurgy/published-critical-cooling.ts.
import { runRadialStage } from '#engine/conduction/radial.ts'
import { gradeById } from '#engine/materials/catalogue.ts'
import { steelOf } from '#engine/materials/grade-heats.ts'
import { coolingMaterial } from '#engine/materials/thermal-properties.ts'
import { coolingTime800To500 } from '#engine/metallurgy/cooling-clock.ts'
import { bathContact } from '#engine/surface-heat/bath.ts'
import type { BathKind } from '#engine/surface-heat/gear.ts'

const CASES: readonly { gradeId: string; acrossM: number; kind: BathKind; fromK: number; bathK: number }[] = [
  { gradeId: 'A2', acrossM: 0.1, kind: 'still air', fromK: 1233, bathK: 295 },
  { gradeId: 'S7', acrossM: 0.075, kind: 'still air', fromK: 1213, bathK: 295 },
  { gradeId: 'O1', acrossM: 0.075, kind: 'medium oil', fromK: 1073, bathK: 323 },
]
for (const { gradeId, acrossM, kind, fromK, bathK } of CASES) {
  const { composition } = steelOf(gradeById(gradeId)!)
  const times: number[] = []
  const centre: number[] = []
  const { capacityJPerK: _, ...contact } = bathContact({ name: kind, kind, temperatureK: bathK }, { agitation: 'moderate', acrossM })
  runRadialStage({
    shape: 'cylinder',
    radiusM: acrossM / 2,
    cells: 40,
    materials: [coolingMaterial(composition, { msK: 450, martensiteShare: 1 })],
    temperatureK: fromK,
    contact,
    endS: 7200,
    observe: (timeS, temperatureK) => {
      times.push(timeS)
      centre.push(temperatureK[0]!)
      return temperatureK[0]! < 700
    },
  })
  console.log(gradeId, acrossM, kind, coolingTime800To500(times, centre).toFixed(0))
}
