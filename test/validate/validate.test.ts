import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { describe, expect, test } from 'vitest'
import { bandMet, errorMet } from '#report/validation-record.ts'
import { idOf } from './comparison.ts'
import { COMPARISONS } from './comparisons.ts'
import { filesOf, PICTURES } from './made.ts'
import { ROOT, recordAsKept, recordNow } from './record.ts'
import { worse } from './regression.ts'

const kept = recordAsKept()
if (kept === undefined) throw new Error('docs/validation.json is not there: npm run validate makes it')
const now = recordNow(COMPARISONS, kept, false)

test('no figure got worse than docs/validation.json has it, and every band holds as many as it should', () => {
  expect(worse(kept, now)).toEqual([])
})

// A better figure that is not written down could be lost again unseen, and the page would not tell the truth.
test('docs/validation.json is what the program does', () => {
  const stale = now.checks
    .filter(({ committed }) => committed)
    .filter(({ id, all, tolerance }) => {
      const was = kept.checks.find((check) => check.id === id)
      return was === undefined || Math.abs(was.all.meanAbsolute - all.meanAbsolute) > tolerance || was.all.n !== all.n
    })
  expect(stale.map(({ name }) => `${name} moved: npm run validate writes it down, and prints the line for CHANGELOG.md`)).toEqual(
    [],
  )
})

test('everything that is made of docs/validation.json is made of it as it stands', () => {
  const files = filesOf(kept)
  const unlike = [...files].filter(([path, text]) => !existsSync(path) || readFileSync(path, 'utf8') !== text)
  expect(unlike.map(([path]) => `${relative(ROOT, path)}: npm run validate makes it`)).toEqual([])
  expect(readdirSync(PICTURES).filter((name) => !files.has(join(PICTURES, name)))).toEqual([])
})

describe.each(now.checks)('$name', (check) => {
  test('says why its aim is missed, and only then', () => {
    expect(check.whyMissed === undefined ? 'no reason given' : 'a reason given').toBe(
      errorMet(check) ? 'no reason given' : 'a reason given',
    )
  })

  test('says why its band holds too few or too many, and only then', () => {
    expect(check.whyOutside === undefined ? 'no reason given' : 'a reason given').toBe(
      bandMet(check.all) === false && !check.arithmetic ? 'a reason given' : 'no reason given',
    )
  })

  test('names its sources', () => {
    expect(check.sources.filter((source) => source.trim() !== '')).not.toEqual([])
  })
})

test('every comparison has a name of its own', () => {
  const ids = COMPARISONS.map(({ name }) => idOf(name))
  expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([])
})

test('of sets that may not be passed on nothing but summaries is kept', () => {
  const closed = kept.checks.filter(({ committed }) => !committed)
  expect(closed.length).toBeGreaterThan(3)
  for (const { rows, betweenSources, all, families, groups, provenances } of closed) {
    expect([rows, betweenSources?.widest]).toEqual([undefined, undefined])
    expect([all, ...families, ...groups, ...provenances].filter(({ worst }) => worst !== undefined)).toEqual([])
  }
})
