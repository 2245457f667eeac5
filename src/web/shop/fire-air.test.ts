import { describe, expect, test } from 'vitest'
import { ATMOSPHERES } from '#contract/gear-kinds.ts'
import { AIR_WORDS, burnsAs, usualAir } from './fire-air.ts'

const SHOP = {
  fires: [
    { name: 'charcoal pot' },
    { name: 'gas forge', kind: 'gas' },
    { name: 'old forge', kind: 'gas', atmosphere: 'rich' },
    { name: 'thing' },
  ],
  ovens: [{ name: 'Kiln', max: '1100 °C' }],
}

describe('how a fire burns', () => {
  test('is what was said of it, else what its kind or its name lets one think', () => {
    expect(burnsAs(SHOP, 'old forge')).toBe('rich')
    expect(burnsAs(SHOP, 'Gas Forge')).toBe('neutral')
    expect(burnsAs(SHOP, 'charcoal pot')).toBe('rich')
    expect(burnsAs(SHOP, 'thing')).toBeUndefined()
    expect(usualAir({ name: 'thing', kind: 'coal' })).toBe('neutral')
  })

  test('an oven is full of air; a step without a name has the first fire; a strange name has none', () => {
    expect(burnsAs(SHOP, 'kiln')).toBe('oxidising')
    expect(burnsAs(SHOP, '')).toBe('rich')
    expect(burnsAs(SHOP, 'neighbour`s forge')).toBeUndefined()
    expect(burnsAs({}, '')).toBeUndefined()
  })

  test('every one has words of its own', () => {
    expect(new Set(ATMOSPHERES.map((each) => AIR_WORDS[each])).size).toBe(ATMOSPHERES.length)
  })
})
