import { describe, expect, test } from 'vitest'
import { GRADES, type Grade, gradeById } from './catalogue.ts'
import { clashesOf } from './clashes.ts'
import { hardnessAcrossOf } from './hardening-depth.ts'
import { hardnessOnCurve, temperCurvesOf } from './published-temper-curves.ts'
import { quenchingFrom } from './quenchants.ts'
import { soakFrom, soakTimeS } from './soaking.ts'
import { byStanding, type TreatmentItem } from './source-order.ts'
import { TREATMENT_ROWS } from './tables/heat-treatments.ts'
import { TREATMENT_ITEMS } from './tables/rows.ts'
import { SOURCES } from './tables/sources.ts'
import { CURVE_ROWS } from './tables/temper-curves.ts'
import { type GradeTreatment, treatmentOf } from './treatment.ts'

function grade(id: string): Grade {
  const found = gradeById(id)
  if (found === undefined) throw new Error(`no grade ${id}`)
  return found
}

const celsius = (item: TreatmentItem | undefined): readonly [number, number] | undefined =>
  item === undefined ? undefined : [Math.round(item.use.fromK - 273.15), Math.round(item.use.toK - 273.15)]

describe('tables', () => {
  test('every row is of a grade in the catalogue, in order, and names source, provenance and confidence', () => {
    expect(TREATMENT_ROWS).toHaveLength(894)
    for (const [id, item, low, high, , , source, provenance, confidence] of TREATMENT_ROWS) {
      expect(gradeById(id)?.id).toBe(id)
      expect(TREATMENT_ITEMS).toContain(item)
      if (low !== null && high !== null) expect(low, `${id} ${item}`).toBeLessThanOrEqual(high)
      expect(SOURCES[source]).toMatch(/\w{3}/)
      expect(['tabulated', 'text', 'memory']).toContain(provenance)
      expect(['high', 'medium', 'low']).toContain(confidence)
    }
  })

  test('191 points of 26 printed tempering curves', () => {
    expect(CURVE_ROWS).toHaveLength(26)
    expect(CURVE_ROWS.flatMap(({ points }) => points)).toHaveLength(191)
  })
})

describe('treatment', () => {
  const items = (t: GradeTreatment): (TreatmentItem | undefined)[] => {
    return [t.forge, t.normalise, t.anneal, t.preheat, t.austenitise, t.austenitiseForWater, t.temper]
  }

  test.each(GRADES.map((each) => [each.id, each] as const))('%s: one source is used whole, all stand beside it', (_, each) => {
    const treatment = treatmentOf(each)
    for (const item of items(treatment)) {
      if (item === undefined) continue
      expect(item.all).toContainEqual(item.use)
      expect(item.because).not.toBe('')
      for (const { fromK, toK, source } of item.all) {
        expect(fromK).toBeLessThanOrEqual(toK)
        expect(fromK > 370 && toK < 1650).toBe(true)
        expect(source).not.toBe('')
      }
    }
    if (treatment.hardens) expect(treatment.quenchants.length).toBeGreaterThan(0)
    if (treatment.hardens && each.id !== '300M') expect(treatment.austenitise).toBeDefined()
    expect(treatment.soak.source).not.toBe('')
    expect(treatment.cycles.from).toBeLessThanOrEqual(treatment.cycles.to)
  })

  test('[MT13] a data sheet goes before the guide table and before memory, and a range before one temperature', () => {
    // Crucible Ketos (O1): 790..815 C, 10-30 min; Diamond Metals: 802; guide table 788..816.
    const o1 = treatmentOf(grade('O1'))
    expect(celsius(o1.austenitise)).toEqual([790, 815])
    expect(o1.austenitise?.use.source).toBe('Crucible data sheet Ketos (AISI O1)')
    expect(o1.austenitise?.all).toHaveLength(4)
    expect(o1.soak).toMatchObject({ fromS: 600, toS: 1800 })
    // Crucible S7: 940..955 C, 30-45 min, air, oil above about 75 mm.
    const s7 = treatmentOf(grade('S7'))
    expect(celsius(s7.austenitise)).toEqual([940, 955])
    expect(s7.soak).toMatchObject({ fromS: 1800, toS: 2700 })
    expect(s7.quenchants).toEqual([{ kind: 'air' }, { kind: 'oil', aboveM: 0.075 }])
    expect(s7.airHardening).toBe(true)
    expect(s7.cycles.from).toBe(2)
    // Eastern Tool Steel 4140: 845..870 C, oil.
    expect(celsius(treatmentOf(grade('4140')).austenitise)).toEqual([845, 870])
  })

  test('[MT13] who forbids normalising, and who does not', () => {
    const o1 = treatmentOf(grade('O1')).normaliseForbidden
    expect(o1?.by.map(({ source }) => source)).toEqual(['Diamond Metals sheet O1'])
    expect(o1?.notBy).toHaveLength(2)
    expect(o1?.prevails).toBe(true)
    const a2 = treatmentOf(grade('A2'))
    expect(a2.normaliseForbidden?.prevails).toBe(true)
    expect(a2.normaliseForbidden?.notBy).toEqual([])
    expect(a2.normalise).toBeUndefined()
    expect(treatmentOf(grade('5160')).normaliseForbidden).toBeUndefined()
  })

  test('[MT13] what is missing is lent by a near grade that is named', () => {
    const treatment = treatmentOf(grade('X37CrMoV5-1'))
    expect(treatment.forge?.lentBy).toBe('H11')
    expect(treatment.forge?.use.source).toMatch(/for H11, a near grade/)
    expect(treatment.austenitise?.lentBy).toBeUndefined()
  })

  test('how thick a bar may be, and hardness across one that was cut', () => {
    expect(treatmentOf(grade('O1')).throughHardening).toMatchObject([
      { quench: 'oil', sectionM: 0.075, says: 'full hardness only below about' },
    ])
    expect(treatmentOf(grade('A6')).throughHardening[0]).toMatchObject({ quench: 'still air', sectionM: 0.1 })
    // Lucefin 100Cr6, 40 mm round in oil from 850 C: 62 HRC at the skin, 50 at the centre.
    const across = hardnessAcrossOf('100Cr6').filter(({ diameterM }) => diameterM === 0.04)
    expect(across.map(({ hardnessHrc }) => hardnessHrc)).toEqual([62, 57, 52, 50.5, 50])
  })

  test('steels that do not harden say so, and leaded steel is not to be forged', () => {
    for (const id of ['1018', '8620', 'A36', 'wrought iron']) {
      expect(treatmentOf(grade(id)).hardens, id).toBe(false)
      expect(treatmentOf(grade(id)).hardensSays).toMatch(/harden|tool steel/)
    }
    const leaded = treatmentOf(grade('12L14'))
    expect(leaded.hardens).toBe(false)
    expect(leaded.forgeForbidden?.says).toMatch(/lead/)
    expect(leaded.forge).toBeUndefined()
  })

  test('embrittling ranges are those that a source of the grade names', () => {
    const from = (id: string) =>
      treatmentOf(grade(id)).embrittling.map(({ fromK, toK }) => [fromK - 273.15, toK - 273.15].map(Math.round))
    expect(from('4140')).toEqual([[230, 370]])
    expect(from('42CrMo4')).toEqual([[200, 420]])
    expect(from('1045')).toEqual([])
    expect(from('D2')).toEqual([])
  })

  test('[MT13] standing never lifts memory or history above print', () => {
    for (const each of GRADES)
      for (const item of items(treatmentOf(each))) {
        if (item === undefined || item.use.basis === 'published') continue
        expect(item.all.filter(({ basis, says }) => basis === 'published' && !/historic/.test(says))).toEqual([])
      }
    expect(byStanding(treatmentOf(grade('W1')).austenitise?.all ?? []).at(-1)?.says).toMatch(/historic/)
  })
})

describe('words of the sheets', () => {
  test.each([
    ['water (oil for thin sections under about 6 mm)', [{ kind: 'water' }, { kind: 'oil', belowM: 0.006 }]],
    [
      'fast oil for thin work; water or brine with care over about 10 mm',
      [
        { kind: 'fast oil', belowM: 0.01 },
        { kind: 'water', aboveM: 0.01 },
        { kind: 'brine', aboveM: 0.01 },
      ],
    ],
    [
      'brine, water, or very fast oil under about 5 mm',
      [{ kind: 'brine' }, { kind: 'water' }, { kind: 'fast oil', belowM: 0.005 }],
    ],
    ['air or gas; oil above about 75 mm', [{ kind: 'air' }, { kind: 'oil', aboveM: 0.075 }]],
    [
      'water to 15 mm below 810 C, oil above',
      [
        { kind: 'water', belowM: 0.015 },
        { kind: 'oil', aboveM: 0.015 },
      ],
    ],
    ['oil, water when thick', [{ kind: 'oil' }, { kind: 'water', aboveM: 0.01 }]],
    ['water or oil to 65 C; may leave the bath at 205 C', [{ kind: 'water' }, { kind: 'oil' }]],
    ['still air or air blast', [{ kind: 'air' }]],
    ['air, salt or interrupted oil', [{ kind: 'air' }, { kind: 'salt' }, { kind: 'oil' }]],
    ['10-30 min', []],
  ])('%s', (text, choices) => {
    expect(quenchingFrom(text).choices).toEqual(choices)
  })

  test('a bath with its own hardening heat', () => {
    expect(quenchingFrom('water (790-845) or oil (845-925)').choices).toEqual([
      { kind: 'water', austeniteFromK: 790 + 273.15, austeniteToK: 845 + 273.15 },
      { kind: 'oil', austeniteFromK: 845 + 273.15, austeniteToK: 925 + 273.15 },
    ])
  })

  test('"water cracks 1144" is a warning and no quench', () => {
    expect(quenchingFrom('oil; water cracks 1144')).toEqual({ choices: [{ kind: 'oil' }], never: ['water'] })
  })

  test('times by the piece and by the inch', () => {
    const said = { basis: 'published', source: 'a sheet', provenance: 'tabulated', confidence: 'high', says: '' } as const
    const inch = soakFrom('30 min per inch, 1 h minimum', said)
    expect(inch).toBeDefined()
    if (inch !== undefined) {
      expect(soakTimeS(inch, 0.0254 * 3)).toBeCloseTo(5400, 6)
      expect(soakTimeS(inch, 0.01)).toBe(3600)
    }
    expect(soakFrom('20-25 min plus 5 min per inch', said)).toMatchObject({ fromS: 1200, toS: 1500, perMetreS: 300 / 0.0254 })
    expect(soakFrom('half an hour per inch', said)?.perMetreS).toBeCloseTo(1800 / 0.0254, 6)
    expect(soakFrom('5 min soak', said)).toMatchObject({ fromS: 300, toS: 300 })
    expect(soakFrom('oil', said)).toBeUndefined()
  })
})

describe('tempering curves', () => {
  test('every curve of every grade runs upward in temperature with its band about each value', () => {
    for (const each of GRADES)
      for (const { rows, asQuenchedHrc, source, holdS, id } of temperCurvesOf(each)) {
        expect(source).not.toBe('')
        expect(holdS).toBeGreaterThan(0)
        expect(rows.length, id).toBeGreaterThan(2)
        rows.forEach(({ temperK, hardnessHrc: { value, low, high } }, i) => {
          expect(temperK).toBeGreaterThan(rows[i - 1]?.temperK ?? 0)
          // Secondary hardening may lift a curve a little above its start.
          expect(value).toBeLessThanOrEqual((asQuenchedHrc?.value ?? 68) + 2)
          expect(low < value && value < high).toBe(true)
        })
      }
  })

  test('print goes before memory: O1 at 204 C reads 62 HRC on the sheet', () => {
    const [first, second] = temperCurvesOf(grade('O1'))
    expect(first?.id).toBe('DM-O1')
    expect(first?.asQuenchedHrc?.value).toBe(65)
    expect(hardnessOnCurve(first!, 477.15)?.value).toBe(62)
    expect(second?.basis).toBe('memory')
    expect(hardnessOnCurve(first!, 1100)).toBeUndefined()
  })

  test('S7: two tempers of two hours from 947 C', () => {
    expect(temperCurvesOf(grade('S7'))[0]).toMatchObject({ holdS: 7200, holdGiven: true, cycles: 2, quench: 'air', near: false })
  })

  test('42CrMo4 is served by the 4140 curve, as near, and wider', () => {
    const [near] = temperCurvesOf(grade('42CrMo4'))
    const [own] = temperCurvesOf(grade('4140'))
    expect(near).toMatchObject({ gradeId: '4140', near: true })
    expect(near?.source).toMatch(/a near grade/)
    // 335 HBW at 538 C is 36 HRC in ASTM E140.
    expect(own?.rows.find(({ temperK }) => Math.round(temperK) === 811)?.hardnessHrc.value).toBeCloseTo(36, 0)
    const width = (curve: typeof near): number => curve!.rows[0]!.hardnessHrc.high - curve!.rows[0]!.hardnessHrc.low
    expect(width(near)).toBeGreaterThan(width(own))
  })

  test('a neighbour with other carbon lends no curve', () => {
    expect(temperCurvesOf(grade('4150'))).toEqual([])
    expect(temperCurvesOf(grade('C105U')).map(({ gradeId }) => gradeId)).toContain('1095')
  })
})

describe('clashes', () => {
  test.each([
    ['O1', 'normalising', /do not normalise/],
    ['O1', 'Mn in the analysis', /1\.4\.\.1\.8 %/],
    ['1095', 'hardness after tempering at 232 °C', /57\.5 HRC/],
    ['H13', 'hardness after tempering at 649 °C', /30 HRC/],
    ['S1', 'hardening heat', /955 °C/],
  ])('%s: %s', (id, what, says) => {
    const clash = clashesOf(grade(id)).find((each) => each.what === what)
    expect(clash?.figures.length).toBeGreaterThan(1)
    expect(clash?.figures.some((figure) => says.test(figure.says))).toBe(true)
    for (const { source } of clash?.figures ?? []) expect(source).not.toBe('')
  })

  test('sources that agree make no clash', () => {
    expect(clashesOf(grade('5160'))).toEqual([])
  })
})
