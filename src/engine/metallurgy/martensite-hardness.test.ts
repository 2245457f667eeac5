import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fullMartensiteHrc, martensiteFractionFor, partialMartensiteHrc } from './martensite-hardness.ts'

// Hollomon & Jaffe, Trans. AIME 162 (1945) 223, as quenched; one unit for their heats' other elements.
test.each([
  [0.56, 63.0],
  [0.74, 66.5],
  [0.89, 67.0],
  [0.98, 66.5],
])('%f C quenched in water is %f HRC', (carbon, measured) => {
  expect(Math.abs(fullMartensiteHrc(carbon) - measured)).toBeLessThanOrEqual(1)
})

test('[MT6] never falls with carbon, and has no step at the join of the two sources', () => {
  let before = fullMartensiteHrc(0)
  for (let carbon = 0.001; carbon <= 1.4; carbon += 0.001) {
    const now = fullMartensiteHrc(carbon)
    expect(now).toBeGreaterThanOrEqual(before - 1e-9)
    expect(now - before).toBeLessThan(0.12)
    before = now
  }
})

const anyCarbon = fc.double({ min: 0.05, max: 1.2, noNaN: true })
const anyFraction = fc.double({ min: 0, max: 0.999, noNaN: true })

test('hardness rises with the share of martensite, and the share comes back from the hardness', () => {
  fc.assert(
    fc.property(anyCarbon, anyFraction, (carbon, fraction) => {
      const hrc = partialMartensiteHrc(carbon, fraction)
      expect(hrc).toBeLessThanOrEqual(fullMartensiteHrc(carbon) + 1e-9)
      expect(partialMartensiteHrc(carbon, Math.min(0.999, fraction + 0.01))).toBeGreaterThanOrEqual(hrc)
      expect(Math.abs(martensiteFractionFor(carbon, hrc) - fraction)).toBeLessThan(1e-6)
    }),
  )
})

// Hodge & Orehoski, Trans. AIME 167 (1946) 627 (memory, +/-1): the same recalled table, held to 1.5.
test.each([
  [0.23, 0.95, 42],
  [0.38, 0.9, 49],
  [0.43, 0.8, 48],
  [0.53, 0.5, 49],
])('%f C with %f martensite is %f HRC', (carbon, fraction, published) => {
  expect(Math.abs(partialMartensiteHrc(carbon, fraction) - published)).toBeLessThanOrEqual(1.5)
})
