import { describe, expect, test } from 'vitest'
import { exp } from '#engine/arithmetic/elementary.ts'
import { carbonInAustenite, carbonInFerrite } from './carbon-diffusion.ts'
import type { CarbonLines } from './carbon-lines.ts'
import { type CarbonProfile, carbonAfter, type SkinStep } from './carbon-profile.ts'

/** Error function by its series and, far out, its continued fraction's first terms: for checks only. */
function erf(x: number): number {
  let term = x
  let sum = x
  for (let k = 1; k < 80; k++) {
    term *= -(x * x) / k
    sum += term / (2 * k + 1)
  }
  return (2 / Math.sqrt(Math.PI)) * sum
}

const T = 1273.15
const HOUR = 3600
/** Austenite alone, so dilute that its diffusivity is one number. */
const BULK = 0.05
const austenite: CarbonLines = {
  bulkWtPct: BULK,
  at: () => ({ ferrite: 0, austenite: 0, carbide: Number.POSITIVE_INFINITY }),
}
const D = carbonInAustenite(T, BULK / 2)

function heldFor(timeS: number, count: number, lostM: number, temperatureK = T, surfaceWtPct = 0): SkinStep[] {
  return Array.from({ length: count }, (_, k) => ({
    timeS: (timeS * (2 * k + 1)) / (count * count),
    temperatureK,
    surfaceWtPct,
    metalLostM: lostM / count,
  }))
}

function depthOf({ depthM, carbonWtPct }: CarbonProfile, carbon: number): number {
  const i = carbonWtPct.findIndex((c) => c >= carbon)
  if (i < 1) return Number.NaN
  const share = (carbon - carbonWtPct[i - 1]!) / (carbonWtPct[i]! - carbonWtPct[i - 1]!)
  return depthM[i - 1]! + share * (depthM[i]! - depthM[i - 1]!)
}

const kept = ({ widthM, carbonWtPct }: CarbonProfile): number => carbonWtPct.reduce((sum, c, i) => sum + c * widthM[i]!, 0)

describe('carbon through a standing surface', () => {
  const diffusionM = Math.sqrt(D * HOUR)
  const profile = carbonAfter(heldFor(HOUR, 36, 0), austenite, { diffusionM, endM: 0.02 })

  test('follows the error function', () => {
    profile.depthM.forEach((x, i) => {
      expect(profile.carbonWtPct[i]! / BULK).toBeCloseTo(erf(Math.min(4, x / (2 * diffusionM))), 1.7)
    })
    expect(Math.abs(depthOf(profile, 0.5 * BULK) / (2 * 0.4769 * diffusionM) - 1)).toBeLessThan(0.025)
  })

  test('nine tenths of the carbon stand at 2.3 diffusion lengths', () => {
    expect(depthOf(profile, 0.9 * BULK) / diffusionM).toBeGreaterThan(2.28)
    expect(depthOf(profile, 0.9 * BULK) / diffusionM).toBeLessThan(2.38)
  })

  test('what went out is what is missing, and 2 sqrt(D t / pi) of the bulk', () => {
    const missing = BULK * profile.widthM.reduce((a, b) => a + b, 0) - kept(profile)
    expect(missing / profile.diffusedOut).toBeCloseTo(1, 9)
    expect(profile.diffusedOut / (BULK * 2 * Math.sqrt((D * HOUR) / Math.PI))).toBeCloseTo(1, 1.7)
  })

  test('twice as many steps change the depth by under a per cent', () => {
    const finer = carbonAfter(heldFor(HOUR, 72, 0), austenite, { diffusionM, endM: 0.02 })
    expect(depthOf(finer, 0.9 * BULK) / depthOf(profile, 0.9 * BULK)).toBeCloseTo(1, 2)
  })
})

describe('a surface that scale eats away by the parabolic law', () => {
  // N. Birks & W. Jackson, JISI 208 (1970) 81: (C0 - C) / C0 = erfc(x / 2 sqrt(Dt)) / erfc(X / 2 sqrt(Dt)), x from the first surface.
  test.each([0.2, 0.6, 1.2])('lost metal of %f diffusion lengths: the closed form of Birks and Jackson', (lengths) => {
    const diffusionM = Math.sqrt(D * HOUR)
    const lostM = lengths * diffusionM
    const profile = carbonAfter(heldFor(HOUR, 72, lostM), austenite, { diffusionM, endM: 0.02 })
    const surface = 1 - erf(lengths / 2)
    for (let i = 0; i < profile.depthM.length; i++) {
      const x = profile.depthM[i]! + lostM
      if (x > 5 * diffusionM) break
      const wanted = 1 - (1 - erf(x / (2 * diffusionM))) / surface
      expect(Math.abs(profile.carbonWtPct[i]! / BULK - wanted)).toBeLessThan(0.02)
    }
  })

  test('carbon is kept to rounding: in the metal, out through the surface, or gone with the scale', () => {
    const diffusionM = Math.sqrt(D * HOUR)
    const lostM = 0.7 * diffusionM
    const profile = carbonAfter(heldFor(HOUR, 36, lostM), austenite, { diffusionM, endM: 0.02 })
    const started = BULK * (profile.widthM.reduce((a, b) => a + b, 0) + lostM)
    expect((kept(profile) + profile.diffusedOut + profile.wentWithMetal) / started).toBeCloseTo(1, 9)
  })

  test('the faster it scales, the thinner the skin that is left', () => {
    const diffusionM = Math.sqrt(D * HOUR)
    const left = [0, 0.5, 1].map((share) =>
      depthOf(carbonAfter(heldFor(HOUR, 36, share * diffusionM), austenite, { diffusionM, endM: 0.02 }), 0.9 * BULK),
    )
    expect(left[1]).toBeLessThan(left[0]!)
    expect(left[2]).toBeLessThan(left[1]!)
  })
})

describe('a rim of ferrite', () => {
  const steel: CarbonLines = {
    bulkWtPct: 0.8,
    at: () => ({ ferrite: 0.0195, austenite: Number.POSITIVE_INFINITY, carbide: Number.POSITIVE_INFINITY }),
  }
  const coldK = 973.15
  const alpha = carbonInFerrite(coldK)

  // Under Ac1 ferrite grows into carbide and ferrite that holds 0.8 C: a Stefan problem, whose lambda is found by halving.
  const rim = (timeS: number): number => {
    let low = 0
    let high = 2
    for (let k = 0; k < 60; k++) {
      const middle = 0.5 * (low + high)
      const fed = Math.sqrt(Math.PI) * middle * exp(middle * middle) * erf(middle)
      if (fed < 0.0195 / (0.8 - 0.0195)) low = middle
      else high = middle
    }
    return 2 * low * Math.sqrt(alpha * timeS)
  }

  test.each([600, HOUR])('grows under Ac1 as the Stefan problem has it (%i s)', (timeS) => {
    const diffusionM = rim(timeS)
    const profile = carbonAfter(heldFor(timeS, 36, 0, coldK), steel, { diffusionM, endM: 0.02 })
    expect(depthOf(profile, 0.4) / rim(timeS)).toBeGreaterThan(0.97)
    expect(depthOf(profile, 0.4) / rim(timeS)).toBeLessThan(1.03)
  })

  test('in steel that is austenite inside, the rim ends in a step', () => {
    const between: CarbonLines = {
      bulkWtPct: 0.6,
      at: () => ({ ferrite: 0.013, austenite: 0.35, carbide: Number.POSITIVE_INFINITY }),
    }
    const hotK = 1063.15
    const diffusionM = Math.sqrt(carbonInAustenite(hotK, 0.3) * 1800)
    const { carbonWtPct, depthM } = carbonAfter(heldFor(1800, 36, 0, hotK), between, { diffusionM, endM: 0.02 })
    const inTheGap = Array.from(carbonWtPct).filter((c) => c > 0.0131 && c < 0.349)
    expect(inTheGap.length).toBeLessThanOrEqual(2)
    expect(carbonWtPct[0]).toBeLessThan(0.005)
    expect(carbonWtPct[carbonWtPct.length - 1]).toBeCloseTo(0.6, 3)
    expect(depthM[carbonWtPct.findIndex((c) => c > 0.3)]).toBeGreaterThan(0.00003)
  })

  test('undissolved carbide feeds the austenite until it is gone', () => {
    const rich: CarbonLines = { bulkWtPct: 1.2, at: () => ({ ferrite: 0, austenite: 0, carbide: 0.8 }) }
    const plain: CarbonLines = { ...rich, at: () => ({ ferrite: 0, austenite: 0, carbide: Number.POSITIVE_INFINITY }) }
    const diffusionM = Math.sqrt(carbonInAustenite(T, 0.5) * HOUR)
    const with_ = carbonAfter(heldFor(HOUR, 36, 0), rich, { diffusionM, endM: 0.02 })
    const without = carbonAfter(heldFor(HOUR, 36, 0), plain, { diffusionM, endM: 0.02 })
    expect(depthOf(with_, 1.1)).toBeLessThan(depthOf(without, 1.1))
  })
})

test('a fire that leaves the bulk its carbon takes none', () => {
  const profile = carbonAfter(heldFor(HOUR, 5, 1e-5, T, Number.POSITIVE_INFINITY), austenite, { diffusionM: 1e-4, endM: 0.02 })
  expect(Math.min(...profile.carbonWtPct)).toBe(BULK)
  expect(profile.diffusedOut).toBe(0)
})

test('a thin wall loses carbon through and through', () => {
  const diffusionM = Math.sqrt(D * HOUR)
  const profile = carbonAfter(heldFor(HOUR, 36, 0), austenite, { diffusionM, endM: diffusionM })
  expect(profile.carbonWtPct[profile.carbonWtPct.length - 1]).toBeLessThan(0.8 * BULK)
})
