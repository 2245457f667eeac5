import { describe, expect, test } from 'vitest'
import { analysisProblems, ImpossibleAnalysis, steelOfAnalysis } from './analysed-steel.ts'
import { GRADES, gradeById } from './catalogue.ts'
import { shareBasisOf, steelOf } from './grade-heats.ts'
import { ELEMENTS } from './steel.ts'

describe('catalogue', () => {
  test('87 grades, each once', () => {
    expect(GRADES).toHaveLength(87)
    expect(new Set(GRADES.map(({ id }) => id)).size).toBe(87)
    expect(gradeById('5160')?.family).toBe('Cr spring')
    expect(gradeById('5161')).toBeUndefined()
  })

  test.each(GRADES.map((grade) => [grade.id, grade] as const))(
    '%s: limits in order, carbon bounded, source named',
    (_, grade) => {
      expect(grade.source).not.toBe('')
      expect(grade.limits.C?.high).toBeDefined()
      for (const limit of Object.values(grade.limits)) {
        expect(limit.low ?? 0).toBeGreaterThanOrEqual(0)
        expect(limit.high ?? 100).toBeGreaterThanOrEqual(limit.low ?? 0)
      }
    },
  )

  test('O1: the manganese of the standard is chosen, and that of the stockist kept beside it', () => {
    const o1 = gradeById('O1')
    expect(o1?.limits.Mn).toEqual({ low: 1.0, high: 1.4 })
    expect(o1?.otherLimits).toMatchObject([{ element: 'Mn', limit: { low: 1.4, high: 1.8 }, source: 'Diamond Metals sheet O1' }])
  })
})

describe('steel of a grade', () => {
  test.each(GRADES.map((grade) => [grade.id, grade] as const))(
    '%s: best estimate inside its band, band inside the limits',
    (_, grade) => {
      const { composition, range, grainSize } = steelOf(grade)
      expect(grainSize).toBe(7)
      for (const element of ELEMENTS) {
        const best = composition[element]
        const [low, high] = range[element] ?? [best, best]
        expect(low, element).toBeLessThanOrEqual(best)
        expect(high, element).toBeGreaterThanOrEqual(best)
        expect(low, element).toBeGreaterThanOrEqual(grade.limits[element]?.low ?? 0)
        expect(high, element).toBeLessThanOrEqual(grade.limits[element]?.high ?? 1)
        if (best > 0) expect(shareBasisOf(grade, element).source).not.toBe('')
      }
    },
  )

  test('4140 is the middle of SAE J404, with the incidental elements of bar', () => {
    const { composition } = steelOf(gradeById('4140')!)
    // SAE J404: C 0.38-0.43, Mn 0.75-1.00, Cr 0.80-1.10, Mo 0.15-0.25.
    expect(composition.C).toBeCloseTo(0.405, 6)
    expect(composition.Mn).toBeCloseTo(0.875, 6)
    expect(composition.Cr).toBeCloseTo(0.95, 6)
    expect(composition.Mo).toBeCloseTo(0.2, 6)
    expect(composition.Ni).toBeGreaterThan(0)
    expect(composition.Cu).toBeGreaterThan(0)
  })

  test('S7 follows the typical analysis on its maker sheet', () => {
    const s7 = gradeById('S7')!
    // Crucible S7 sheet: C 0.55 Mn 0.70 Cr 3.25 Mo 1.40 V 0.25.
    expect(steelOf(s7).composition).toMatchObject({ C: 0.55, Mn: 0.7, Cr: 3.25, Mo: 1.4, V: 0.25 })
    expect(shareBasisOf(s7, 'Cr')).toEqual({
      basis: 'published',
      source: 'typical analysis, Crucible Service Centers, data sheet Crucible S7 (AISI S7)',
    })
  })

  test('the grain size that was asked for is carried', () => {
    expect(steelOf(gradeById('1084')!, { grainSize: 9 }).grainSize).toBe(9)
  })
})

describe('steel of an analysis', () => {
  test('takes what is given, bands it with the error of an analysis, and leaves room for what was not named', () => {
    const { composition, range, name, gradeId } = steelOfAnalysis(
      { C: 0.4, Mn: 0.85, Si: 0.25, Cr: 0.95, Mo: 0.2 },
      { name: 'axle' },
    )
    expect(composition).toMatchObject({ C: 0.4, Mn: 0.85, Si: 0.25, Cr: 0.95, Mo: 0.2, Ni: 0, V: 0 })
    expect(range.C![0]).toBeCloseTo(0.385, 9)
    expect(range.C![1]).toBeCloseTo(0.415, 9)
    expect(range.Ni![0]).toBe(0)
    expect(range.Ni![1]).toBeGreaterThan(0.05)
    expect(name).toBe('axle')
    expect(gradeId).toBeUndefined()
  })

  test.each([
    [{ C: 2.4 }, 'C', /cast iron/],
    [{ C: 45 }, 'C', /0\.45 meant/],
    [{ C: -0.1 }, 'C', /less than 0/],
    [{ C: Number.NaN }, 'C', /number/],
    [{ C: 0.4, Mn: '0.8' }, 'Mn', /number/],
    [{ Mn: 0.8 }, 'C', /missing/],
    [{ C: 0.4, Xx: 1 }, 'Xx', /no element/],
    [{ C: 0.4, mn: 1 }, 'mn', /write Mn/],
    [{ C: 0.4, Mo: 20 }, 'Mo', /no steel/],
    [{ C: 0.4, Cr: 28, Ni: 30 }, '', /add up to 58.4 %/],
  ])('%j cannot be: %s', (analysis, field, says) => {
    const problems = analysisProblems(analysis)
    expect(problems.map((problem) => problem.field)).toContain(field)
    expect(problems.find((problem) => problem.field === field)?.says).toMatch(says)
    expect(() => steelOfAnalysis(analysis as { C: number })).toThrow(ImpossibleAnalysis)
  })
})
