import { expect, test } from 'vitest'
import { gradeById } from '#engine/materials/catalogue.ts'
import { steelOf } from '#engine/materials/grade-heats.ts'
import { compositionOf, type Steel } from '#engine/materials/steel.ts'
import { embrittlingAt, embrittlingRanges, jFactor } from './tempering-embrittlement.ts'

const ZERO_DEGC_K = 273.15

function analysed(given: Parameters<typeof compositionOf>[0]): Steel {
  return { name: 'analysed steel', composition: compositionOf(given), range: {}, grainSize: 7 }
}
function gradeSteel(id: string): Steel {
  const grade = gradeById(id)
  if (grade === undefined) throw new Error(`${id} is not in the catalogue`)
  return steelOf(grade)
}
function at(steel: Steel, degC: number, cooledSlowly = false): string | undefined {
  return embrittlingAt(embrittlingRanges(steel), degC + ZERO_DEGC_K, cooledSlowly)?.kind
}

test('[TM6] plain steel is brittle from 250 to 370 degC and clear on both sides', () => {
  const steel = analysed({ C: 0.6, Mn: 0.7, Si: 0.2 })
  expect(at(steel, 330)).toBe('one-step')
  expect(at(steel, 205)).toBeUndefined()
  expect(at(steel, 430)).toBeUndefined()
})

test('[TM6] silicon moves the range up', () => {
  const steel = analysed({ C: 0.6, Mn: 0.85, Si: 2 })
  expect(at(steel, 300)).toBeUndefined()
  expect(at(steel, 425)).toBe('one-step')
})

test('[TM6] S7 is warned of in the middle of its range and not for its usual tempers', () => {
  const steel = gradeSteel('S7')
  expect(at(steel, 330)).toBeDefined()
  expect(at(steel, 205)).toBeUndefined()
  expect(at(steel, 540)).toBeUndefined()
})

test('[TM7] 4140 minds slow cooling through 500 degC, plain steel does not, molybdenum helps', () => {
  expect(at(gradeSteel('4140'), 500)).toBeUndefined()
  expect(at(gradeSteel('4140'), 500, true)).toBe('two-step')
  expect(at(analysed({ C: 0.45, Mn: 0.45, Si: 0.2 }), 500, true)).toBeUndefined()
  expect(at(analysed({ C: 0.4, Mn: 0.3, Si: 0.2, Cr: 1, Mo: 0.35, P: 0.02 }), 500, true)).toBeUndefined()
})

test('[TM7] J factor of commercial 4140', () => {
  expect(jFactor(compositionOf({ C: 0.4, Mn: 0.85, Si: 0.25, P: 0.02 }))).toBeCloseTo(330, 6)
})

test('[TM6] a range that the sheet names goes first; a tool steel of the catalogue goes by its own sheets', () => {
  const range = (id: string) =>
    embrittlingRanges(gradeSteel(id)).flatMap(({ kind, fromK, toK }) =>
      kind === 'one-step' ? [[Math.round(fromK - ZERO_DEGC_K), Math.round(toK - ZERO_DEGC_K)]] : [],
    )
  expect(range('42CrMo4')).toEqual([[200, 420]])
  expect(range('1045')).toEqual([[250, 370]])
  expect(range('9255')).toEqual([[350, 450]])
  expect(range('O1')).toEqual([])
})

test('mild steel has nothing to embrittle', () => {
  expect(embrittlingRanges(analysed({ C: 0.15, Mn: 0.6 }))).toEqual([])
})
