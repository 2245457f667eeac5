import { describe, expect, test } from 'vitest'
import { chiselForecast } from '#web/findings/forecast.test-data.ts'
import { aimedZones, aimState, chanceSays } from './aims.ts'
import { spread } from './label-heights.ts'
import { answerSays, faultsSay } from './outlook-says.ts'

describe('aims', () => {
  test('on the C scale become figures; an open side stays open', () => {
    const [edge, struck] = aimedZones(chiselForecast())
    expect(edge).toMatchObject({ name: 'edge', lowHrc: 54, highHrc: 59 })
    expect(struck).toMatchObject({ highHrc: 45 })
    expect(struck).not.toHaveProperty('lowHrc')
  })

  test('on another scale they keep their words', () => {
    const forecast = chiselForecast()
    const zones = forecast.zones.map((zone) => ({ ...zone, aim: '480..560 HV' }))
    expect(aimedZones({ zones })[0]).not.toHaveProperty('lowHrc')
    expect(aimedZones({ zones })[0]?.aim).toBe('480..560 HV')
  })

  test('are met, doubtful or missed by their chance', () => {
    expect([0.95, 0.9, 0.62, 0.5, 0.49].map(aimState)).toEqual(['met', 'met', 'doubtful', 'doubtful', 'missed'])
  })

  test('chances as they are said', () => {
    expect([1, 0.996, 0.62, 0.004].map(chanceSays)).toEqual(['as good as sure', 'over 99 in 100', '62 in 100', 'under 1 in 100'])
  })
})

describe('where the forecast stands', () => {
  test('tells of the zone that is least sure', () => {
    expect(answerSays(chiselForecast())).toBe('edge 58 to 64 HRC, may meet its aim: 83 in 100')
  })

  test('without aims, of the working end', () => {
    expect(answerSays({ ...chiselForecast(), zones: [] })).toBe('working end 59 to 65 HRC; no aim is set')
  })

  test('counts faults', () => {
    expect([1, 2].map(faultsSay)).toEqual(['one thing cannot be read', '2 things cannot be read'])
  })
})

describe('labels beside each other', () => {
  test('stay where they are wished as far as there is room', () => {
    expect(spread([100, 300], 40, 20, 400)).toEqual([100, 300])
    expect(spread([300, 310], 40, 20, 400)).toEqual([300, 340])
    expect(spread([390, 395], 40, 20, 400)).toEqual([360, 400])
    expect(spread([], 40, 20, 400)).toEqual([])
  })
})
