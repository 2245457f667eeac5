import { describe, expect, test } from 'vitest'
import { compositionOf } from '#engine/materials/steel.ts'
import { startLimits, startRates } from './start-curves.ts'

/** Shortest time to one per cent and the temperature of it, by product. */
function nose(analysis: Record<string, number>, product: 'ferrite' | 'pearlite' | 'bainite'): { s: number; degC: number } {
  const rates = startRates(compositionOf(analysis), 8)
  let best = { s: Number.POSITIVE_INFINITY, degC: 0 }
  for (let degC = 300; degC < 850; degC++) {
    const rate = rates(degC + 273.15)[product]
    if (1 / rate < best.s) best = { s: 1 / rate, degC }
  }
  return best
}

const C1045 = { C: 0.45, Mn: 0.75, Si: 0.22 }
const C1084 = { C: 0.84, Mn: 0.75, Si: 0.22 }
const C4140 = { C: 0.4, Mn: 0.85, Si: 0.25, Cr: 0.95, Mo: 0.2 }
const C4340 = { C: 0.4, Mn: 0.7, Si: 0.25, Ni: 1.8, Cr: 0.8, Mo: 0.25 }
const C5160 = { C: 0.6, Mn: 0.85, Si: 0.25, Cr: 0.8 }

describe('[KI1] noses as the equations of Li et al. 1998 give them at grain size 8 (typical analyses, so to a third)', () => {
  test.each([
    ['1045 ferrite', C1045, 'ferrite', 3, 606],
    ['1045 bainite', C1045, 'bainite', 1.2, 499],
    ['1084 pearlite', C1084, 'pearlite', 1, 565],
    ['4140 ferrite', C4140, 'ferrite', 68, 611],
    ['4140 pearlite', C4140, 'pearlite', 40, 581],
    ['4140 bainite', C4140, 'bainite', 5.2, 465],
    ['4340 bainite', C4340, 'bainite', 18, 449],
    ['5160 pearlite', C5160, 'pearlite', 5.8, 578],
    ['5160 bainite', C5160, 'bainite', 31, 466],
  ] as const)('%s', (_, analysis, product, s, degC) => {
    const found = nose(analysis, product)
    expect(Math.abs(Math.log(found.s / s))).toBeLessThan(Math.log(1.45))
    expect(Math.abs(found.degC - degC)).toBeLessThan(12)
  })
})

test('[KI1] nothing forms above its limit, and no bainite under the start of martensite', () => {
  const austenite = compositionOf(C4140)
  const { ae1K, ae3K, bainiteK, martensiteK } = startLimits(austenite)
  const rates = startRates(austenite, 8)
  expect(rates(ae3K + 1)).toEqual({ ferrite: 0, pearlite: 0, bainite: 0 })
  expect(rates(ae1K + 1).pearlite).toBe(0)
  expect(rates(bainiteK + 1).bainite).toBe(0)
  expect(rates(bainiteK - 20).bainite).toBeGreaterThan(0)
  expect(rates(martensiteK - 1).bainite).toBe(0)
})
