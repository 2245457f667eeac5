import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { type Forecast, forecast, readJobText } from './index.ts'

const folder = join(import.meta.dirname, '..', '..', 'examples')
const read = (name: string): unknown => readJobText(readFileSync(join(folder, name), 'utf8'), name)

type Step = { do: string; atmosphere?: string }
const spring = read('flat-spring.yaml') as { process: Step[] }
const asked = (job: unknown, grade: 'draft' | 'sketch' = 'draft'): Forecast =>
  forecast(job, { grade, members: 20, readFile: read })
const inAtmosphere = (atmosphere: string): unknown => ({
  ...spring,
  process: spring.process.map((step) => (step.do === 'normalise' || step.do === 'heat' ? { ...step, atmosphere } : step)),
})

describe('the skin in an answer', () => {
  const found = asked(spring)
  const [skin] = found.skin ?? []

  test('stands beside the zone, with carbon and hardness rising inward to those of the bar', () => {
    expect(skin?.where.zone).toBe('leaf')
    const carbon = skin?.profile.map(({ carbon_wtpct }) => carbon_wtpct.value) ?? []
    const hardness = skin?.profile.map(({ hardness_HRC }) => hardness_HRC.value) ?? []
    expect(carbon).toEqual([...carbon].sort((a, b) => a - b))
    expect(hardness).toEqual([...hardness].sort((a, b) => a - b))
    expect(carbon[carbon.length - 1]).toBeCloseTo(0.6, 1)
    expect(hardness[hardness.length - 1]).toBeCloseTo(found.zones[0]?.tempered_HRC.value ?? 0, 0)
  })

  test('tells a file that bites the skin from soft steel', () => {
    expect(skin?.fileReads.skin_HRC.value).toBeLessThan((skin?.fileReads.under_HRC.value ?? 0) - 10)
    expect(skin?.fileReads.says).toBe('Right out of the quench a file bites there, and then skates.')
  })

  test('every figure lies in its band, and names what it rests on', () => {
    for (const figure of [skin?.scale_mm, skin?.decarburised_mm, skin?.grindOff_mm, skin?.surface_HRC]) {
      expect(figure?.low).toBeLessThanOrEqual(figure?.value ?? Number.NaN)
      expect(figure?.high).toBeGreaterThanOrEqual(figure?.value ?? Number.NaN)
      expect(figure?.source).toMatch(/Agren/u)
    }
  })

  test('says what is not known of it', () => {
    const says = found.assumptions.map((each) => each.says).join(' ')
    expect(says).toMatch(/steel under the skin/u)
    expect(says).toMatch(/sound skin/u)
  })

  test('air takes most, a rich fire less, a closed pipe nothing', () => {
    const depth = (atmosphere: string): number => asked(inAtmosphere(atmosphere)).skin?.[0]?.decarburised_mm.value ?? Number.NaN
    const rich = depth('rich')
    // The walk to the bath is in the air.
    expect(depth('packed')).toBeLessThan(0.02)
    expect(rich).toBeGreaterThan(0)
    expect(skin?.decarburised_mm.value).toBeGreaterThan(rich)
    expect(asked(inAtmosphere('packed')).findings.map(({ id }) => id)).not.toContain('decarburised-skin')
  })

  test('a sketch leaves it out and raises the same finding', () => {
    const sketch = asked(spring, 'sketch')
    expect(sketch.skin).toBeUndefined()
    expect(sketch.findings.map(({ id }) => id)).toContain('decarburised-skin')
  })
})
