import { readFileSync } from 'node:fs'
import { relative } from 'node:path'
import { describe, expect, test } from 'vitest'
import { filesOfMemory } from './memory-page.ts'
import { scanForMemory } from './memory-scan.ts'
import { memoryTables } from './memory-tables.ts'
import { ROOT } from './record.ts'

const CODE = `/** What a hinge weighs [kg]: from memory, +/-10 %. */
const HINGE_KG = 1.25
const PLAIN = 3
/** Nobody's business. */
const OTHER = 4
/** How long a gate hangs [s] (common practice, no source). */
export const HANGS_S: readonly number[] = [
  10, 20,
]
export const GATES = {
  iron: { film: 7, source: 'old books (memory, factor 1.5)' },
}
// A pin is this long: memory.
function pinM(): number {
  return 0.1
}
export type Basis = 'published' | 'memory'
`

describe('the code is asked for', () => {
  test('figures that own to memory: name, meaning, value, unit, file and words', () => {
    const found = scanForMemory('src/gate.ts', CODE)
    expect(found.map(({ constant, what, value, unit }) => [constant, what, value, unit])).toEqual([
      ['HINGE_KG', 'What a hinge weighs', '1.25', 'kg'],
      ['HANGS_S', 'How long a gate hangs', 'a table', 's'],
      ['GATES', 'old books', 'a table', ''],
      ['pinM', 'A pin is this long', 'in its code', ''],
    ])
    expect(found[0]).toMatchObject({ file: 'src/gate.ts', from: 'from memory, +/-10 %' })
    expect(found[1]).toMatchObject({ from: 'common practice, no source' })
  })

  test('nothing else: types, tests for the word, and what has a source', () => {
    expect(scanForMemory('a.ts', `type A = 'memory'\nif (x === 'memory') y()\n/** Andrews (1965). */\nconst B = 1\n`)).toEqual([])
  })
})

describe('the list from memory', () => {
  const tables = memoryTables()

  test('holds every kind of figure, each with its words, its file and what would replace it', () => {
    expect(tables.map(({ name }) => name)).toEqual(
      expect.arrayContaining([
        'Composition limits of grades',
        'Tempering tables',
        'Fires',
        'Heat in fires, baths, air and ovens',
      ]),
    )
    for (const { replacedBy, figures } of tables) {
      expect(replacedBy.length).toBeGreaterThan(20)
      expect(
        figures.filter(({ what, file, from }) => what.trim() === '' || from.trim() === '' || !file.startsWith('src/')),
      ).toEqual([])
    }
  })

  test('is written down as it stands', () => {
    const unlike = [...filesOfMemory()].filter(([path, text]) => readFileSync(path, 'utf8') !== text)
    expect(unlike.map(([path]) => `${relative(ROOT, path)}: npm run validate makes it`)).toEqual([])
  })
})
