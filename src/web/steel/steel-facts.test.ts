import { describe, expect, test } from 'vitest'
import { describeSteel } from '#contract/steel-answer.ts'
import { besideRows } from './beside-rows.ts'
import { analysisText, spanText, temperTable, treatmentFacts } from './steel-facts.ts'

const s7 = describeSteel({ grade: 'S7' })
const w1 = describeSteel({ grade: 'W1' })

test('a published heat reads in round figures in either system', () => {
  expect(spanText({ from: 845, to: 870 }, 'metric')).toBe('845 to 870 °C')
  expect(spanText({ from: 843.33, to: 871.11 }, 'inch')).toBe('1550 to 1600 °F')
  expect(spanText({ from: 205, to: 205 }, 'metric')).toBe('205 °C')
})

describe('facts of a steel', () => {
  test('sources that differ all stand', () => {
    const harden = treatmentFacts(s7, 'metric').find(({ what }) => what === 'Harden from')
    expect(harden?.others.length).toBe(s7.treatment.austenitise_C?.all?.length)
    for (const other of harden?.others ?? []) expect(other.from).not.toBe('')
  })

  test('traces are left out of the analysis', () => {
    expect(analysisText(s7)).toMatch(/^C 0\.\d+ to 0\.\d+, /u)
    expect(analysisText(s7)).not.toContain('P ')
  })

  test('the temper table has a row for each temper and every band holds its figure', () => {
    const rows = temperTable(s7, 'metric')
    expect(rows).toHaveLength(s7.temper.length)
    for (const [, hrc, band] of rows) {
      const [low, high] = band.split(' to ').map(Number)
      expect(Number(hrc)).toBeGreaterThanOrEqual(low ?? Number.NaN)
      expect(Number(hrc)).toBeLessThanOrEqual(high ?? Number.NaN)
    }
  })
})

test('two steels side by side: each fact once, both figures', () => {
  const rows = besideRows(s7, w1, 'inch')
  expect(new Set(rows.map(({ what }) => what)).size).toBe(rows.length)
  expect(rows.find(({ what }) => what === 'Harden from')).toMatchObject({
    first: expect.stringMatching(/°F$/u),
    second: expect.stringMatching(/°F$/u),
  })
  expect(rows.some(({ what }) => what === 'Tempered near 400 °F')).toBe(true)
})
