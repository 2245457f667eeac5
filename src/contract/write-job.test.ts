import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readJobText } from './read-job.ts'
import { jobFileText } from './write-job.ts'

const folder = join(import.meta.dirname, '..', '..', 'examples')
const files = readdirSync(folder).filter((name) => name.endsWith('.yaml'))

describe('a job written as a file', () => {
  test.each(files)('%s is read again as it was', (name) => {
    const job = readJobText(readFileSync(join(folder, name), 'utf8'), name) as object
    expect(readJobText(jobFileText(job), name)).toEqual(job)
  })

  test('a section, a zone, a step to a line', () => {
    const text = jobFileText({
      process: [{ do: 'carry', for: '3 s' }],
      piece: 'punch: "slot"',
      steel: { grade: '4140' },
      profile: [{ shape: 'round', across: '1-1/2 in', length: '2 in', dish: { across: '17 mm', depth: '6 mm' } }],
    })
    expect(text).toBe(`piece: 'punch: "slot"'
steel: { grade: "4140" }
profile:
  - { shape: round, across: 1-1/2 in, length: 2 in, dish: { across: 17 mm, depth: 6 mm } }
process:
  - { do: carry, for: 3 s }
`)
  })

  test('words that YAML would read as something else come back as words', () => {
    const word = fc.constantFrom('yes', '1:30', '0x1', '~', '- a', '# no', '1/2 "', 'a: b', '{', '4140', '1e3', 'null', ' x ')
    fc.assert(
      fc.property(word, word, (piece, name) => {
        const job = { piece, zones: [{ name, from: '0 mm', to: '1 in', aim: '50 HRC' }] }
        expect(readJobText(jobFileText(job), 'job')).toEqual(job)
      }),
    )
  })
})
