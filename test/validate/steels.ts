import { gradeById } from '#engine/materials/catalogue.ts'
import { steelOf } from '#engine/materials/grade-heats.ts'
import { compositionOf, ELEMENTS, type Element, type Steel } from '#engine/materials/steel.ts'
import { findSteel } from '#engine/materials/steel-names.ts'
import { type CsvRow, number } from './data.ts'

/** Middle of the limits of grades that the tables name and the catalogue does not hold [wt%]: SAE J404 / J403, from memory. */
const NOT_IN_CATALOGUE: Readonly<Record<string, Partial<Record<Element, number>>>> = {
  '1030': { C: 0.31, Mn: 0.75, Si: 0.25 },
  '4027': { C: 0.27, Mn: 0.8, Si: 0.25, Mo: 0.25 },
  '4615': { C: 0.15, Mn: 0.55, Si: 0.25, Ni: 1.8, Mo: 0.25 },
  '5120': { C: 0.2, Mn: 0.8, Si: 0.25, Cr: 0.8 },
  M1: { C: 0.8, Mn: 0.3, Si: 0.3, Cr: 3.9, Mo: 8.5, W: 1.7, V: 1.1 },
}

function steelWith(name: string, given: Partial<Record<Element, number>>): Steel {
  return { name, composition: compositionOf(given), range: {}, grainSize: 7 }
}

/** "C 0.38-0.45 Mn 0.60-0.90 Cr 0.40 max": the middle of each range, half of a bare upper limit. */
export function compositionFromText(words: string): Partial<Record<Element, number>> {
  const found: Partial<Record<Element, number>> = {}
  for (const [, symbol, low, high, max] of words.matchAll(/([A-Z][a-z]?) (\d*\.?\d+)(?:-(\d*\.?\d+))?( max)?/g)) {
    const element = ELEMENTS.find((known) => known === symbol)
    if (element === undefined) continue
    const first = Number(low)
    const middle = high === undefined ? first : (first + Number(high)) / 2
    found[element] = max === undefined ? middle : middle / 2
  }
  return found
}

/** The steel that a table names: its grade in the catalogue (H and + letters set aside), else the composition it prints. */
export function steelNamed(name: string, composition = ''): Steel {
  const plain = name
    .replace(/\s*\(.*\)$/, '')
    .replace(/\+H[HL]?$/, '')
    .replace(/(?<=^\d{4,5})H$/, '')
  const grade = gradeById(plain)
  if (grade !== undefined) return steelOf(grade)
  const extra = NOT_IN_CATALOGUE[plain]
  if (extra !== undefined) return steelWith(name, { Si: 0.25, ...extra })
  const printed = compositionFromText(composition)
  if (printed.C !== undefined) return steelWith(name, { Si: 0.25, Mn: 0.5, ...printed })
  const match = findSteel(plain)
  if (match.found) return steelOf(match.grade)
  throw new Error(`${name}: neither in the catalogue nor with a composition in the table`)
}

/** Steel of a row that has a column for each element (empty: not given). */
export function steelOfRow(row: CsvRow, name: string): Steel {
  const given: Partial<Record<Element, number>> = {}
  for (const element of ELEMENTS)
    if (row[element] !== undefined) {
      const value = number(row, element)
      if (!Number.isNaN(value)) given[element] = value
    }
  return steelWith(name, given)
}
