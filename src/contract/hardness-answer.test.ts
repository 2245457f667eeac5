import { expect, test } from 'vitest'
import { convertHardness } from './hardness-answer.ts'
import { InputProblems } from './problems.ts'

function problemsOf(act: () => unknown): InputProblems['problems'] {
  try {
    act()
  } catch (error) {
    if (error instanceof InputProblems) return error.problems
    throw error
  }
  throw new Error('nothing was refused')
}

test.each([
  ['52 HRC', 'HV', 544],
  ['544 HV', 'HRC', 52],
  ['302 HB', 'hv', 319],
  ['60 HRC', 'HRA', 81.2],
  ['81.2 HRA', 'HRC', 60],
  ['HRC 40', 'MPa', 1255],
  ['90 HRB', 'HB', 185],
])('%s in %s is %f (ASTM E140, A370)', (typed, scale, expected) => {
  const figure = convertHardness(typed, scale)
  expect(Math.abs(figure.value - expected)).toBeLessThanOrEqual(0.5)
  expect(figure.low).toBeLessThan(figure.value)
  expect(figure.high).toBeGreaterThan(figure.value)
  expect(figure.basis).toBe('published')
})

test('names the field that cannot be read, and both when neither can', () => {
  expect(problemsOf(() => convertHardness('52', 'HV')).map(({ field }) => field)).toEqual(['hardness'])
  expect(problemsOf(() => convertHardness('52 HRC', 'HX')).map(({ field }) => field)).toEqual(['scale'])
  expect(problemsOf(() => convertHardness('hard', 'soft')).map(({ field }) => field)).toEqual(['hardness', 'scale'])
})

test('says where the standards stop instead of converting beyond them', () => {
  expect(problemsOf(() => convertHardness('12 HRC', 'HV'))[0]?.says).toMatch(/20\.\.68 HRC/)
  expect(problemsOf(() => convertHardness('64 HRC', 'MPa'))[0]?.says).toMatch(/outside MPa/)
  expect(problemsOf(() => convertHardness('80 HRB', 'HRC'))[0]?.says).toMatch(/outside HRC/)
})
