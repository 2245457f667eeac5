import { describe, expect, test } from 'vitest'
import { gradeById } from '#engine/materials/catalogue.ts'
import { steelOf } from '#engine/materials/grade-heats.ts'
import { compositionOf, type Steel } from '#engine/materials/steel.ts'
import { leastHeatK } from './hardening-heat.ts'
import { steelFacts } from './steel-sheet.ts'

const C = 273.15
const ofGrade = (id: string) => {
  const grade = gradeById(id)
  if (grade === undefined) throw new Error(`no grade ${id}`)
  return steelFacts(steelOf(grade))
}
const analysed = (elements: Parameters<typeof compositionOf>[0]): Steel => ({
  name: 'analysed steel',
  composition: compositionOf(elements),
  range: {},
  grainSize: 7,
})

describe('what the sheets give of a grade', () => {
  test('baths: the fiercest that a sheet names, and where water begins', () => {
    expect(['1045', 'W1', '4140', '5160', 'O1', 'S7', 'A2', 'D2', '1144'].map((id) => ofGrade(id).media.fiercest)).toEqual([
      'water',
      'water',
      'oil',
      'oil',
      'oil',
      'oil',
      'air',
      'air',
      'oil',
    ])
    expect(ofGrade('1084').media.waterFromM).toBeCloseTo(0.01, 4)
  })

  test('hardening heats inside their published ranges are no fault, a shade below they are', () => {
    for (const [id, right, cold] of [
      ['1084', 815, 745],
      ['O1', 805, 740],
      ['4140', 850, 770],
      ['S7', 945, 850],
      ['A2', 970, 880],
      ['W1', 780, 725],
    ] as const) {
      const facts = ofGrade(id)
      expect(leastHeatK(facts) - C, id).toBeLessThan(right)
      expect(leastHeatK(facts) - C, id).toBeGreaterThan(cold)
      expect(facts.hardening.toK - C, id).toBeGreaterThanOrEqual(right)
    }
  })

  test('soaks and tempers: rich steels want long soaks and two tempers', () => {
    expect(ofGrade('S7').soak?.leastS).toBe(900)
    expect(ofGrade('O1').soak?.leastS).toBe(600)
    expect(['1084', 'O1', 'S7', 'D2', 'M2'].map((id) => ofGrade(id).cycles.least)).toEqual([1, 1, 2, 2, 3])
  })
})

describe('what the models give', () => {
  test('full hardness goes by the carbon; mild steel never gets there', () => {
    expect(ofGrade('1045').fullHrc.value).toBeGreaterThan(54)
    expect(ofGrade('1045').fullHrc.value).toBeLessThan(61)
    expect(ofGrade('1084').fullHrc.value).toBeGreaterThan(62)
    expect(ofGrade('1018').fullHrc.value).toBeLessThan(46)
  })

  test('the richer the steel, the slower it may cool', () => {
    const times = ['1045', '4140', 'O1', 'S7'].map((id) => ofGrade(id).fullCoolingS)
    expect(times).toEqual([...times].sort((a, b) => a - b))
  })

  test('a hotter or a longer temper leaves it softer', () => {
    const { temperedHrc } = ofGrade('1084')
    const at = (celsius: number, hours: number) => temperedHrc(64, { atK: celsius + C, holdS: 3600 * hours, times: 1 })
    expect(at(260, 1)).toBeLessThan(at(205, 1) - 1)
    expect(at(205, 4)).toBeLessThan(at(205, 1))
  })
})

describe('steel that no sheet speaks of', () => {
  test('baths by its alloy', () => {
    expect(steelFacts(analysed({ C: 0.45, Mn: 0.75, Si: 0.25 })).media.fiercest).toBe('water')
    expect(steelFacts(analysed({ C: 0.41, Mn: 0.85, Si: 0.25, Cr: 1, Mo: 0.2 })).media.fiercest).toBe('oil')
    expect(steelFacts(analysed({ C: 1, Mn: 0.7, Cr: 5.1, Mo: 1.1, V: 0.2 })).media.fiercest).toBe('air')
  })

  test('a heat from its critical temperatures, said to be worked out', () => {
    const { hardening, critical } = steelFacts(analysed({ C: 0.45, Mn: 0.75, Si: 0.25 }))
    expect(hardening.published).toBe(false)
    expect(hardening.fromK).toBeGreaterThan(critical.ac3K)
    expect(hardening.toK - hardening.fromK).toBeCloseTo(50)
  })

  test('silicon moves the brittle range up', () => {
    const plain = steelFacts(analysed({ C: 0.6, Mn: 0.8, Si: 0.25 })).embrittling[0]
    const silicon = steelFacts(analysed({ C: 0.6, Mn: 0.8, Si: 2 })).embrittling[0]
    expect((silicon?.fromK ?? 0) - (plain?.fromK ?? 0)).toBeGreaterThan(80)
  })
})

test('[FI2] oil wants the heat that the sheets give for oil, water may have the cooler one', () => {
  const bearing = steelFacts(steelOf(gradeById('52100')!))
  expect(leastHeatK(bearing, false) - leastHeatK(bearing)).toBeGreaterThan(25)
  const plain = steelFacts(steelOf(gradeById('O1')!))
  expect(leastHeatK(plain, false)).toBe(leastHeatK(plain))
})
