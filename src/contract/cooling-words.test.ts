import { describe, expect, test } from 'vitest'
import { IN_METRIC } from '#engine/findings/wording.ts'
import { coolingSays } from './cooling-words.ts'
import { forecast, InputProblems } from './index.ts'

describe('what is said of a slow cooling', () => {
  test('how slowly through the change, when it is cold, and how hard it is then', () => {
    expect(coolingSays({ in: 'vermiculite', coldS: 18840, slowestS: 2340, softestHv: 255, hardestHv: 257 }, IN_METRIC)).toBe(
      'Then deep into vermiculite, 39 min from 800 °C to 500 °C, cold after 5 h 14 min. About 245 HB then.',
    )
  })

  test('that a steel hardens all the same', () => {
    expect(coolingSays({ in: 'still air', coldS: 900, slowestS: 250, softestHv: 640, hardestHv: 700 }, IN_METRIC)).toMatch(
      /It hardens in that/u,
    )
  })

  test('and nothing of hardness where it was never red', () => {
    expect(coolingSays({ in: 'still air', coldS: 900 }, IN_METRIC)).toBe('Then still air, to black and cold.')
  })
})

describe('a job says how it cools', () => {
  const job = (step: object): unknown => ({
    piece: 'bar',
    steel: { grade: '1084' },
    profile: [{ shape: 'round', across: '20 mm', length: '80 mm' }],
    process: [step],
  })
  const says = (step: object): string => {
    try {
      return forecast(job(step), { grade: 'sketch' }).steps[0]?.says ?? ''
    } catch (error) {
      if (error instanceof InputProblems) return error.problems.map(({ field, says: words }) => `${field}: ${words}`).join(' | ')
      throw error
    }
  }
  const anneal = { do: 'anneal', in: 'coal fire', to: '760 °C', hold: '20 min' }

  test.each([
    ['vermiculite', /deep into vermiculite/u],
    ['Ashes', /deep into dry ashes/u],
    ['15 °C/h', /slow, shut in/u],
    ['still air', /still air/u],
  ])('%s', (cool, words) => {
    expect(says({ ...anneal, cool })).toMatch(words)
  })

  test('a normalise too', () => {
    expect(says({ ...anneal, do: 'normalise', cool: 'lime' })).toMatch(/dry lime/u)
  })

  test('what is no place to cool in is named with what is', () => {
    expect(says({ ...anneal, cool: 'custard' })).toMatch(/process\[0\]\.cool: .*custard.*vermiculite/u)
    expect(says({ ...anneal, do: 'normalise', cool: 'custard' })).toMatch(/process\[0\]\.cool: .*vermiculite/u)
  })
})
