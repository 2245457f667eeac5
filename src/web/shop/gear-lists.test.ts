import { expect, test } from 'vitest'
import { takeShop } from '#contract/parse-shop.ts'
import type { Problem } from '#contract/problems.ts'
import { GEAR_LISTS, type GearList, gearAdded, gearOf, gearPutAway, gearTyped } from './gear-lists.ts'

const baths = GEAR_LISTS.find(({ key }) => key === 'baths') as GearList

test('what a new shop is filled with is sound, however often, and names differ', () => {
  let shop = {}
  for (const list of GEAR_LISTS) for (let i = 0; i < 3; i++) shop = gearAdded(shop, list)
  const problems: Problem[] = []
  takeShop(shop, 'shop', problems)
  expect(problems).toEqual([])
})

test('an emptied field is left out where it may be, and kept as typed where it may not', () => {
  const one = gearAdded({}, baths)
  expect(gearOf(gearTyped(one, baths, 0, 'volume', ' '), 'baths')[0]).not.toHaveProperty('volume')
  expect(gearOf(gearTyped(one, baths, 0, 'name', ' '), 'baths')[0]?.name).toBe('')
  expect(gearOf(gearTyped(one, baths, 0, 'depth', ' 10 in '), 'baths')[0]?.depth).toBe('10 in')
})

test('putting one away leaves the others', () => {
  const two = gearAdded(gearAdded({}, baths), baths)
  expect(gearOf(gearPutAway(two, 'baths', 0), 'baths').map(({ name }) => name)).toEqual(['oil bucket 2'])
})

test('how a fire burns is told by its kind, chosen, and left out again', () => {
  const fires = GEAR_LISTS.find(({ key }) => key === 'fires') as GearList
  const air = fires.fields.find(({ key }) => key === 'atmosphere')
  const one = gearAdded({}, fires)
  expect(air?.unsaid?.(gearOf(one, 'fires')[0] ?? {})).toBe('usual: neutral')
  const rich = gearTyped(one, fires, 0, 'atmosphere', 'rich')
  expect(gearOf(rich, 'fires')[0]).toEqual({ name: 'coal fire', kind: 'coal', atmosphere: 'rich' })
  expect(gearTyped(rich, fires, 0, 'atmosphere', '')).toEqual(one)
})
