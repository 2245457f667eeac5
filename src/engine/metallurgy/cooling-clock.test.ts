import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { CoolingClock, coolingTime800To500 } from './cooling-clock.ts'

const hot = (n: number): Float64Array => new Float64Array(n).fill(1123)

/** Newton's cooling toward 300 K, at uneven instants. */
function newton(startK: number, tauS: number, endS: number): { timesS: number[]; temperaturesK: number[] } {
  const timesS: number[] = []
  for (let t = 0; t < endS; t = 1.07 * t + 0.11) timesS.push(t)
  return { timesS, temperaturesK: timesS.map((t) => 300 + (startK - 300) * Math.exp(-t / tauS)) }
}

describe('[MT8] time from 800 to 500 degC', () => {
  test.each([3, 17, 110])("is Newton's, tau %d s, whatever the steps", (tauS) => {
    const { timesS, temperaturesK } = newton(1130, tauS, 6 * tauS)
    const exact = tauS * Math.log((1073.15 - 300) / (773.15 - 300))
    expect(coolingTime800To500(timesS, temperaturesK)).toBeCloseTo(exact, 6)
  })

  test('does not depend on where the steps fall', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.01, max: 2, noNaN: true }), { minLength: 40, maxLength: 60 }), (steps) => {
        let t = 0
        const timesS = [0, ...steps.map((step) => (t += step))]
        const temperaturesK = timesS.map((at) => 300 + 820 * Math.exp(-at / 6))
        if (temperaturesK[temperaturesK.length - 1]! > 773) return
        expect(coolingTime800To500(timesS, temperaturesK)).toBeCloseTo(6 * Math.log(773.15 / 473.15), 6)
      }),
      { numRuns: 40 },
    )
  })

  test('of a piece that starts at 780 degC is scaled to the whole window', () => {
    expect(coolingTime800To500([0, 7], [1053.15, 773.15])).toBeCloseTo(7 * (300 / 280), 6)
  })

  test('of a piece that starts too cold, or never leaves the window, is endless', () => {
    expect(coolingTime800To500([0, 5], [760, 500])).toBe(Number.POSITIVE_INFINITY)
    expect(coolingTime800To500([0, 5], [1123, 800])).toBe(Number.POSITIVE_INFINITY)
    expect(() => coolingTime800To500([0, 1], [1123])).toThrow(/2 times for 1 temperatures/)
  })
})

describe('[MT8] CoolingClock', () => {
  test('times each node for itself; one that was never hot is endless', () => {
    const clock = new CoolingClock(hot(3), Float64Array.of(1123, 1123, 700))
    clock.update(2, Float64Array.of(1073.15, 1100, 690))
    clock.update(5, Float64Array.of(773.15, 1073.15, 600))
    clock.update(11, Float64Array.of(500, 773.15, 500))
    const times = clock.times()
    expect(times[0]).toBeCloseTo(3, 9)
    expect(times[1]).toBeCloseTo(6, 9)
    expect(times[2]).toBe(Number.POSITIVE_INFINITY)
  })

  test('a skin warmed again from inside above 500 degC is timed to its last crossing, but not once it was under 350', () => {
    const clock = new CoolingClock(hot(2), hot(2))
    clock.update(1, Float64Array.of(1073.15, 1073.15))
    clock.update(3, Float64Array.of(773.15, 773.15))
    clock.update(4, Float64Array.of(700, 600))
    clock.update(9, Float64Array.of(800, 800))
    clock.update(12, Float64Array.of(773.15, 773.15))
    clock.update(20, Float64Array.of(400, 400))
    expect(clock.times()[0]).toBeCloseTo(11, 9)
    expect(clock.times()[1]).toBeCloseTo(2, 9)
  })
})
