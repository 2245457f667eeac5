import { expect, test } from 'vitest'
import { blanketEndK } from './blanket.ts'
import type { BathKind } from './gear.ts'

// Reference values for steel, from memory of quenching texts; the film of a whole probe breaks over a wider span than one place does.
test.each([
  ['water', 20, 650, 750],
  ['water', 40, 500, 600],
  ['water', 60, 400, 450],
  ['slow oil', 40, 480, 520],
  ['medium oil', 60, 600, 650],
  ['fast oil', 60, 680, 720],
] as const)('[SH9] the blanket of %s at %i degC breaks near the published temperature', (kind, bathDegC, low, high) => {
  const breaks = (blanketEndK({ kind, temperatureK: bathDegC + 273.15 }) ?? Number.NaN) - 273.15
  expect(breaks).toBeGreaterThan(low - 40)
  expect(breaks).toBeLessThan(high + 40)
})

test('[SH9] the warmer the water, the longer it keeps its blanket', () => {
  const breaks = [20, 30, 40, 50, 60].map((degC) => blanketEndK({ kind: 'water', temperatureK: degC + 273.15 }) ?? Number.NaN)
  for (let i = 1; i < breaks.length; i++) expect(breaks[i]).toBeLessThan(breaks[i - 1]!)
})

test.each(['brine', 'vegetable oil', 'still air', 'moving air'] satisfies BathKind[])('%s keeps none', (kind) => {
  expect(blanketEndK({ kind, temperatureK: 293.15 })).toBeUndefined()
})
