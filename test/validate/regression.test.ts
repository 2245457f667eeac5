import { describe, expect, test } from 'vitest'
import type { Check, ValidationRecord } from '#report/validation-record.ts'
import type { ComparedRow, Comparison } from './comparison.ts'
import { measure } from './measure.ts'
import { moved, worse } from './regression.ts'

/** A made-up comparison: ten figures, each `off` by so much, of which the band holds `held`. */
function comparison(off: number, held = 9, rest: Partial<Comparison> = {}): Comparison {
  return {
    name: 'Hardness of gate hinges',
    unit: 'HRC',
    aim: 2,
    tolerance: 0.1,
    committed: true,
    says: 'made up',
    inside: [0.85, 0.95],
    rows: () =>
      Array.from({ length: 10 }, (_, i): ComparedRow => {
        const published = 40 + i
        const half = i < held ? 5 : 0.01
        return {
          label: `hinge ${i}`,
          group: i < 5 ? 'left' : 'right',
          provenance: 'tabulated',
          source: 'a table',
          published,
          forecast: published + off,
          low: published + off - half,
          high: published + off + half,
        }
      }),
    ...rest,
  }
}
const record = (...checks: Check[]): ValidationRecord => ({ checks })
const before = record(measure(comparison(1.5)))

describe('a release', () => {
  test('goes out when nothing moved, when a figure got better, and when it rose by no more than the tolerance', () => {
    for (const off of [1.5, 1.2, 1.59]) expect(worse(before, record(measure(comparison(off))))).toEqual([])
  })

  test('is refused when an error rises by more: the words name the comparison, was, is, tolerance and what to do', () => {
    const [told, ...more] = worse(before, record(measure(comparison(1.75))))
    expect(more).toEqual([])
    expect(told).toContain('Hardness of gate hinges: the mean absolute error was 1.50 HRC and is 1.75 HRC; it may rise by 0.1.')
    expect(told).toContain('npm run validate')
    expect(told).toContain('Numbers that moved')
  })

  test('is refused when the band holds too few or too many', () => {
    expect(worse(before, record(measure(comparison(1.5, 8))))[0]).toMatch(/the band holds 80\.0 % .* 85 % to 95 %/u)
    expect(worse(before, record(measure(comparison(1.5, 10))))[0]).toMatch(/the band holds 100\.0 %/u)
    expect(worse(before, record(measure(comparison(1.5, 8, { inside: [0.75, 0.95] }))))).toEqual([])
  })

  test('is refused when published figures are left out, or a whole comparison', () => {
    const fewer = comparison(1.5)
    const short = measure({ ...fewer, rows: () => fewer.rows().slice(0, 9), inside: [0.8, 1] })
    expect(worse(before, record(short))[0]).toContain('10 published figures were compared and only 9 are')
    expect(worse(before, record())[0]).toContain('was compared and is no more')
  })
})

describe('what moved', () => {
  test('is told a line each, as CHANGELOG takes it', () => {
    expect(moved(before, record(measure(comparison(1.2, 8))))).toEqual([
      '- Hardness of gate hinges: mean error 1.50 to 1.20 HRC, in the band 90 % to 80 %.',
    ])
    expect(moved(before, before)).toEqual([])
    expect(moved(undefined, before)).toEqual([
      '- Hardness of gate hinges: new, 1.50 HRC mean error (10 figures, 90 % in the band).',
    ])
  })
})

describe('a comparison', () => {
  test('does not count rows that it was fitted to, unless there are no others', () => {
    const mixed = comparison(0)
    const rows = mixed.rows().map((row, i) => (i < 4 ? { ...row, fitted: true } : { ...row, forecast: row.published + 2 }))
    const half = measure({ ...mixed, rows: () => rows })
    expect([half.all.n, half.all.meanAbsolute, half.fitted?.n, half.inSample]).toEqual([6, 2, 4, undefined])
    const every = measure({ ...mixed, rows: () => rows.map((row) => ({ ...row, fitted: true })) })
    expect([every.all.n, every.fitted, every.inSample]).toEqual([10, undefined, true])
  })

  test('sets sources beside each other that speak of the same', () => {
    const one = { label: 'a', group: 'a', provenance: 'tabulated', forecast: 50, alike: 'hinge' }
    const rows = [
      { ...one, published: 50, source: 'sheet' },
      { ...one, published: 53, source: 'book' },
      { ...one, published: 51, source: 'book' },
    ]
    expect(measure({ ...comparison(0), rows: () => rows }).betweenSources).toEqual({
      n: 2,
      meanAbsolute: 2,
      widest: { what: 'hinge', one: 50, other: 53 },
    })
  })

  test('of a set that may not be passed on keeps no row, no worst row and no pair', () => {
    const { rows, all, groups, betweenSources } = measure({ ...comparison(1), committed: false })
    expect([rows, all.worst, groups[0]?.worst, betweenSources?.widest]).toEqual([undefined, undefined, undefined, undefined])
  })

  test('refuses a figure that is none, by name', () => {
    const rows = [{ label: 'a hinge', group: '', provenance: '', published: Number.NaN, forecast: 1 }]
    expect(() => measure({ ...comparison(0), rows: () => rows })).toThrow(/a hinge compares 1 with NaN/u)
  })
})
