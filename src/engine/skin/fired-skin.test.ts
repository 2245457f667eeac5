import { describe, expect, test } from 'vitest'
import { compositionOf } from '#engine/materials/steel.ts'
import { carbonInAustenite } from './carbon-diffusion.ts'
import { carbonLines } from './carbon-lines.ts'
import { decarburisedDepthM, type FiredSkin, firedSkin } from './fired-skin.ts'
import { metalLossRate } from './scale-growth.ts'
import { BEST_TRUTH, type SkinLeg } from './skin-steps.ts'

const C = 273.15
const carbonSteel = { composition: compositionOf({ C: 0.8, Mn: 0.7, Si: 0.2 }), ac1K: 1000, ac3K: 1015 }

const held = (degC: number, timeS: number, change: Partial<SkinLeg> = {}): SkinLeg => ({
  points: [
    [0, degC + C],
    [timeS, degC + C],
  ],
  atmosphere: 'oxidising',
  times: 1,
  scaleFalls: false,
  ...change,
})

function skinAfter(legs: readonly SkinLeg[], steel = carbonSteel): FiredSkin {
  const skin = firedSkin(legs, steel, 0.01)
  if (skin === undefined) throw new Error('there is no skin')
  return skin
}

describe('published figures', () => {
  // J. Agren, Scripta Metall. 20 (1986) 1507, worked out by hand at 0.2 and 0.8 % carbon.
  test.each([
    [900, 0.2, 0.77e-11],
    [900, 0.8, 1.46e-11],
    [1000, 0.2, 2.5e-11],
    [1000, 0.8, 4.4e-11],
    [1100, 0.2, 6.7e-11],
    [1100, 0.8, 1.13e-10],
  ])('carbon in austenite at %i degC, %f C', (degC, carbon, published) => {
    expect(carbonInAustenite(degC + C, carbon) / published).toBeCloseTo(1, 1.4)
  })

  // Handbook scale losses of carbon steel in air, depth of metal in an hour (memory, a factor of two).
  test.each([
    [900, 0.07],
    [1000, 0.2],
    [1100, 0.4],
    [1200, 0.8],
  ])('metal lost in an hour of air at %i degC', (degC, mm) => {
    const lost = 1000 * Math.sqrt(3600 * metalLossRate(degC + C, { Cr: 0, Si: 0.2 }))
    expect(lost).toBeGreaterThan(mm / 2)
    expect(lost).toBeLessThan(mm * 2)
  })

  // Boundary of ferrite in plain iron (ASM Alloy Phase Diagrams, memory).
  test.each([
    [837, 0.2],
    [787, 0.4],
    [750, 0.6],
  ])('austenite beside ferrite at %i degC', (degC, carbon) => {
    const lines = carbonLines(compositionOf({ C: 0.8 }), 1000.15, 1005)
    expect(lines.at(degC + C).austenite).toBeGreaterThan(carbon - 0.06)
    expect(lines.at(degC + C).austenite).toBeLessThan(carbon + 0.06)
  })

  test('the boundary of ferrite goes through the steel`s own Ac3', () => {
    const lines = carbonLines(compositionOf({ C: 0.4, Mn: 0.8, Cr: 1, Mo: 0.2, Si: 0.25 }), 1010, 1066)
    expect(lines.at(1066).austenite).toBeCloseTo(0.4, 6)
  })
})

describe('a skin after fires', () => {
  test('two like heats go root two as deep as one, whichever way they are told', () => {
    const once = decarburisedDepthM(skinAfter([held(870, 600, { scaleFalls: true })]))
    const twice = decarburisedDepthM(skinAfter([held(870, 600, { times: 2, scaleFalls: true })]))
    const told = decarburisedDepthM(skinAfter([held(870, 600, { scaleFalls: true }), held(870, 600, { scaleFalls: true })]))
    expect(twice).toBeCloseTo(told, 9)
    expect(twice / once).toBeGreaterThan(1.3)
    expect(twice / once).toBeLessThan(1.5)
  })

  test('scale that falls off in a quench grows anew, so that more metal goes', () => {
    const stays = skinAfter([held(950, 1800, { times: 2 })])
    const falls = skinAfter([held(950, 1800, { times: 2, scaleFalls: true })])
    expect(falls.metalLostM / stays.metalLostM).toBeCloseTo(Math.SQRT2, 6)
    expect(falls.scaleM).toBe(0)
    expect(stays.scaleM).toBeGreaterThan(0)
  })

  test('a rich fire takes less than air, a closed pipe nothing', () => {
    const air = decarburisedDepthM(skinAfter([held(850, 900)]))
    const rich = skinAfter([held(850, 900, { atmosphere: 'rich' })])
    expect(decarburisedDepthM(rich)).toBeLessThan(air)
    expect(rich.carbonWtPct[0]).toBeGreaterThan(0.2)
    const pipe = skinAfter([held(850, 900, { atmosphere: 'packed' })])
    expect(decarburisedDepthM(pipe)).toBe(0)
  })

  test('hotter, longer, deeper', () => {
    const depth = (degC: number, s: number): number => decarburisedDepthM(skinAfter([held(degC, s)]))
    expect(depth(870, 900)).toBeGreaterThan(depth(820, 900))
    expect(depth(820, 1800)).toBeGreaterThan(depth(820, 900))
  })

  test('ten minutes at a hardening heat leave a tenth of a millimetre or two, not a hair and not a millimetre', () => {
    const depth = decarburisedDepthM(skinAfter([held(800, 600)]))
    expect(depth).toBeGreaterThan(0.00006)
    expect(depth).toBeLessThan(0.0003)
  })

  test('a temper leaves no skin', () => {
    expect(firedSkin([held(250, 7200)], carbonSteel, 0.01)).toBeUndefined()
  })

  test('the number of steps hardly matters: a slow rise gives the same as its pieces', () => {
    const rise: SkinLeg = {
      ...held(0, 0),
      points: [
        [0, 293],
        [600, 1100],
        [1500, 1100],
      ],
    }
    const cut: SkinLeg = {
      ...held(0, 0),
      points: [
        [0, 293],
        [300, 696.5],
        [600, 1100],
        [900, 1100],
        [1500, 1100],
      ],
    }
    expect(decarburisedDepthM(skinAfter([rise]))).toBeCloseTo(decarburisedDepthM(skinAfter([cut])), 6)
  })

  test('a rough look comes within a tenth of the careful one', () => {
    for (const degC of [720, 790, 850, 930]) {
      const careful = decarburisedDepthM(skinAfter([held(degC, 900)]))
      const rough = firedSkin([held(degC, 900)], carbonSteel, 0.01, BEST_TRUTH, true)
      expect(Math.abs(decarburisedDepthM(rough!) / careful - 1)).toBeLessThan(0.1)
    }
  })

  test('faster diffusion goes deeper', () => {
    const fast = firedSkin([held(850, 900)], carbonSteel, 0.01, { ...BEST_TRUTH, onDiffusion: 1.3 })
    expect(decarburisedDepthM(fast!)).toBeGreaterThan(decarburisedDepthM(skinAfter([held(850, 900)])))
  })

  test.each([
    ['poor', compositionOf({ C: 0.2, Mn: 0.5 }), 1000, 1110],
    ['spring', compositionOf({ C: 0.6, Si: 1.8, Mn: 0.8 }), 1030, 1060],
    ['D2', compositionOf({ C: 1.5, Cr: 12, Mo: 0.8, V: 0.9, Si: 0.3, Mn: 0.3 }), 1060, 1110],
    ['M2', compositionOf({ C: 0.85, Cr: 4, Mo: 5, W: 6, V: 2 }), 1100, 1130],
    ['H13', compositionOf({ C: 0.4, Cr: 5, Mo: 1.3, V: 1, Si: 1 }), 1110, 1180],
  ])('%s at every heat a smith knows: carbon stays between none and the bulk', (_, composition, ac1K, ac3K) => {
    for (const degC of [650, 730, 780, 830, 900, 1010, 1200])
      for (const atmosphere of ['oxidising', 'neutral', 'rich'] as const) {
        const { carbonWtPct } = skinAfter([held(degC, 1800, { atmosphere })], { composition, ac1K, ac3K })
        for (let i = 1; i < carbonWtPct.length; i++) {
          expect(carbonWtPct[i]).toBeGreaterThanOrEqual(carbonWtPct[i - 1]! - 1e-6)
          expect(carbonWtPct[i]).toBeLessThanOrEqual(composition.C + 1e-6)
        }
      }
  })
})
