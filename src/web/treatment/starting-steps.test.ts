import { describe, expect, test } from 'vitest'
import { describeSteel } from '#contract/steel-answer.ts'
import { parseDuration } from '#units/duration.ts'
import { parseTemperature } from '#units/temperature.ts'
import type { ShopText } from '#web/job/job-text.ts'
import { type StepGround, startingStep, startingTreatment } from './starting-steps.ts'
import { STEP_KINDS } from './step-fields.ts'

const shop: ShopText = {
  fires: [{ name: 'gas forge', kind: 'gas' }],
  baths: [
    { name: 'oil drum', kind: 'medium oil' },
    { name: 'slack tub', kind: 'water' },
  ],
  ovens: [{ name: 'small oven', max: '230 °C' }],
}
const ground = (grade: string, more: Partial<StepGround> = {}): StepGround => ({
  steel: describeSteel({ grade }),
  shop,
  zones: [{ from: '0 mm', to: '30 mm', aim: '54..58 HRC' }],
  units: 'metric',
  thickMm: 22,
  ...more,
})
const celsius = (typed: unknown): number => {
  const read = parseTemperature(typed)
  return read.ok ? read.value.temperatureK - 273.15 : Number.NaN
}
const seconds = (typed: unknown): number => {
  const read = parseDuration(typed, { zero: true })
  return read.ok ? read.value.durationS : Number.NaN
}

describe('a step to start from', () => {
  test('is heated as the sheet of the steel says, and soaked as long', () => {
    const heat = startingStep('heat', ground('S7'))
    expect(celsius(heat.to)).toBeGreaterThanOrEqual(940)
    expect(celsius(heat.to)).toBeLessThanOrEqual(955)
    expect(seconds(heat.hold)).toBeGreaterThan(1800)
    expect(seconds(startingStep('heat', ground('1045')).hold)).toBeLessThan(600)
  })

  test('goes into the bath that the steel wants, of those that the shop has', () => {
    expect(startingStep('quench', ground('S7'))).toEqual({ do: 'quench', in: 'still air', for: '30 min' })
    expect(startingStep('quench', ground('4140')).in).toBe('oil drum')
    expect(startingStep('quench', ground('W1')).in).toBe('slack tub')
    expect(startingStep('quench', ground('W1', { shop: { baths: [{ name: 'oil drum', kind: 'fast oil' }] } })).in).toBe(
      'oil drum',
    )
  })

  test('tempers where the rows of the steel cross the middle of the aim', () => {
    const { at, hold, times } = startingStep('temper', ground('S7'))
    expect(celsius(at)).toBeGreaterThan(200)
    expect(celsius(at)).toBeLessThan(250)
    expect([hold, times]).toEqual(['2 h', 2])
    const soft = startingStep('temper', ground('S7', { zones: [{ from: '0 mm', to: '30 mm', aim: '20..30 HRC' }] }))
    expect(celsius(soft.at)).toBeGreaterThan(600)
  })

  test('is in the units of the reader, to the ten degrees', () => {
    expect(startingStep('temper', ground('O1', { units: 'inch' })).at).toMatch(/^\d+0 °F$/u)
  })

  test('names only what the shop has, and stands up to a steel and a shop that nobody knows', () => {
    const bare: StepGround = { shop: {}, zones: [], units: 'metric', thickMm: 20 }
    for (const kind of STEP_KINDS) expect(startingStep(kind, bare).do).toBe(kind)
    expect(startingStep('heat', bare)).not.toHaveProperty('in')
    expect(startingStep('stress-relieve', ground('4140')).in).toBe('gas forge')
    expect(startingTreatment(ground('4140')).map((step) => step.do)).toEqual(['heat', 'carry', 'quench', 'temper'])
  })
})
