import fc from 'fast-check'
import { expect, test } from 'vitest'
import { advanceParameter, hollomonJaffe } from './tempering-parameter.ts'

const ZERO_DEGC_K = 273.15

/** Parameter of a history given as degC over seconds, in steps of `stepS`, constant 18. */
function parameterOf(degC: (timeS: number) => number, durationS: number, stepS: number): number {
  let parameterK = 0
  for (let t = 0; t < durationS; t += stepS)
    parameterK = advanceParameter(parameterK, 18, degC(t + stepS / 2) + ZERO_DEGC_K, stepS)
  return parameterK
}

/** Steady temperature [degC] that gives `parameterK` in `holdS`. */
function equivalentDegC(parameterK: number, holdS: number): number {
  let low = 0
  let high = 900
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (hollomonJaffe.evaluate({ temperatureK: middle + ZERO_DEGC_K, durationS: holdS, constant: 18 }) < parameterK) low = middle
    else high = middle
  }
  return low
}

// Worked beside the additivity rule: histories and the steady hold that they equal, constant 18.
test.each([
  {
    says: '205 +/- 15 degC, period 15 min, 2 h',
    degC: (t: number) => 205 + 15 * Math.sin((2 * Math.PI * t) / 900),
    lastsS: 7200,
    holdS: 7200,
    expected: 209.3,
  },
  {
    says: 'to 260 degC and back at 5 K/s',
    degC: (t: number) => 260 - 5 * Math.abs(t - 48),
    lastsS: 96,
    holdS: 3600,
    expected: 177,
  },
  {
    says: 'to 300 degC and back at 5 K/s',
    degC: (t: number) => 300 - 5 * Math.abs(t - 56),
    lastsS: 112,
    holdS: 3600,
    expected: 212,
  },
  {
    says: 'to 300 degC and back at 20 K/s',
    degC: (t: number) => 300 - 20 * Math.abs(t - 14),
    lastsS: 28,
    holdS: 3600,
    expected: 193,
  },
  {
    says: 'to 330 degC and back at 5 K/s',
    degC: (t: number) => 330 - 5 * Math.abs(t - 62),
    lastsS: 124,
    holdS: 3600,
    expected: 238,
  },
])('$says is worth $expected degC', ({ degC, lastsS, holdS, expected }) => {
  expect(Math.abs(equivalentDegC(parameterOf(degC, lastsS, lastsS / 4000), holdS) - expected)).toBeLessThan(1)
})

const anyK = fc.double({ min: 360, max: 950, noNaN: true })
const anyS = fc.double({ min: 1, max: 20000, noNaN: true })

test('[TM1] one hold and the same hold in many pieces give the same parameter', () => {
  fc.assert(
    fc.property(anyK, anyS, fc.integer({ min: 2, max: 40 }), (temperatureK, durationS, pieces) => {
      let parameterK = 0
      for (let i = 0; i < pieces; i++) parameterK = advanceParameter(parameterK, 18, temperatureK, durationS / pieces)
      const whole = hollomonJaffe.evaluate({ temperatureK, durationS, constant: 18 })
      expect(Math.abs(parameterK - whole)).toBeLessThan(1e-6 * whole)
    }),
  )
})

test('[TM1] no stretch of a history ever takes tempering back', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(anyK, anyS), { minLength: 1, maxLength: 20 }), (stretches) => {
      let parameterK = 0
      for (const [temperatureK, durationS] of stretches) {
        const next = advanceParameter(parameterK, 20, temperatureK, durationS)
        expect(next).toBeGreaterThanOrEqual(parameterK)
        parameterK = next
      }
    }),
  )
})

test('[TM1] two holds in either order come within 1 % of each other', () => {
  fc.assert(
    fc.property(anyK, anyS, anyK, anyS, (firstK, firstS, secondK, secondS) => {
      const forth = advanceParameter(advanceParameter(0, 18, firstK, firstS), 18, secondK, secondS)
      const back = advanceParameter(advanceParameter(0, 18, secondK, secondS), 18, firstK, firstS)
      expect(Math.abs(forth - back)).toBeLessThan(0.01 * forth)
    }),
  )
})
