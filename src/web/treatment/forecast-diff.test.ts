import { describe, expect, test } from 'vitest'
import type { Forecast } from '#contract/answers.ts'
import { steppedTool } from '#report/fixture.test-data.ts'
import { forecastDiff, isQuiet, stillThere, turnOf } from './forecast-diff.ts'

const before = steppedTool()
const [shoulder, fire, rim] = before.findings
const withFindings = (findings: readonly (Forecast['findings'][number] | undefined)[]): Forecast => ({
  ...before,
  findings: findings.flatMap((each) => (each === undefined ? [] : [each])),
})

describe('two forecasts side by side', () => {
  test('the same one changes nothing', () => {
    const diff = forecastDiff(before, structuredClone(before))
    expect(isQuiet(diff)).toBe(true)
    expect(diff.zones.map(({ name }) => name)).toEqual(['dished face', 'struck end'])
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
    expect(diff.zones[1]).toEqual({ name: 'struck end', aim: 'at most 40 HRC', before: { chance: 0.97, hrc: 24 } })
    expect(diff.zones.map(turnOf)).toEqual(['same', undefined])
  })

  test('findings come and go; a moved place and other figures are the same finding', () => {
    const moved = shoulder && { ...shoulder, says: 'The oil stands near the shoulder.', where: { ...shoulder.where, x_mm: 41 } }
    const after = withFindings([moved, rim, rim && { ...rim, id: 'oil-smoke' }])
    const { gained, lost } = forecastDiff(before, after)
    expect(gained.map(({ id }) => id)).toEqual(['oil-smoke'])
    expect(lost.map(({ id }) => id)).toEqual(['oil-fire'])
    expect(shoulder && stillThere(shoulder, before, after)).toBe(true)
    expect(fire && stillThere(fire, before, after)).toBe(false)
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
})
