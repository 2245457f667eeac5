import fc from 'fast-check'
import { expect, test } from 'vitest'
import { gradeById } from '#engine/materials/catalogue.ts'
import { steelOf } from '#engine/materials/grade-heats.ts'
import { hrcFromHv, hvFromHrc } from './hardness-scales.ts'
import { usualAustenite } from './jominy-estimate.ts'
import { austeniteTempered, freshShare, type TemperRound } from './retained-in-temper.ts'
import { advanceParameter } from './tempering-parameter.ts'
import { temperingResponse } from './tempering-response.ts'

const ZERO_DEGC_K = 273.15
const round = (degC: number, hours: number, times = 1): TemperRound => ({
  peakK: degC + ZERO_DEGC_K,
  parameterK: advanceParameter(0, 20, degC + ZERO_DEGC_K, 3600 * hours),
  times,
})

test('[TM8] in low-alloy steel half turns in an hour near 240 degC, nearly all near 295, hardly any at 180', () => {
  const left = (degC: number): number => austeniteTempered({ Si: 0.25 }, 0, 1, [round(degC, 1)]).left
  expect(left(180)).toBeGreaterThan(0.95)
  expect(left(240)).toBeCloseTo(0.5, 1)
  expect(left(295)).toBeLessThan(0.01)
  expect(austeniteTempered({ Si: 1.9 }, 0, 1, [round(240, 1)]).left).toBeGreaterThan(0.9)
})

test('[TM8] in rich steel it outlasts 400 degC and is fresh martensite after one temper at 540', () => {
  expect(austeniteTempered({ Si: 0.3 }, 1, 0.2, [round(400, 2)]).left).toBeGreaterThan(0.19)
  const once = austeniteTempered({ Si: 0.3 }, 1, 0.2, [round(540, 2)])
  expect(once.left).toBeLessThan(0.005)
  expect(freshShare(once)).toBeGreaterThan(0.19)
  expect(freshShare(austeniteTempered({ Si: 0.3 }, 1, 0.2, [round(540, 2, 2)]))).toBeLessThan(0.005)
})

test('[TM8] nothing is lost: austenite, bainite and martensite come to what there was', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 0.4, noNaN: true }),
      fc.array(fc.record({ degC: fc.integer({ min: 20, max: 700 }), times: fc.integer({ min: 1, max: 3 }) }), { maxLength: 3 }),
      (rich, retained, tempers) => {
        const made = austeniteTempered(
          { Si: 0.4 },
          rich,
          retained,
          tempers.map(({ degC, times }) => round(degC, 1, times)),
        )
        const all = made.left + made.bainite + made.martensite.reduce((sum, { share }) => sum + share, 0)
        expect(Math.abs(all - retained)).toBeLessThan(2e-3)
      },
    ),
  )
})

test('[TM8] A2 tempered once at 540 degC is harder than twice, and twice is what its sheet prints', () => {
  const grade = gradeById('A2')
  if (grade === undefined) throw new Error('A2 is not in the catalogue')
  const steel = steelOf(grade)
  const response = temperingResponse(steel, usualAustenite(steel.composition))
  const after = (times: number): number => {
    const parameterK = advanceParameter(0, response.constant, 540 + ZERO_DEGC_K, 7200 * times)
    const hv = response.temperedHv(hvFromHrc(64), 1, parameterK)
    return hrcFromHv(response.afterTempers(hv, 0.2, [round(540, 2, times)]).hv)
  }
  expect(after(1) - after(2)).toBeGreaterThan(1)
  // Crucible, two tempers of two hours: 57 HRC at 538 degC.
  expect(Math.abs(after(2) - 57)).toBeLessThan(1.5)
})
