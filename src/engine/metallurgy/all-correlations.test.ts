import fc from 'fast-check'
import { expect, test } from 'vitest'
import { limitsBroken } from '#engine/provenance/correlation.ts'
import { allCorrelations } from './all-correlations.ts'

test.each(allCorrelations.flatMap((c) => c.checks.map((k) => ({ id: c.id, c, k }))))('$id: $k.from', ({ c, k }) => {
  expect(Math.abs(c.evaluate(k.input) - k.expected)).toBeLessThanOrEqual(k.within)
})

test('every correlation has a source, limits and at least one check', () => {
  for (const c of allCorrelations) {
    expect(c.source.length, c.id).toBeGreaterThan(10)
    expect(Object.keys(c.validFor).length, c.id).toBeGreaterThan(0)
    expect(c.checks.length, c.id).toBeGreaterThan(0)
  }
  expect(new Set(allCorrelations.map((c) => c.id)).size).toBe(allCorrelations.length)
})

test('NaN breaks the limit that it meets, whatever the other inputs', () => {
  fc.assert(
    fc.property(fc.constantFrom(...allCorrelations), fc.nat(), (c, pick) => {
      const keys = Object.keys(c.validFor)
      const key = keys[pick % keys.length]!
      return limitsBroken(c, { ...c.checks[0]!.input, [key]: Number.NaN }).some((words) => words.includes(`${key} = NaN`))
    }),
  )
})
