import { describe, expect, test } from 'vitest'
import type { Forecast } from '#contract/answers.ts'
import { chiselForecast } from '#web/findings/forecast.test-data.ts'
import { chanceTurn, forecastDiff, isQuiet, stillThere, turnOf } from './forecast-diff.ts'

const before = chiselForecast()
const [shoulder, struck, rim] = before.findings
const withFindings = (findings: readonly (Forecast['findings'][number] | undefined)[]): Forecast => ({
  ...before,
  findings: findings.flatMap((each) => (each === undefined ? [] : [each])),
})

describe('two forecasts side by side', () => {
  test('the same one changes nothing', () => {
    const diff = forecastDiff(before, structuredClone(before))
    expect(isQuiet(diff)).toBe(true)
    expect(diff.zones.map(({ name }) => name)).toEqual(['edge', 'struck end'])
    expect(diff.timeS[0]).toBe(diff.timeS[1])
  })

  test('chances go up and down zone by zone; what only the draw of lots moves is no change', () => {
    const chances = [0.31, 0.985]
    const diff = forecastDiff(before, { ...before, zones: before.zones.map((zone, i) => ({ ...zone, chance: chances[i] ?? 0 })) })
    expect(diff.zones.map(turnOf)).toEqual(['worse', 'same'])
    expect(diff.zones[0]).toMatchObject({ before: { chance: 0.83 }, after: { chance: 0.31 } })
    expect(isQuiet(diff)).toBe(false)
  })

  test('a zone that only one of them knows has no turn', () => {
    const diff = forecastDiff(before, { ...before, zones: before.zones.slice(0, 1) })
    expect(diff.zones[1]).toEqual({ name: 'struck end', aim: 'at most 45 HRC', before: { chance: 0.97, hrc: 39.2 } })
    expect(diff.zones.map(turnOf)).toEqual(['same', undefined])
  })

  test('findings come and go; a moved place and other figures are the same finding', () => {
    const moved = shoulder && { ...shoulder, says: 'The water stands near the shoulder.', where: { ...shoulder.where, x_mm: 41 } }
    const after = withFindings([moved, rim, rim && { ...rim, id: 'red-short' }])
    const { gained, lost } = forecastDiff(before, after)
    expect(gained.map(({ id }) => id)).toEqual(['red-short'])
    expect(lost.map(({ id }) => id)).toEqual(['struck-end-hard'])
    expect(shoulder && stillThere(shoulder, before, after)).toBe(true)
    expect(struck && stillThere(struck, before, after)).toBe(false)
  })

  test('of two alike one can go', () => {
    const two = withFindings([rim, rim && { ...rim, where: { ...rim.where, x_mm: 8 } }])
    const { gained, lost } = forecastDiff(two, withFindings([rim]))
    expect([gained.length, lost.length]).toEqual([0, 1])
  })

  test('a step put in before does not make new findings of the old ones', () => {
    const later = {
      ...before,
      steps: [{ ...before.steps[0], do: 'normalise' } as Forecast['steps'][number], ...before.steps],
      findings: before.findings.map((finding) => ({
        ...finding,
        where: { ...finding.where, ...(finding.where?.step === undefined ? {} : { step: finding.where.step + 1 }) },
      })),
    }
    expect(forecastDiff(before, later)).toMatchObject({ gained: [], lost: [] })
  })

  test.each([
    [0.2, 0.8, '20 in 100 before, now 80 in 100'],
    [0.54, 0.46, '54 in 100 before, now 46 in 100'],
    [0.8, 0.81, '81 in 100, as before'],
    [undefined, 0.3, '30 in 100, not asked for before'],
    [0.3, undefined, 'not asked for any more'],
  ])('chance from %s to %s: %s', (was, is, says) => {
    const figures = (chance: number) => ({ chance, hrc: 50 })
    const zone = {
      name: 'edge',
      aim: '54..59 HRC',
      ...(was === undefined ? {} : { before: figures(was) }),
      ...(is === undefined ? {} : { after: figures(is) }),
    }
    expect(chanceTurn(zone)).toBe(says)
  })
})
