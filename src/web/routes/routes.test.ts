import { describe, expect, test } from 'vitest'
import { chiselForecast } from '#web/findings/forecast.test-data.ts'
import type { ShopText, StepText } from '#web/job/job-text.ts'
import { gearUse } from './gear-use.ts'
import { hoursOf } from './hours.ts'
import { routePicture } from './route-picture.ts'
import { sameQuestion, sameTreatment } from './route-question.ts'

const forecast = chiselForecast()
const shop: ShopText = {
  fires: [{ name: 'gas forge' }],
  baths: [{ name: 'slack tub', depth: '50 mm' }],
  ovens: [{ name: 'small oven', max: '230 °C' }],
}
const process: readonly StepText[] = [
  { do: 'normalise', in: 'gas forge', to: '830 °C', times: 2 },
  { do: 'heat', in: 'gas forge', to: '785 °C', part: { from: '0 mm', to: '85 mm' } },
  { do: 'carry', for: '3 s' },
  { do: 'quench', in: 'slack tub', depth: '35 mm' },
  { do: 'temper', in: 'small oven', at: '220 °C', times: 1 },
]

describe('hours of a treatment', () => {
  test('at the fire until each round is taken out, in the oven for the whole temper', () => {
    // Two rounds, each out of the fire 600 s after it goes in (its skin falls under 97 % of its hottest after that), then 600 s of heat.
    expect(hoursOf(forecast, process, shop)).toEqual({ fireS: 1800, ovenS: 7200, allS: 16_200 })
  })

  test('a temper over the fire is time at the fire', () => {
    expect(hoursOf(forecast, process, { fires: [] })).toMatchObject({ fireS: 9000, ovenS: 0 })
  })

  test('a round that the curve does not show is taken whole', () => {
    const bare = { ...forecast, curves: { ...forecast.curves, time_s: [], skin_C: [], centre_C: [] } }
    expect(hoursOf(bare, process, shop).fireS).toBe(8600)
  })
})

describe('what a treatment asks of the gear', () => {
  test('the hottest of each fire, how deep and how warm each bath, how near to its end each oven', () => {
    expect(gearUse(process, forecast, shop, 'metric')).toEqual([
      { name: 'gas forge', says: 'to 830 °C' },
      { name: 'slack tub', says: '35 mm deep, ends at 24 °C', strained: 'it stands only 50 mm deep' },
      { name: 'small oven', says: 'at 220 °C', strained: 'near its end, 230 °C' },
    ])
  })

  test('air is no strain, an oven that goes further is none, one that does not reach it is', () => {
    const steps = [
      { do: 'quench', in: 'still air' },
      { do: 'temper', in: 'small oven', at: '500 °F' },
    ]
    expect(gearUse(steps, forecast, shop, 'inch')).toEqual([
      { name: 'still air', says: 'to cool in' },
      { name: 'small oven', says: 'at 500 °F', strained: 'it goes only to 446 °F' },
    ])
    expect(gearUse(steps, forecast, { ovens: [{ name: 'small oven', max: '300 °C' }] }, 'metric')[1]).not.toHaveProperty(
      'strained',
    )
  })
})

describe('the small picture', () => {
  const picture = routePicture(forecast, process, { widthPx: 240, heightPx: 300 })

  test('stands in its box, the working end down, and hardness runs to the right', () => {
    expect(picture.plotTopPx).toBeGreaterThan(0)
    expect(picture.plotBottomPx).toBeLessThan(300)
    const edge = picture.aims.find(({ name }) => name === 'edge')
    const struck = picture.aims.find(({ name }) => name === 'struck end')
    expect(edge?.topPx).toBeGreaterThan(struck?.topPx ?? Number.POSITIVE_INFINITY)
    expect((struck?.leftPx ?? 0) + (struck?.widthPx ?? 0)).toBeLessThan(edge?.leftPx ?? 0)
    const xs = picture.ticks.map(({ xPx }) => xPx)
    expect(xs).toEqual(xs.toSorted((a, b) => a - b))
    expect(Math.max(...xs)).toBeLessThan(240)
  })

  test('shows where the water stands and what alone is heated', () => {
    expect(picture.water).toMatchObject({ name: 'slack tub', whole: false })
    const [part] = picture.parts
    expect(part?.kind).toBe('heat')
    // The water covers 35 of the 85 mm that are heated.
    const coveredPx = (part?.fromPx ?? 0) - (picture.water?.yPx ?? 0)
    expect(coveredPx / ((part?.fromPx ?? 0) - (part?.toPx ?? 0))).toBeCloseTo(35 / 85)
  })

  test('has no water where the piece cools in air', () => {
    const inAir = { ...forecast, baths: forecast.baths.map((bath) => ({ ...bath, kind: 'still air' })) }
    expect(routePicture(inAir, process, { widthPx: 240, heightPx: 300 })).not.toHaveProperty('water')
  })
})

describe('questions and treatments', () => {
  test('a new treatment or name asks the same, a new shape or shop does not', () => {
    const job = { piece: 'chisel', profile: [{ shape: 'round', across: '22 mm', length: '90 mm' }], shop, process } as const
    expect(sameQuestion(job, { ...job, piece: 'drift', process: [] })).toBe(true)
    expect(sameQuestion(job, { ...job, shop: { ...shop, ovens: [] } })).toBe(false)
    expect(sameQuestion(job, { ...job, profile: [] })).toBe(false)
  })

  test('the order of fields is no difference, the order of steps is', () => {
    expect(sameTreatment([{ do: 'heat', to: '1 °C', in: 'a' }], [{ in: 'a', do: 'heat', to: '1 °C' }])).toBe(true)
    expect(sameTreatment(process, process.toReversed())).toBe(false)
  })
})
