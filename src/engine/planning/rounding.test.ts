import { describe, expect, it } from 'vitest'
import { INCH_ROUNDING, METRIC_ROUNDING, wholeMinutes } from './rounding.ts'

describe('figures that a smith can set', () => {
  it('rounds a dial to 5 °C or 10 °F', () => {
    expect(METRIC_ROUNDING.temperatureK(273.15 + 222.4)).toBeCloseTo(273.15 + 220, 9)
    expect(METRIC_ROUNDING.atMostK(273.15 + 229.9)).toBeCloseTo(273.15 + 225, 9)
    expect(METRIC_ROUNDING.atMostK(273.15 + 230)).toBeCloseTo(273.15 + 230, 9)
    const fahrenheit = INCH_ROUNDING.temperatureK(500) * 1.8 - 459.67
    expect(fahrenheit).toBeCloseTo(440, 6)
  })

  it('rounds a length to 5 mm or a quarter of an inch', () => {
    expect(METRIC_ROUNDING.lengthM(0.0381)).toBe(0.04)
    expect(INCH_ROUNDING.lengthM(0.0381)).toBe(0.0381)
    expect(INCH_ROUNDING.lengthM(0.04)).toBe(0.0381)
  })

  it('holds for whole minutes, never less than asked', () => {
    expect(wholeMinutes(61)).toBe(120)
    expect(wholeMinutes(120)).toBe(120)
  })
})
