import { expect, test } from 'vitest'
import type { Forecast } from '#contract/answers.ts'
import { crossSectionLines, crossSectionList } from './cross-section-words.ts'
import { steppedTool } from './fixture.test-data.ts'

const place = (quenched_HRC: number, tempered_HRC: number) => ({
  peak_C: 850,
  soak_s: 600,
  cooling_800_500_s: 4,
  quenched_HRC,
  tempered_HRC,
})
const off = (quenched_HRC: number) => ({ cooling_pct: 10, quenched_HRC, tempered_HRC: quenched_HRC })
const FLAT: NonNullable<Forecast['crossSections']>[number] = {
  name: 'edge',
  shape: 'flat',
  x_mm: 10,
  across_mm: 5,
  width_mm: 12,
  centre: place(17, 16),
  face: place(56.2, 50.9),
  corner: place(62.4, 55),
  equivalentRound: { across_mm: 7.2, centre: off(1.4), face: off(0.3), corner: off(-5.6) },
  judged: true,
}

const ALIKE = { ...FLAT, equivalentRound: { across_mm: 7.2, centre: off(0.2), face: off(0), corner: off(-0.4) }, judged: false }
const told = (...crossSections: (typeof FLAT)[]) => crossSectionLines({ ...steppedTool(), crossSections }, 'metric')

test('a section in a sentence: its places, and where its round is wrong', () => {
  expect(told(FLAT)).toEqual([
    'edge, flat 5 x 12 mm at 10 mm, HRC quenched: corner 62, tempered 55; face 56, tempered 51; middle under 20, tempered under 20; its equivalent round of 7.2 mm reads 6 HRC too soft at the corner, 1 HRC too hard in the middle. Zones are judged by its corner and face too.',
  ])
})

test('sections that their rounds judge rightly share one sentence', () => {
  const second = { ...ALIKE, x_mm: 20, centre: place(57, 51) }
  expect(told(FLAT, ALIKE, second)).toHaveLength(2)
  expect(told({ ...ALIKE, centre: place(58, 52) }, second)).toEqual([
    'at 10 mm, 20 mm: corner, face and middle come out as in the equivalent round, within 1 HRC (56 to 62 quenched).',
  ])
})

test('a page lists them, with hostile names made harmless, and says nothing where there are none', () => {
  const hostile = { ...steppedTool(), crossSections: [{ ...FLAT, name: '<script>' }] }
  expect(crossSectionList(hostile, 'metric')).toContain('&lt;script&gt;, flat 5 x 12 mm')
  expect(crossSectionList(steppedTool(), 'metric')).toBe('')
})
