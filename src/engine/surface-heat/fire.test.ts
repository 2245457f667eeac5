import { describe, expect, test } from 'vitest'
import { fireContact, fireSourceK } from './fire.ts'
import { FIRE_KINDS, type Oven } from './gear.ts'
import { ovenContact, ovenTrueK } from './oven.ts'

describe.each(FIRE_KINDS)('%s', (kind) => {
  const fire = { name: 'it', kind }

  test('is hotter than the heat it brings a piece to', () => {
    for (const toK of [1050, 1150, 1480]) expect(fireSourceK(fire, toK)).toBeGreaterThan(toK)
  })

  test('takes hold of a thin piece more than of a thick one', () => {
    const film = (acrossM: number): number => fireContact(fire, 1200, { acrossM }).film[0]![1]
    expect(film(0.01)).toBeGreaterThan(film(0.04))
    expect(() => fireContact(fire, 1200, { acrossM: -0.01 })).toThrow(/acrossM -0.01 m/)
  })
})

test('an open fire does not follow the goal, a muffle does', () => {
  expect(fireSourceK({ name: 'forge', kind: 'gas' }, 1050)).toBe(fireSourceK({ name: 'forge', kind: 'gas' }, 1150))
  expect(fireSourceK({ name: 'kiln', kind: 'muffle' }, 1150) - fireSourceK({ name: 'kiln', kind: 'muffle' }, 1050)).toBe(100)
})

describe('oven', () => {
  const oven: Oven = { name: 'kitchen', maxK: 523, readsLowK: 12, swingK: 7 }

  test('is truly hotter than a reading that is low, and never set above its end', () => {
    expect(ovenTrueK(oven, 480)).toBe(492)
    expect(ovenTrueK(oven, 600)).toBe(535)
  })

  test('[SH7] swings about its mean by its swing, for as long as the hold', () => {
    const { fluid } = ovenContact(oven, 490, { acrossM: 0.02, holdS: 5400 })
    const values = fluid.map(([, kelvin]) => kelvin)
    expect(Math.max(...values)).toBe(497)
    expect(Math.min(...values)).toBe(483)
    expect(fluid[fluid.length - 1]![0]).toBeGreaterThanOrEqual(5400)
    const wholePeriods = values.slice(0, 24)
    expect(wholePeriods.reduce((sum, kelvin) => sum + kelvin, 0) / 24).toBeCloseTo(490, 9)
  })

  test('heats a 25 mm round of 205 degC with about 22 W/(m2 K), so that a soak starts late', () => {
    const { film, emissivity, fluid } = ovenContact({ ...oven, swingK: 0 }, 478, { acrossM: 0.025, holdS: 0 })
    expect(fluid).toEqual([[0, 478]])
    const total = film[2]![1] + (emissivity * 5.67e-8 * (478 ** 4 - 400 ** 4)) / 78
    expect(total).toBeGreaterThan(15)
    expect(total).toBeLessThan(26)
  })

  test('refuses a section or a hold without meaning', () => {
    expect(() => ovenContact(oven, 480, { acrossM: 0, holdS: 60 })).toThrow(/acrossM 0 m/)
    expect(() => ovenContact(oven, 480, { acrossM: 0.01, holdS: Number.NaN })).toThrow(/holdS NaN/)
  })
})
