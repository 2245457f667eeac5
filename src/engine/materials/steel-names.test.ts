import { describe, expect, test } from 'vitest'
import { GRADES, gradeById } from './catalogue.ts'
import { findSteel, nameKey, namesOf, nearGrades } from './steel-names.ts'
import { H_GRADES, OTHER_NAMES } from './trade-names.ts'

function found(text: string) {
  const match = findSteel(text)
  if (!match.found) throw new Error(`"${text}" found nothing; nearest ${match.nearest.map(({ name }) => name).join(', ')}`)
  return match
}

describe('names', () => {
  test.each([
    ['S7', 'S7'],
    ['s7', 'S7'],
    ['S 7', 'S7'],
    ['AISI S-7', 'S7'],
    ['S7 tool steel', 'S7'],
    ['T41907', 'S7'],
    ['SAE 4140', '4140'],
    ['aisi/sae 4140', '4140'],
    ['UNS G41400', '4140'],
    ['4140 steel', '4140'],
    ['C1045', '1045'],
    ['E52100', '52100'],
    ['42CrMo4', '42CrMo4'],
    ['EN 42CrMo4', '42CrMo4'],
    ['1.7225', '42CrMo4'],
    ['W.Nr. 1.7225', '42CrMo4'],
    ['1.2344', 'X40CrMoV5-1'],
    ['x40 crmov 5-1', 'X40CrMoV5-1'],
    ['wrought iron', 'wrought iron'],
    ['o1', 'O1'],
    ['W1 drill rod', 'W1'],
    ['gauge plate O1', 'O1'],
    ['hot rolled A36', 'A36'],
    ['4140 HT', '4140'],
    ['5160 leaf spring', '5160'],
    ['W.-Nr. 1.2842', '90MnCrV8'],
    ['C 45', 'C45'],
    ['D2 tool steel', 'D2'],
  ])('%s is its own name of %s', (text, id) => {
    const { grade, matched } = found(text)
    expect(grade.id).toBe(id)
    expect(matched.near).toBe(false)
  })

  test.each([
    ['SCM440', '4140'],
    ['JIS SCM440', '4140'],
    ['4140H', '4140'],
    ['C45E', 'C45'],
    ['EN45', '55Si7'],
    ['EN 45', '55Si7'],
    ['15N20', '75Ni8'],
    ['SKD61', 'X40CrMoV5-1'],
    ['1.2379', 'D2'],
    ['SUJ2', '52100'],
    ['En 24', '4340'],
    ['Ck 45', 'C45'],
    ['C15E', '1018'],
    ['1.2312 plate', undefined],
  ])('%s is a near name, of %s', (text, id) => {
    const match = findSteel(text)
    expect(match.found ? match.grade.id : undefined).toBe(id)
    if (match.found) expect(match.matched.near).toBe(true)
  })

  test.each(['4140', '42CrMo4', '1.7225', 'SCM440'])('%s leads to 4140, 42CrMo4 and 4142, as near and not equal', (text) => {
    const { grade, others } = found(text)
    expect([grade.id, ...others.map(({ grade: { id } }) => id)].sort()).toEqual(['4140', '4142', '42CrMo4'])
    expect(others.every(({ name }) => name.near)).toBe(true)
  })

  test.each([
    ['silver steel', '115CrV3'],
    ['Gauge plate', 'O1'],
    ['drill rod', 'W1'],
    ['spring steel', '5160'],
    ['mild steel', 'A36'],
  ])('%s is a trade word: %s with a warning, and others beside it', (text, id) => {
    const { grade, matched, others } = found(text)
    expect(grade.id).toBe(id)
    expect(matched.near).toBe(true)
    expect(matched.warning).toMatch(/\w{4}/)
    expect(matched.source).not.toBe('')
    expect(others.length).toBeGreaterThan(0)
  })

  test.each([
    ['4104', '4140'],
    ['5610', '5160'],
    ['42CrMo5', '42CrMo4'],
    ['SCM44O', 'SCM440'],
    ['sliver steel', 'silver steel'],
    ['01', 'O1'],
  ])('%s is misspelt: nothing is guessed, %s comes first or near', (text, name) => {
    const match = findSteel(text)
    expect(match.found).toBe(false)
    if (!match.found) expect(match.nearest.slice(0, 3).map((near) => near.name)).toContain(name)
  })

  test.each(['', '   ', '!!', 'unobtainium'])('"%s" is nothing', (text) => {
    expect(findSteel(text)).toEqual({ found: false, asked: text, nearest: [] })
  })

  test('every own name finds its own grade, and every name finds a grade', () => {
    for (const grade of GRADES)
      for (const { name, near, source } of namesOf(grade)) {
        const match = found(name)
        expect(source).not.toBe('')
        if (!near) expect(match.grade.id, name).toBe(grade.id)
        expect([match.grade.id, ...match.others.map((other) => other.grade.id)], name).toContain(grade.id)
      }
  })

  test('hand-written names point at grades of the catalogue', () => {
    for (const { grades, name } of OTHER_NAMES) {
      expect(nameKey(name)).not.toBe('')
      for (const id of grades) expect(gradeById(id)?.id, name).toBe(id)
    }
    for (const id of H_GRADES) expect(gradeById(id)?.id).toBe(id)
  })

  test('neighbours are mutual', () => {
    for (const grade of GRADES)
      for (const { gradeId } of nearGrades(grade)) {
        const other = gradeById(gradeId)
        expect(other).toBeDefined()
        if (other !== undefined)
          expect(
            nearGrades(other).map((near) => near.gradeId),
            `${gradeId} and ${grade.id}`,
          ).toContain(grade.id)
      }
  })
})
