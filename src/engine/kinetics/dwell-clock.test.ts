import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { DwellClock, dwellOf } from './dwell-clock.ts'
import { CLASS_MIDDLES_K, CLASSES } from './temperature-classes.ts'

const sum = (values: Float64Array): number => values.reduce((a, b) => a + b, 0)

describe('[KI2] time by temperature', () => {
  test('a straight run is shared out evenly, a hold falls into one class', () => {
    const dwell = dwellOf([0, 10, 40], [1173.15, 973.15, 963.15])
    for (let k = 0; k < 10; k++) expect(dwell[k]).toBeCloseTo(1, 9)
    expect(dwell[10]).toBeCloseTo(30, 9)
    expect(CLASS_MIDDLES_K[10]).toBeCloseTo(963.15, 9)
  })

  test('no time is lost or made, however the curve goes up and down between 180 and 900 degC', () => {
    const curve = fc.array(
      fc.tuple(fc.double({ min: 0.01, max: 50, noNaN: true }), fc.double({ min: 454, max: 1173, noNaN: true })),
      {
        minLength: 2,
        maxLength: 20,
      },
    )
    fc.assert(
      fc.property(curve, (steps) => {
        let s = 0
        const times = steps.map(([dt]) => (s += dt))
        const dwell = dwellOf(
          times,
          steps.map(([, kelvin]) => kelvin),
        )
        expect(Math.abs(sum(dwell) - (times.at(-1)! - times[0]!))).toBeLessThan(1e-6)
        expect(Math.min(...dwell)).toBeGreaterThanOrEqual(0)
      }),
    )
  })

  test('what was martensite once is counted no more, by this clock or the next', () => {
    const dwell = new Float64Array(CLASSES * 2)
    const lowest = Float64Array.of(Number.POSITIVE_INFINITY, 500)
    const clock = new DwellClock(dwell, Float64Array.of(900, 900), lowest, { settledK: 520 })
    clock.at(1, Float64Array.of(700, 700))
    expect(sum(dwell)).toBeCloseTo(1, 9)
    clock.at(2, Float64Array.of(510, 510))
    clock.at(9, Float64Array.of(800, 800))
    expect(sum(dwell)).toBeCloseTo(2, 9)
  })

  test('above its ceiling nothing is counted: of a run through it the part below', () => {
    const dwell = new Float64Array(CLASSES)
    const lowest = Float64Array.of(Number.POSITIVE_INFINITY)
    const clock = new DwellClock(dwell, Float64Array.of(1100), lowest, { settledK: 500, ceilingK: 1000 })
    clock.at(5, Float64Array.of(1050))
    expect(sum(dwell)).toBe(0)
    clock.at(15, Float64Array.of(950))
    expect(sum(dwell)).toBeCloseTo(5, 9)
  })

  test('says so when places and dwell times do not belong together', () => {
    expect(() => new DwellClock(new Float64Array(3), Float64Array.of(900), Float64Array.of(900), { settledK: 500 })).toThrow(
      /3 dwell times for 1 places/u,
    )
    expect(() => dwellOf([0, 1], [900])).toThrow(/2 times for 1 temperatures/u)
  })
})
