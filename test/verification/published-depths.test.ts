import { expect, test } from 'vitest'
import { runRadialStage } from '#engine/conduction/radial.ts'
import { gradeById } from '#engine/materials/catalogue.ts'
import { steelOf } from '#engine/materials/grade-heats.ts'
import { coolingMaterial } from '#engine/materials/thermal-properties.ts'
import { coolingTime800To500 } from '#engine/metallurgy/cooling-clock.ts'
import { hardeningResponse } from '#engine/metallurgy/hardening-response.ts'
import { usualAustenite } from '#engine/metallurgy/jominy-estimate.ts'
import { airContact } from '#engine/surface-heat/air.ts'

/** Time from 800 to 500 degC of the centre of a long round in still air [s]. */
function centreInAirS(gradeId: string, acrossM: number, fromK: number): number {
  const timesS: number[] = []
  const temperaturesK: number[] = []
  runRadialStage({
    shape: 'cylinder',
    radiusM: acrossM / 2,
    cells: 30,
    materials: [coolingMaterial(steelOf(gradeById(gradeId)!).composition, { msK: 450, martensiteShare: 1 })],
    temperatureK: fromK,
    contact: airContact(295, { acrossM }),
    endS: 7200,
    observe: (timeS, temperatureK) => {
      timesS.push(timeS)
      temperaturesK.push(temperatureK[0]!)
      return temperatureK[0]! < 700
    },
  })
  return coolingTime800To500(timesS, temperaturesK)
}

// Crucible data sheet S7: air up to about 75 mm. AZoM materials articles 6218 and 6222: the A group in air to 100 mm at least.
test.each([
  ['S7', 0.075, 1213, 0.8, 1.25],
  ['A2', 0.1, 1233, 1, 3],
  ['A6', 0.1, 1123, 1, 3],
] as const)('[MT10] %s still hardens in the centre of %d m in still air', (gradeId, acrossM, fromK, atLeast, atMost) => {
  const steel = steelOf(gradeById(gradeId)!)
  const { criticalCoolingS } = hardeningResponse(steel, usualAustenite(steel.composition))
  const centreS = centreInAirS(gradeId, acrossM, fromK)
  expect(criticalCoolingS / centreS).toBeGreaterThan(atLeast)
  expect(criticalCoolingS / centreS).toBeLessThan(atMost)
})
