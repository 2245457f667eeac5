import { describe, expect, test } from 'vitest'
import { forecast } from './forecast-answer.ts'

/** A bar of plain carbon steel, made up: hard in water, tempered in an oven that reads low. */
const BAR = {
  piece: 'made-up bar',
  steel: { analysis: { C: 0.8, Mn: 0.7, Si: 0.2 } },
  profile: [{ shape: 'round', across: '10 mm', length: '60 mm' }],
  zones: [
    { name: 'edge', from: '2 mm', to: '25 mm', aim: '56..62 HRC' },
    { name: 'tail', from: '45 mm', to: '58 mm', aim: 'at most 50 HRC' },
  ],
  shop: {
    fires: [{ name: 'gas forge', kind: 'gas' }],
    baths: [{ name: 'tub', kind: 'water', volume: '60 L', depth: '400 mm', temperature: '20 °C' }],
    ovens: [{ name: 'oven', max: '250 °C', reads: '9 °C low', swing: '0 °C' }],
  },
}
const HARDEN = [
  { do: 'heat', in: 'gas forge', to: '800 °C', hold: '5 min' },
  { do: 'carry', for: '2 s' },
  { do: 'quench', in: 'tub', for: '1 min', agitation: 'moderate' },
]
const TEMPER = { do: 'temper', in: 'oven', at: '191 °C', hold: '1 h' }
const QUICK = { grade: 'sketch' } as const

describe('what other tempers would give', () => {
  const told = forecast({ ...BAR, process: [...HARDEN, TEMPER] }, QUICK)
  const curve = told.temperCurve as NonNullable<typeof told.temperCurve>

  test('falls with temperature, its figures inside their bands, from the hardness of the quench', () => {
    expect(curve.points.length).toBeGreaterThanOrEqual(12)
    expect(curve.points[0]?.temperature_C).toBe(150)
    curve.points.forEach(({ temperature_C, hardness_HRC: { value, low, high } }, i) => {
      expect(low).toBeLessThan(value)
      expect(high).toBeGreaterThan(value)
      expect(value).toBeLessThanOrEqual(curve.quenched_HRC.value)
      const before = curve.points[i - 1]
      if (before === undefined) return
      expect(temperature_C).toBeGreaterThan(before.temperature_C)
      expect(value).toBeLessThanOrEqual(before.hardness_HRC.value)
    })
    expect(Math.max(...curve.points.map(({ temperature_C }) => temperature_C))).toBeLessThan(told.critical.ac1_C)
  })

  test('at the heat that the oven truly holds it is what the zone came to', () => {
    expect(curve.zone).toBe('edge')
    expect(curve.step).toBe(3)
    const at200 = curve.points.find(({ temperature_C }) => temperature_C === 200)?.hardness_HRC
    const edge = told.zones.find(({ name }) => name === 'edge')?.tempered_HRC
    expect(Math.abs((at200?.value ?? 0) - (edge?.value ?? 99))).toBeLessThan(0.7)
  })

  test('names the oven and its reach', () => {
    expect(curve.oven).toEqual({ name: 'oven', max_C: 250, reads_low_C: 9, swing_C: 0 })
    expect(told.steps.map(({ to_C, at_C }) => [to_C, at_C])).toEqual([
      [800, undefined],
      [undefined, undefined],
      [undefined, undefined],
      [undefined, 191],
    ])
  })

  test('a longer hold is softer, a second round too', () => {
    const softer = (step: object): number => {
      const found = forecast({ ...BAR, process: [...HARDEN, { ...TEMPER, ...step }] }, QUICK).temperCurve?.points
      return found?.find(({ temperature_C }) => temperature_C === 250)?.hardness_HRC.value ?? Number.NaN
    }
    const once = softer({})
    expect(softer({ hold: '4 h' })).toBeLessThan(once - 0.3)
    expect(softer({ times: 2 })).toBeLessThan(once)
  })

  test('is left out where nothing is tempered, nothing hardened, or it was heated again after', () => {
    const of = (process: readonly object[]): unknown => forecast({ ...BAR, process }, QUICK).temperCurve
    expect(of(HARDEN)).toBeUndefined()
    expect(of([TEMPER])).toBeUndefined()
    expect(of([...HARDEN, TEMPER, ...HARDEN])).toBeUndefined()
  })
})
