import { describe, expect, test } from 'vitest'
import { sampleJob, sampleSteel } from '#engine/simulation/sample-job.ts'
import { forecastJob } from './forecast.ts'
import type { Outlook } from './outlook.ts'

const SEED = 5
const sketchOf = (change: Parameters<typeof sampleJob>[0] = {}): Outlook =>
  forecastJob(sampleJob(change), { grade: 'sketch', members: 0, seed: SEED }).outlook

describe('a sketch', () => {
  const sketch = sketchOf()
  const { outlook } = forecastJob(sampleJob(), { grade: 'normal', members: 240, seed: SEED })

  test('comes within 2 HRC of the forecast at every place, and so does its band', () => {
    for (const [k, { skin, centre }] of sketch.along.entries()) {
      const full = outlook.along[k]!
      for (const [quick, slow] of [
        [skin, full.skin],
        [centre, full.centre],
      ] as const)
        for (const of of ['quenchedHrc', 'temperedHrc'] as const)
          for (const end of ['value', 'low', 'high'] as const)
            expect(Math.abs(quick[of][end] - slow[of][end]), `${of} ${end} at ${quick.spot.xM}`).toBeLessThan(2)
    }
    const [quick] = sketch.zones
    const [slow] = outlook.zones
    expect(Math.abs(quick!.temperedHrc.low - slow!.temperedHrc.low)).toBeLessThan(1.5)
    expect(Math.abs(quick!.temperedHrc.high - slow!.temperedHrc.high)).toBeLessThan(1.5)
    expect(Math.abs(quick!.chance - slow!.chance)).toBeLessThan(0.2)
  })

  test('has a band about its best estimate, wider for a bar of which less is known', () => {
    for (const { skin, centre } of sketch.along)
      for (const { low, value, high } of [skin.quenchedHrc, skin.temperedHrc, centre.quenchedHrc, centre.temperedHrc]) {
        expect(low).toBeLessThan(value)
        expect(high).toBeGreaterThan(value)
      }
    const vague = sketchOf({ steel: { ...sampleSteel(), range: { C: [0.3, 0.52], Cr: [0.5, 1.4] } } })
    const width = (of: Outlook): number => of.zones[0]!.quenchedHrc.high - of.zones[0]!.quenchedHrc.low
    expect(width(vague)).toBeGreaterThan(width(sketch) + 1)
  })

  test('gives the same bits each time, whatever the seed', () => {
    expect(JSON.stringify(sketchOf())).toBe(JSON.stringify(sketch))
    const other = forecastJob(sampleJob(), { grade: 'sketch', members: 0, seed: SEED + 1 }).outlook
    expect({ ...other, seed: SEED }).toEqual(sketch)
  })

  test('says that none was tried, and counts chances between none and all', () => {
    expect(sketch.members).toBe(0)
    for (const { chance, chanceQuenched, tooSoft, tooHard } of sketch.zones)
      for (const share of [chance, chanceQuenched, tooSoft, tooHard]) {
        expect(share).toBeGreaterThanOrEqual(0)
        expect(share).toBeLessThanOrEqual(1)
      }
    const soft = sketchOf({ steel: sampleSteel({ C: 0.12, Cr: 0, Mo: 0, Mn: 0.5 }) })
    expect(soft.zones[0]!.chance).toBe(0)
    expect(soft.zones[0]!.tooSoft).toBe(1)
  })
})
