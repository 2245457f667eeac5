import { describe, expect, test } from 'vitest'
import { hardenings } from '#engine/findings/account.ts'
import { sampleAccount } from '#engine/findings/sample-account.ts'
import { IN_METRIC } from '#engine/findings/wording.ts'
import { loadSays, rowSays } from './load-words.ts'

const first = hardenings(sampleAccount())[0]!

describe('[SH11] the load of a kiln', () => {
  test('a heavy piece is told with what it takes', () => {
    // 4.7 kg to 803 degC: 4.7 x 690 x 783 J.
    expect(loadSays({ ...first.heat, massKg: 4.7 }, IN_METRIC)).toMatch(/0\.71 kWh.*14 min/u)
  })
  test('a light one, and any fire, is not', () => {
    expect(loadSays({ ...first.heat, massKg: 0.17 }, IN_METRIC)).toBe('')
    expect(loadSays({ ...first.heat, massKg: 4.7, fire: { name: 'forge', kind: 'gas' } }, IN_METRIC)).toBe('')
  })
})

describe('[SH11] piece after piece', () => {
  const start = 323.15
  const rising = (riseK: number) => rowSays({ ...first.quench, bathStartK: start, bathEndK: start + riseK }, IN_METRIC)
  test('says how many the bath stands', () => {
    expect(rising(8)).toBe(' 3 like pieces in a row and it is at 74 °C: then let it cool.')
    expect(rising(20)).toMatch(/second like piece/u)
  })
  test('and nothing where it hardly warms, or is over already', () => {
    expect(rising(0.3)).toBe('')
    expect(rising(1)).toBe('')
    expect(rising(45)).toBe('')
  })
})
