import { expect, test } from 'vitest'
import type { QuenchRecord, StepRecord } from '#engine/simulation/records.ts'
import { cautionsOf, shortCautionsOf } from './cautions.ts'
import { sampleAccount } from './sample-account.ts'

const [heat, carry, quench, temper] = sampleAccount().records as [StepRecord, StepRecord, QuenchRecord, StepRecord]
const all = (record: StepRecord): string => cautionsOf(record).join(' ')
const intoWater: QuenchRecord = { ...quench, bath: { name: 'tub', kind: 'water', temperatureK: 293 } }
const inAir: QuenchRecord = { ...quench, bath: { name: 'still air', kind: 'still air', temperatureK: 293 } }

test('every step has its cautions, in whole sentences', () => {
  const colours = sampleAccount({ colours: {} }).records.find(({ kind }) => kind === 'run-colours') as StepRecord
  const warmed: StepRecord = {
    kind: 'warm-bath',
    step: 0,
    startS: 0,
    endS: 300,
    bath: quench.bath,
    barMassKg: 1,
    bathStartK: 293,
    bathEndK: 320,
  }
  for (const record of [heat, carry, quench, intoWater, inAir, temper, colours, warmed]) {
    const cautions = cautionsOf(record)
    expect(cautions.length).toBeGreaterThan(0)
    for (const caution of cautions) expect(caution).toMatch(/^[A-Z].*[.]$/)
    const short = shortCautionsOf(record)
    expect(short).toHaveLength(cautions.length)
    for (const [i, caution] of short.entries()) {
      expect(caution).toMatch(/^[A-Z].*[.]$/)
      expect(caution.length).toBeLessThanOrEqual(cautions[i]?.length ?? 0)
    }
  }
})

test('oil: lid, extinguisher, no water in it, plunge it under, code and sheet', () => {
  expect(all(quench)).toMatch(/lid/)
  expect(all(quench)).toMatch(/class B/)
  expect(all(quench)).toMatch(/No water in the oil/)
  expect(all(quench)).toMatch(/wholly under/)
  expect(all(quench)).toMatch(/fire code.*maker's sheet/)
  expect(all({ ...quench, depthM: 0.04 })).toMatch(/red metal and hot tongs off the surface/)
})

test('water and air speak of no oil; what is quenched is glass until it is tempered', () => {
  for (const record of [intoWater, inAir]) expect(all(record)).not.toMatch(/\boil\b/i)
  for (const record of [quench, intoWater, inAir]) expect(all(record)).toMatch(/glass/)
})

test('an open fire gives off carbon monoxide, a torch has hoses, an oven neither', () => {
  const coal = { ...heat, fire: { name: 'coal fire', kind: 'coal' } } as StepRecord
  const torch = { ...heat, fire: { name: 'torch', kind: 'torch' } } as StepRecord
  expect(all(coal)).toMatch(/Carbon monoxide/)
  expect(all(torch)).toMatch(/hoses/)
  expect(all(heat)).not.toMatch(/Carbon monoxide|hoses/)
})

test('in few words the same dangers are named', () => {
  const short = shortCautionsOf(quench).join(' ')
  for (const word of [
    /lid/,
    /class B/,
    /never water on burning oil/,
    /drop of water/,
    /wholly under/,
    /code/,
    /oil sheet/,
    /glass/,
  ])
    expect(short).toMatch(word)
  expect(shortCautionsOf({ ...quench, depthM: 0.04 }).join(' ')).toMatch(/red metal or hot tongs/)
  expect(shortCautionsOf(intoWater).join(' ')).toMatch(/face shield.*crack.*eye protection/)
  const coal = { ...heat, fire: { name: 'coal fire', kind: 'coal' } } as StepRecord
  expect(shortCautionsOf(coal).join(' ')).toMatch(/Eye protection.*monoxide.*galvanised.*closed tubes/)
  expect(shortCautionsOf(temper).join(' ')).toMatch(/oil.*food oven.*pot of oil.*gloves/)
})
