import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { chiselForecast } from '#web/findings/forecast.test-data.ts'
import { carriedTime, stretchesOf, timeScale } from './time-scale.ts'

const { steps } = chiselForecast()
const step = (kind: string, start_s: number, end_s: number, times?: number) => ({
  do: kind,
  start_s,
  end_s,
  says: '',
  cautions: [],
  ...(times === undefined ? {} : { times }),
})

describe('stretches', () => {
  test('the air between two steps is a stretch of its own and belongs to the step before', () => {
    const [, , , quench, air, temper] = stretchesOf(steps)
    expect(quench).toMatchObject({ do: 'quench', startS: 8603, endS: 8723, air: false })
    expect(air).toMatchObject({ step: 3, startS: 8723, endS: 9000, air: true })
    expect(temper).toMatchObject({ do: 'temper', startS: 9000 })
  })

  test('each round stands by itself', () => {
    const rounds = stretchesOf([step('normalise', 0, 9000, 3), step('heat', 9000, 9600)])
    expect(rounds.map(({ startS, endS, round, rounds }) => [startS, endS, round, rounds])).toEqual([
      [0, 3000, 1, 3],
      [3000, 6000, 2, 3],
      [6000, 9000, 3, 3],
      [9000, 9600, 1, 1],
    ])
  })
})

describe('the one time line', () => {
  const scale = timeScale(steps)

  test('begins at 0 and ends at 1, and what lies beyond is drawn at the ends', () => {
    expect(scale.shareOf(0)).toBe(0)
    expect(scale.shareOf(16_200)).toBe(1)
    expect(scale.shareOf(-5)).toBe(0)
    expect(scale.shareOf(Number.POSITIVE_INFINITY)).toBe(1)
    expect(scale.timeAt(-0.2)).toBe(0)
    expect(scale.timeAt(1.2)).toBe(16_200)
  })

  test('a walk of three seconds and a temper of two hours both show', () => {
    const width = (from: number, to: number): number => scale.shareOf(to) - scale.shareOf(from)
    expect(width(8600, 8603)).toBeGreaterThan(0.06)
    expect(width(9000, 16_200)).toBeLessThan(0.3)
    // The first ten seconds of a quench take more of the line than its second minute.
    expect(width(8603, 8613)).toBeGreaterThan(width(8663, 8723))
  })

  test('places and times go there and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 16_200, noNaN: true }), (timeS) => {
        expect(Math.abs(scale.timeAt(scale.shareOf(timeS)) - timeS)).toBeLessThan(1e-6)
      }),
    )
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        expect(Math.abs(scale.shareOf(scale.timeAt(share)) - share)).toBeLessThan(1e-9)
      }),
    )
  })

  test('rises everywhere, whatever the steps', () => {
    const durations = fc.array(
      fc.tuple(fc.constantFrom('heat', 'carry', 'quench', 'temper'), fc.double({ min: 0.5, max: 40_000, noNaN: true })),
      {
        minLength: 1,
        maxLength: 8,
      },
    )
    fc.assert(
      fc.property(durations, (list) => {
        let at = 0
        const made = timeScale(
          list.map(([kind, s]) => {
            const from = at
            at += s
            return step(kind, from, at)
          }),
        )
        let before = -1
        for (let i = 0; i <= 50; i++) {
          const share = made.shareOf((at * i) / 50)
          expect(share).toBeGreaterThan(before)
          before = share
        }
      }),
    )
  })

  test('tells the stretch of a time', () => {
    expect(scale.stretchAt(8601)?.do).toBe('carry')
    expect(scale.stretchAt(8603)?.do).toBe('quench')
    expect(scale.stretchAt(8800)).toMatchObject({ do: 'quench', air: true })
    expect(scale.stretchAt(Number.POSITIVE_INFINITY)?.do).toBe('temper')
  })

  test('without steps everything is at its start', () => {
    const empty = timeScale([])
    expect(empty.shareOf(5)).toBe(1)
    expect(empty.timeAt(0.5)).toBe(0)
    expect(empty.stretchAt(5)).toBeUndefined()
  })
})

describe('the cursor, when the treatment changes under it', () => {
  const before = timeScale([step('heat', 0, 900), step('carry', 900, 903), step('quench', 903, 963)])
  const after = timeScale([step('heat', 0, 1200), step('carry', 1200, 1202), step('quench', 1202, 1262)])

  test('stays as long into its step', () => {
    expect(carriedTime(before, after, 910)).toBe(1209)
    expect(carriedTime(before, after, 902.5)).toBe(1202)
    expect(carriedTime(before, after, 100)).toBe(100)
  })

  test('stays at the end, and where its step is gone', () => {
    expect(carriedTime(before, after, Number.POSITIVE_INFINITY)).toBe(Number.POSITIVE_INFINITY)
    expect(carriedTime(before, timeScale([step('heat', 0, 50)]), 910)).toBe(910)
  })
})
