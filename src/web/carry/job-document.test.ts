import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseJob } from '#contract/parse-job.ts'
import { readJobText } from '#contract/read-job.ts'
import { bodyOfText } from '#web/drawing/body.ts'
import { heldJob } from './job-document.ts'

const EXAMPLES = join(import.meta.dirname, '../../../examples')
const files = readdirSync(EXAMPLES).filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')

describe('a job is taken as it was typed', () => {
  test.each(files)('%s', (name) => {
    const document = readJobText(readFileSync(join(EXAMPLES, name), 'utf8'), name) as Record<string, unknown>
    const shop = readJobText(readFileSync(join(EXAMPLES, 'shop.yaml'), 'utf8'), 'shop.yaml')
    const whole = typeof document.shop === 'string' ? { ...document, shop } : document
    const held = heldJob(whole)
    expect(held.kind).toBe('job')
    if (held.kind !== 'job') return
    const { struck, ...rest } = held.job
    const { struck: written, ...others } = whole as { struck?: unknown }
    expect(rest).toEqual(others)
    expect(struck).toBe(written === undefined ? undefined : written === true || written === 'yes')
    expect(() => parseJob(held.job, { process: 'absent-ok' })).not.toThrow()
  })

  test('with its faults where they were, and without what has no place', () => {
    const held = heldJob({
      piece: 4140,
      steel: 'S7',
      struck: 'no',
      profile: [{ shape: 'round', acros: '22 mm', length: 40 }, 'nonsense', { shape: 'round', across: '22', length: '1 in' }],
      zones: [{ from: '0 mm', aim: 'hard' }],
      shop: 'shop.yaml',
      process: [{ do: 'heat', to: null, hold: [1] }, { do: 'boil' }],
      colour: 'blue',
    })
    expect(held).toEqual({
      kind: 'job',
      job: {
        piece: '4140',
        steel: { grade: 'S7' },
        struck: false,
        profile: [
          { shape: 'round', length: '40' },
          { shape: 'round', length: '' },
          { shape: 'round', across: '22', length: '1 in' },
        ],
        zones: [{ from: '0 mm', to: '', aim: 'hard' }],
        process: [{ do: 'heat' }, { do: 'boil' }],
      },
    })
  })
})

test.each([
  [{ name: 'a package', version: '1.0.0', scripts: {} }, /none of piece/u],
  [{ fires: [{ name: 'coal fire' }] }, /a shop stands in it/u],
  [{ profile: 'hello', process: 'none' }, /none of piece/u],
  [[1, 2], /group of fields/u],
  ['words', /group of fields/u],
  [null, /group of fields/u],
])('%j is no job', (document, why) => {
  expect(heldJob(document)).toEqual({ kind: 'foreign', why: expect.stringMatching(why) })
})

test('whatever comes in, the drawing can be made of it and the contract can judge it', () => {
  const part = fc.oneof(fc.constant(undefined), fc.anything({ maxDepth: 3 }))
  const document = fc.record({ piece: part, steel: part, profile: part, zones: part, shop: part, process: part, struck: part })
  fc.assert(
    fc.property(document, (any) => {
      const held = heldJob(any)
      if (held.kind === 'foreign') return
      bodyOfText(held.job)
      try {
        parseJob(held.job, { process: 'absent-ok' })
      } catch (error) {
        expect((error as Error).name).toBe('InputProblems')
      }
    }),
    { numRuns: 300 },
  )
})
