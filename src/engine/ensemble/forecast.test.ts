import { describe, expect, test } from 'vitest'
import { SAMPLE_HEAT, SAMPLE_QUENCH, SAMPLE_TEMPER, SAMPLE_WALK, sampleJob, sampleSteel } from '#engine/simulation/sample-job.ts'
import { forecastJob } from './forecast.ts'

const OPTIONS = { grade: 'draft', members: 60, seed: 11 } as const
const { outlook } = forecastJob(sampleJob(), OPTIONS)

describe('the band', () => {
  test('holds the best estimate everywhere, and nine members in ten at the probe', () => {
    for (const { skin, centre } of outlook.along) {
      for (const { quenchedHrc, temperedHrc } of [skin, centre]) {
        expect(quenchedHrc.low).toBeLessThanOrEqual(quenchedHrc.value)
        expect(quenchedHrc.high).toBeGreaterThanOrEqual(quenchedHrc.value)
        expect(temperedHrc.low).toBeLessThanOrEqual(temperedHrc.value)
        expect(temperedHrc.high).toBeGreaterThanOrEqual(temperedHrc.value)
      }
    }
    const [middle] = outlook.probes
    expect(middle!.quenchedHrc.high - middle!.quenchedHrc.low).toBeGreaterThan(2)
    expect(middle!.quenchedHrc.high - middle!.quenchedHrc.low).toBeLessThan(15)
  })

  test('same seed, same bits; another seed, another band; more members, a like band', () => {
    const again = forecastJob(sampleJob(), OPTIONS).outlook
    expect(JSON.stringify(again)).toBe(JSON.stringify(outlook))
    const other = forecastJob(sampleJob(), { ...OPTIONS, seed: 12 }).outlook
    expect(other.zones[0]!.temperedHrc.low).not.toBe(outlook.zones[0]!.temperedHrc.low)
    const more = forecastJob(sampleJob(), { ...OPTIONS, members: 240 }).outlook
    expect(Math.abs(more.zones[0]!.temperedHrc.low - outlook.zones[0]!.temperedHrc.low)).toBeLessThan(1.5)
  })

  test('is wider where less is known of the bar', () => {
    const vague = sampleSteel()
    const wide = forecastJob(sampleJob({ steel: { ...vague, range: { C: [0.3, 0.52] } } }), OPTIONS).outlook
    const width = (of: typeof outlook): number => of.zones[0]!.quenchedHrc.high - of.zones[0]!.quenchedHrc.low
    expect(width(wide)).toBeGreaterThan(width(outlook) + 1)
  })
})

describe('what comes out', () => {
  test('chrome-moly in oil hardens through and tempers to the low fifties', () => {
    const [zone] = outlook.zones
    expect(zone!.quenchedHrc.value).toBeGreaterThan(54)
    expect(zone!.temperedHrc.value).toBeGreaterThan(49)
    expect(zone!.temperedHrc.value).toBeLessThan(zone!.quenchedHrc.value)
    expect(zone!.chance).toBeGreaterThan(0.4)
  })

  test('the chance of all zones is never above that of any one', () => {
    const zones = [...sampleJob().zones, { name: 'other end', fromM: 0.07, toM: 0.09, aim: { highHrc: 52 }, assumed: false }]
    const both = forecastJob(sampleJob({ zones }), OPTIONS).outlook
    for (const zone of both.zones) expect(both.chance).toBeLessThanOrEqual(zone.chance)
  })

  test('mild steel stays soft, unheated steel stays as it came, a cold heat hardens nothing', () => {
    const mild = forecastJob(sampleJob({ steel: sampleSteel({ C: 0.12, Cr: 0, Mo: 0, Mn: 0.5 }) }), OPTIONS).outlook
    expect(mild.zones[0]!.quenchedHrc.value).toBeLessThan(25)
    expect(mild.zones[0]!.chance).toBe(0)
    const cold = forecastJob(
      sampleJob({
        process: [{ ...SAMPLE_HEAT, toK: 933 }, SAMPLE_WALK, SAMPLE_QUENCH, SAMPLE_TEMPER],
      }),
      OPTIONS,
    ).outlook
    expect(cold.zones[0]!.quenchedHrc.value).toBeLessThan(25)
    const untouched = forecastJob(sampleJob({ process: [SAMPLE_TEMPER] }), OPTIONS).outlook
    expect(untouched.zones[0]!.temperedHrc.value).toBeLessThan(25)
  })

  test('a hotter temper is softer, a longer one too', () => {
    const at = (atK: number, holdS: number): number =>
      forecastJob(
        sampleJob({
          process: [SAMPLE_HEAT, SAMPLE_WALK, SAMPLE_QUENCH, { ...SAMPLE_TEMPER, atK, holdS }],
        }),
        OPTIONS,
      ).outlook.probes[0]!.temperedHrc.value
    const base = at(463, 3600)
    expect(at(503, 3600)).toBeLessThan(base)
    expect(at(463, 4 * 3600)).toBeLessThan(base)
  })
})
