import { expect, test } from 'vitest'
import { gradeById } from '#engine/materials/catalogue.ts'
import { steelOf } from '#engine/materials/grade-heats.ts'
import { heatedFrom, refinementOf } from './heated-from.ts'
import type { ProcessStep } from './process.ts'

const C = 273.15
const heat = (degC = 800): ProcessStep => ({ do: 'heat', in: 'forge', toK: degC + C, holdS: 600, even: true })
const normalise = (times: number, degC = 870): ProcessStep => ({
  do: 'normalise',
  in: 'forge',
  toK: degC + C,
  holdS: 300,
  times,
})
const anneal = (degC: number): ProcessStep => ({ do: 'anneal', in: 'forge', toK: degC + C, holdS: 3600 })
const quench: ProcessStep = { do: 'quench', in: 'oil', forS: 120, agitation: 'moderate' }

const job = (grade: string, grainSize: number, ...process: ProcessStep[]) => ({
  steel: steelOf(gradeById(grade)!, { grainSize }),
  process,
})

test('[MT3] without a step that tells, a bar is as it is sold', () => {
  expect(heatedFrom(job('O1', 7, heat(), quench))).toMatchObject({ prior: 'spheroidised', assumed: true })
  expect(heatedFrom(job('S5', 7, heat(880), quench))).toMatchObject({ prior: 'spheroidised', assumed: true })
  expect(heatedFrom(job('4140', 7, heat(850), quench))).toMatchObject({ prior: 'rolled', assumed: true })
})

test('[MT3] normalising makes it fine, annealing coarse again, and a quench leaves martensite for the next heat', () => {
  expect(heatedFrom(job('1095', 7, normalise(1), heat(), quench)).prior).toBe('fine')
  expect(heatedFrom(job('1095', 7, normalise(1), anneal(760), heat(), quench)).prior).toBe('spheroidised')
  expect(heatedFrom(job('1095', 7, heat(), quench, heat(), quench)).prior).toBe('martensite')
  expect(heatedFrom(job('1095', 7, heat(), quench, normalise(1), heat(), quench)).prior).toBe('fine')
})

test('[MT3] a heat that stays under Ac1 changes nothing', () => {
  expect(heatedFrom(job('4140', 7, normalise(2, 700), heat(850), quench)).prior).toBe('rolled')
  expect(refinementOf(job('4140', 7, normalise(2, 700), heat(850), quench), 0)).toBeUndefined()
})

test('[FI7] what each trip buys goes into the next heat; grain finer than the steel has is told and not counted', () => {
  const coarse = job('4140', 3, normalise(3), heat(850), quench)
  const bought = refinementOf(coarse, 0)!
  expect(bought.afterEach).toHaveLength(3)
  expect(bought.grainNumber).toBe(3)
  expect(bought.dissolvingS[1]).toBeLessThan(bought.dissolvingS[0])
  expect(heatedFrom(coarse).grainNumber).toBeCloseTo(bought.afterEach[2]!, 9)
  expect(heatedFrom(coarse).countedNumber).toBe(7)
  expect(heatedFrom(job('4140', 3, normalise(1), heat(850), quench)).countedNumber).toBeLessThan(7)
})
